## run_journal.rs

in-run = in the run “{ $run }”
at-step = at step { $step } of the run “{ $run }”
at-step-titled = at step { $step }, { $title }, of the run “{ $run }”
clock-started = The clock was started { $place }.
clock-stopped = The clock was stopped { $place }.
temperature-noted = { $temperature } was noted { $place }.
done-otherwise = Something was done otherwise { $place }: { $words }
remark = Noted { $place }: { $words }
run-finished = The run “{ $run }” was finished.
note-taken-back = A note was taken back { $place }: { $why }
bath-read = The spent bath was read { $place }.
rinse-read = A rinse was read { $place }.
standards-kept = Standards for reading waters were kept { $place }.
reading-taken-back = A reading of a water was taken back { $place }: { $why }
happened-at = { $sentence } It happened on { $day } at { $time }, UTC.
in-place-of-another = { $sentence } It stands in place of an earlier one.
