## trial/list.html

trial-in-short = { $arms } arms · { $pieces } pieces · { $stages ->
    [one] 1 stage
   *[other] { $stages } stages
  } photographed
plan-in-short = { $arms } arms · { $pieces } test pieces · revision { $revision } · { $trials ->
    [0] not started yet
    [one] 1 trial started
   *[other] { $trials } trials started
  }

## trial/_eyes.html

and = { $a } and { $b }, { $when }
difference = Difference { $figures }
beside-the-verdicts-of-readings = Beside the verdicts of readings
mean-grades-by-eye = Mean grades by eye
arm = Arm
stage = Stage
of = Of
pieces = Pieces
people = People
mean-grade = Mean grade
how-far-eyes-agree = How far eyes agree
meaning = Meaning
judged-by-eye = Judged by eye
how-far-eyes-agree-and-who-judged = How far eyes agree, and who judged
nobody-has-judged-these-pieces-by-eye = Nobody has judged these pieces by eye.
let-people-grade-them-blind = Let people grade them blind
it-takes-a-grey-scale-and-good = it takes a grey scale and good light, and tells how far eyes agree.

## trial/_fade.html

fade-curves = Fade curves
figures-for-a-technician = Figures for a technician

## trial/_staining.html

staining = Staining
staining-of-pale-cloth = Staining of pale cloth
cloth = Cloth
before = Before
after = After
grade = Grade
figures = Figures

## trial/_verdict.html

difference-2 = Difference { $difference }
why-for-a-technician = Why, for a technician

## trial/compare.html

side-by-side = Side by side · { $title }
where-you = Where you are
trials = Trials
side-by-side-2 = Side by side
any-two-pieces-or-stages-as-measured = Any two pieces or stages as measured, and what each grade looks like around the first.
nothing-has-been-read-yet = Nothing has been read yet.
add-a-photo = Add a photo
and-mark-where-each-piece-lies = and mark where each piece lies.
first = First
second = Second
edges = Edges
touch = touch
a-small-gap = a small gap
show-them = Show them
and-names2 = { $names } and { $names2 }
difference-ciede2000 = difference, CIEDE2000
grade-of-the-change-as-a-decimal = grade of the change (as a decimal)
second-less-first = second less first
the-trials-margin-is-one-pair = { $rests_on } The trial’s margin is { $margin }. One pair of pieces is no verdict: that rests on how all pieces scatter.
lies-beyond-what-an-srgb-screen-shows = { $name } lies beyond what an sRGB screen shows: its numbers are right, its picture is the nearest there is.
what-each-grade-looks-like = What each grade looks like
grade-2 = Grade { $grade }
these-two = these two
grey-scale-for-change-in-colour = Grey scale for change in colour, by the formula of ISO 105-A05 turned round: 5 is no change, 1 the most. On neutral mid-grey; look straight at the screen in even light.

## trial/list.html

trials-woadstone = Trials · Woadstone
no-older-trials = No older trials.
to-the-newest = To the newest
does-this-colour-last = Does this colour last, and is that extra step worth it?
your-bench-is-empty-a-trial-answers = Your bench is empty. A trial answers one question about dyed cloth, by number.
ask = Ask
say-what-you-compare-and-how-small = Say what you compare, and how small a difference would still matter.
look = Look
photograph-the-dry-pieces-beside-a-24 = Photograph the dry pieces beside a 24-patch colour chart, before and after washing.
decide = Decide
get-one-of-four-verdicts = Get one of four verdicts with its interval, and a report to hand on.
ask-a-question = Ask a question
enter-a-trial-without-a-plan = Enter a trial without a plan
check-your-set-up = Check your set-up
open-the-demo-trial = Open the demo trial
the-demo-is-an-invented-trial = The demo is an invented trial with photographs drawn by a program. Opening it takes a few seconds.
invented = invented
pages-of-trials = Pages of trials
older-trials = Older trials
newest-trials = Newest trials
plans = Plans

## trial/new.html

a-trial-without-a-plan-woadstone = A trial without a plan · Woadstone
a-trial-without-a-plan = A trial without a plan
one-trial-one-question-two-or-more = One trial, one question: two or more treatments (arms), the same number of pieces in each, all washed alike.
instead-and-the-pieces-loads = instead, and the pieces, loads and their order are worked out for you.
title = Title
question = Question
in-words-that-a-student-would-understand = In words that a student would understand.
smallest-difference-that-matters-the = Smallest difference that matters (the margin)
in-ciede2000-about-1-is-just-visible = In CIEDE2000. About 1 is just visible when two cloths touch; 2 shows at a glance; 5 is another shade. Decide this now, before you see any result.
arms-what-you-set-side-by-side = Arms: what you set side by side
make-one-of-them-the-plain-way = Make one of them the plain way, without the extra step. Empty rows are left out.
name-of-arm = Name of arm { $row }
what-is-done = What is done to it
add-another-arm = Add another arm
test-pieces-per-arm = Test pieces per arm
two-at-the-least-four-or-more = Two at the least; four or more tell much more.
rounds-of-washing-and-drying = Rounds of washing and drying
how-many-you-plan = How many you plan in all.
keep-one-piece-of-each-arm-unwashed = Keep one piece of each arm unwashed in the dark (a keeper)
photographed-with-the-others-every-time = Photographed with the others every time, it shows what the washing did and what only the light of the day did.
method = Method
fibre-dye-bath-washing-and-drying-enough = Fibre, dye, bath, washing and drying: enough for someone else to do it again. May stay empty for now.
start-the-trial = Start the trial
leave-it = Leave it

