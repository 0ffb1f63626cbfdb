## run/_note.html

corrected = (corrected)
correct = Correct
the-note = the note “{ $note }” of { $when }
it-was = It was at
it-should-say = It should say
keep-the-correction = Keep the correction
take-it-back = Take it back

## run/show.html

where-you = Where you are
recipes = Recipes
revision = { $recipe }, revision { $revision }
begun = Begun { $begun_at }
for-what = for
print-with-its-notes = Print with its notes:
as-data = As data
where-the-dye-went-readings = Where the dye went: readings of the spent bath and the rinses
clocks = Clocks
this-run-is-over = This run is over.
no-clock-runs = No clock runs.
next-is = Next is
step = step { $number }, { $title }
stop = Stop
clocks-may-run-side-by-side = clocks may run side by side.
as-of-clocks-go = As of { $as_of }. Clocks go on while the phone sleeps or Woadstone is off; they are kept as times of day.
reload-for-the-time-now = Reload for the time now.
before-you-begin = Before you begin
cautions-for = Cautions for all of it
steps = Steps
for-what-2 = for { $arms }
planned = Planned:
min = { $minutes } min
until-it-is-done = until it is done
start-again = Start again
start = Start
minutes-ago = minutes ago
it-is = It is at
temperature-on-scale = Temperature, { $scale }
note-it = Note it
done-otherwise = Done otherwise
in-your-own-words = In your own words
note-as-a-departure = Note as a departure
the-run-as-a-whole = The run as a whole
about-the-whole-run = About the whole run
water-weather-another-pot = Water, weather, another pot …
finished = Finished { $when }.
it-goes-on-after = It goes on after all
finish-the-run = Finish the run
departures-so-far = Departures so far
none-everything-noted-is-as-planned = None: everything noted is as planned.
they-stand-on-the-trials-page = They stand on the trial’s page and in its report as limits of the verdict.
this-run-belongs-to-no-trial = This run belongs to no trial, so they stand here only.
plot-of-temperature-over-time = Plot of temperature over time
the-planned-curve-crosses-are-the = The planned curve; crosses are the temperatures that were noted.
everything-that-was-noted-with = Everything that was noted, with corrections

## pages/run/note.rs

this-button-is-of-no-page = This button is of no page of ours.
that-note-was-taken-back-already = That note was taken back already, so it can’t be corrected.
give-the-time-of-day-such = Give the time of day, such as 14:05.
give-how-many-minutes-ago = Give how many minutes ago it was as a number, such as 5, or leave it empty.

## pages/run/show.rs

left = { $gone } · { $left } left
over = { $gone } · { $left } over
to-do = to do
running = running
done = done
from-to = { $from } to { $to }
since = since { $now_s }
as-planned = , as planned
clock-started = clock started
clock-stopped = clock stopped
it-was-2 = it was at { $at }
done-otherwise-2 = done otherwise: { $value }
run-finished = run finished
taken-back = taken back
taken-back-2 = taken back: { $why }
whole-run = whole run
step-2 = step { $step }
instead-of-note = , instead of note { $of }
noted-now-s2 = { $step }, { $now_s }: { $what }{ $of } (noted { $now_s2 })

## pages/run/time.rs

at-a-time-that-no-calendar = at a time that no calendar has

## pages/run/note.rs

give-a-temperature-such-as-or-60 = Give a temperature, such as { $bare } or 60 °C or 140 °F.
there-is-no-run-of-that-number = There is no run of that number on this bench. The list of recipes shows the runs that are here.
the-note-is-empty-write-a-few = The note is empty. Write a few words, or tap one that is offered.

## pages/run/print.rs

begun-2 = Begun { $begun } · { $trial }
begun-3 = Begun { $begun }
to = { " " }to{ " " }
