## run/depart.rs

dry-spots-were-left = dry spots were left
soaked-overnight = soaked overnight
arms-soaked-apart = arms soaked apart
measured-by-spoon-not-weighed = measured by spoon, not weighed
powder-not-fully-dissolved = powder not fully dissolved
another-product-or-lot = another product or lot
forgotten-and-added-later = forgotten and added later
added-all-at-once = added all at once
some-was-spilled = some was spilled
heated-faster = heated faster
heated-more-slowly = heated more slowly
boiled-by-mistake = boiled by mistake
not-stirred-all-the-time = not stirred all the time
heat-went-off = heat went off
goods-floated-up = goods floated up
taken-out-hot = taken out hot
cooled-faster = cooled faster
left-in-overnight = left in overnight
water-not-yet-clear = water not yet clear
arms-rinsed-together = arms rinsed together
hotter-or-colder-water = hotter or colder water
another-detergent = another detergent
arms-washed-together = arms washed together
another-amount = another amount
not-all-pieces-covered = not all pieces covered
left-out = left out
shorter-than-the-after-treatment = shorter than the after-treatment
in-the-same-vessel = in the same vessel
tumble-dried = tumble-dried
dried-in-the-sun = dried in the sun
ironed = ironed
in-the-run-as-a-whole = In the run as a whole: { $ended }
no-start-was-noted = no start was noted, so it may have been left out
the-matching-soak-took-min = The matching soak took { $soaked } min and the after-treatment { $treated } min, so more than the agent differs between their arms.
it-took-min-instead-of-min = it took { $took_min } min instead of { $planned_min } min
step = Step { $number }, { $title }{ $arms }: { $words }
to = { $local_degrees } to { $shown }

## run/rules.rs

the-sheet-has-no-step-its-steps = The sheet has no step { $number }; its steps go to { $steps }.
this-would-happen-in-the-time = This would happen in the time to come. Note it when it has happened.
that-is-more-than-a-week-ago = That is more than a week ago. Write it as a note with its date instead.
this-run-is-over-take-back-run = This run is over. Take back "run finished" first if it is to go on.
the-clock-of-step-still-runs-stop = The clock of step { $number }, { $title }, still runs. Stop it first.
say-which-note-is-to-be-taken = Say which note is to be taken back.
say-which-step-this-belongs = Say which step this belongs to.
a-run-is-finished-as-a-whole = A run is finished as a whole.
step-would-stop-before-it-began-give = Step { $number } would stop before it began. Give a later time, or correct when it began.
the-clock-of-step-was-never-started = The clock of step { $number } was never started. Start it, with how many minutes ago it began.
there-is-no-note-that-still-counts = There is no note { $of } that still counts, so it can't be corrected.
that-note-belongs-to-another-step = That note belongs to another step.
a-note-can-only-be-corrected = A note can only be corrected by one of its kind. Take it back and note the other.
with-that-time-the-steps-starts = With that time the step's starts and stops would be out of order. Give another time.
the-note-is-empty-write-a-few = The note is empty. Write a few words, or tap one that is offered.
the-note-has-characters-is-the-most = The note has { $length } characters; { $most_text } is the most. Make it two.

## run/sheet.rs

## run/depart.rs

it-was-at-instead = it was at { $shown } instead of { $planned }

## run/sheet.rs

on-shown2-of-liquor = { $class } on { $shown }, { $shown2 } of liquor, { $ratio }
