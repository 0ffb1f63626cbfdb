## run_sheet.html

run-sheet = Run sheet: { $title }
before-you-begin = Before you begin
steps = Steps
no = No.
what-to-do = What to do
planned = Planned
heat = Heat
began-ended = Began, ended
was-at = Was at
done-otherwise = Done otherwise

## run_sheet.rs

min = { $begins }, { $minutes } min
until-done = { $begins }, until done
to = { $from } to { $to } { $local_scale }