## trial/show.html

back-to-the-trial = Back to the trial
invented-trial = invented trial
no-such-cloth-was-dyed-its-photographs = No such cloth was dyed; its photographs were drawn by a program.
margin-ciede2000 = margin, CIEDE2000
arms = arms
pieces-2 = pieces
rounds-planned = { $count ->
    [one] round planned
   *[other] rounds planned
  }
print-a-board-and-tags = Print a board and tags
add-readings-from-elsewhere = Add readings from elsewhere
read-the-report = Read the report
keep-the-report-as-a-file = Keep the report as a file
verdict = Verdict
the-last-stage-by-all-rounds-together = The last stage by all rounds together
along-the-way-the-arms-fade = Along the way the arms fade, in CIEDE2000 units, by a model of all rounds in which each piece and each load has a part of its own. It tells more of chance than one round does; the verdict looks in all directions.
verdicts-at-earlier-stages = Verdicts at earlier stages
change-by-round = Change by round
plot-of-change-by-round = Plot of change by round
whiskers-are-95-intervals-the-table-says = Whiskers are 95 % intervals. The table says the same in figures.
change-of-each-arm = Change of each arm
test-pieces = Test pieces
change-ciede2000-95-interval = Change, CIEDE2000 (95 % interval)
direction = Direction
grade-of-fade = Grade of fade
grade-on-the-grey-scale-for-change = Grade on the grey scale for change in colour: 5 is no change, 1 the most.
colour-by-stage = Colour by stage
swatches-by-stage = Swatches by stage
not-read = not read
mean-of-each-arms-test-pieces = Mean of each arm’s test pieces, on neutral grey.
set-any-two-pieces-or-stages-side = Set any two pieces or stages side by side
photos = Photos
no-photos-yet-lay-all-pieces-beside = No photos yet. Lay all pieces beside the chart, dry and flat, in even light, and take one photo before the first wash.
plan = Plan
started-from = Started from
its-plan-revision = its plan, revision { $revision }
ready-to-print = Ready to print:
packing-list = packing list
boards-with-places = boards with places
labels = labels
blind-codes = blind codes
known-when-it-was-planned-and-limits = Known when it was planned, and limits of every verdict:
baths-and-runs = Baths and runs
no-recipe-yet = No recipe yet.
write-one-for-its-arms = Write one for its arms
amounts-a-run-sheet-with-clocks-cautions = amounts, a run sheet with clocks, cautions and cost.
on = { $class } on { $mass }
not-dyed-yet = not dyed yet
write-another-recipe = Write another recipe
finished = finished
clocks-run = clocks run
not-finished = not finished
done-otherwise-than-planned-and-limits = Done otherwise than planned, and limits of every verdict:
arms-and-pieces = Arms and pieces
table-of-arms = Table of arms
treatment = Treatment
others = Others
none = none
readings = Readings
all-readings = All { $readings } readings
table-of-readings = Table of readings
piece = Piece
source = Source
colour = Colour
numbers = Numbers
spread-one-sd = Spread (one SD)
noticed = Noticed
nothing = nothing
the-same-as-data = The same as data:
readings-as-a-table-csv = readings as a table (CSV)
everything-json = everything (JSON)
grades-judged-by-eye = Grades judged by eye
against = Against
judged = Judged
remark = Remark
on-a-grey-scale-5-for-none = On a grey scale, 5 for none to 1 for the most.
journal-of-this-trial = Journal of this trial
it-leaves-the-list-of-trials = It leaves the list of trials and can be taken back.

## pages/trial/compare.rs

nothing-was-read-of-what-this-address = Nothing was read of what this address names; here are two others. Choose from the lists.
these-two-were-read-by-different-means = These two were read by different means, an instrument and a photo or for different lights, and such colours don’t compare. Choose two of one kind.

## pages/trial/create.rs

the-new-trial = the new trial is not on the bench

## pages/trial/new.rs

give-the-margin-as-a-number-such = Give the margin as a number, such as 1.0.
give-the-number-of-rounds = Give the number of rounds as a whole number, 1 or more.
give-the-number-of-test-pieces-per = Give the number of test pieces per arm as a whole number from 1 to 100.
there-is-no-trial-of-that-name = There is no trial of that name on this bench. It may be on another one; the list shows those that are here.
