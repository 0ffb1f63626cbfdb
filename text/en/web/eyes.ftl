## eyes/show.html

judging-by-eye = Judging by eye · { $title }
where-you = Where you are
trials = Trials
judging-by-eye-2 = Judging by eye
each-piece-beside-its-keeper-graded = Each piece beside its keeper, graded on the grey scale by people who know nothing but codes.
open-sessions = Open sessions
begun = Begun { $begun_on }.
let-somebody-who-doesnt-judge-print = Let somebody who doesn’t judge print the labels, fold each under and staple it to its cloth:
labels-on-a4 = labels on A4
on-letter = on Letter
a-keeper-with-two-labels-is-cut = A keeper with two labels is cut, or folded so that its halves lie side by side.
of-pairs = { $done } of { $all } pairs
done = done
look-at-the-end = Look at the end
begin = Begin
go-on = Go on
as-what = as { $name }
somebody-else-judges = Somebody else judges
name-or-initials = Name or initials
under-which-light = Under which light
north-light-away-from-the-sun = North light away from the sun, or a lamp of 6500 K and good colour rendering; the same for everybody.
north-window-noon = north window, noon
colour-vision = Colour vision
from-how-far = From how far
about-50-cm-is-usual-looking-straight = About 50 cm is usual, looking straight down with the light from the side.
begin-judging = Begin judging
close-it-and-show-the-grades = Close it and show the grades
afterwards-nobody-can-judge = Afterwards nobody can judge in it.
what-came = What came of it
a-new-session = A new session
no-arm-has-a-keeper-a-piece = No arm has a keeper, a piece kept unwashed in the dark. Without one there is nothing to lay beside a washed piece. Grades against a piece’s own original can be
entered-one = entered one by one
rounds-the-pieces-have-been-through = Rounds the pieces have been through
what-is-looked = What is looked at
the-cloths-themselves-fetched-by-their = The cloths themselves, fetched by their codes
measured-colours-on-this-screen = Measured colours on this screen
weaker-a-screen-only-approximates-kept = Weaker: a screen only approximates. Kept apart from grades of cloths, and no verdict rests on them.
mixed-in = Mixed in
pairs-without-a-difference-to-learn = Pairs without a difference, to learn what an eye sees where nothing is
witness-cloths-for-staining-against-new = Witness cloths for staining, against new undyed cloth
pairs-that-come-twice = Pairs that come twice
they-tell-how-steady-an-eye = They tell how steady an eye is. Four or more are worth their time.
begin-a-session = Begin a session
pieces-of-one-arm-share-its-keeper = Pieces of one arm share its keeper, so a judge may notice which belong together, though not which arm that is. Where an arm has two keepers, the second one is the pair without a difference.
closed-sessions = Closed sessions
begun-2 = Begun { $begun_on }
closed = closed { $value }
nobody-judged = Nobody judged in it.
of-pairs-2 = { $name }: { $done } of { $all } pairs

## eyes/turn.html

judging-woadstone = Judging · Woadstone
pair-of = { $judge }: pair { $number } of { $all }
pairs-done = Pairs done
how-deep-is-the-stain = How deep is the stain?
how-great-is-the-difference = How great is the difference?
on-a-screen-colours-only-approximate = On a screen colours only approximate: grade what you see, as if it lay before you.
fetch = Fetch
and = and
lay-them-edge-to-edge-on-grey = Lay them edge to edge on grey, weave the same way, the grey scale for
staining = staining
change-in-colour = change in colour
beside-them = beside them.
you-gave-this-pair-what-you-choose = You gave this pair { $before }. What you choose now counts; the first grade stays on the bench.
grade = Grade
cant-tell = Can’t tell
remark-if = Remark, if any
before-you-choose-a-grade = (before you choose a grade)
one-tap-keeps-the-grade-stop-whenever = One tap keeps the grade. Stop whenever you like: what you gave stays, and you go on where you were.
keys-1-to-9-choose-a-grade = Keys 1 to 9 choose a grade, 0 says that you can’t tell.
correct-the-last = Correct the last one
done-thank = Done, thank you
all-pairs-are-judged-and-kept = { $judge }, all { $all } pairs are judged and kept.
the-session-is-closed = The session is closed.
what-others-gave-is-shown-once = What others gave is shown once the session is closed.
back-to-the-sessions = Back to the sessions

## pages/eyes/begin.rs

give-the-number-of-rounds-the-pieces = Give the number of rounds the pieces have been through as a whole number.
choose-whether-cloths-or-measured = Choose whether cloths or measured colours are judged.
give-how-many-pairs-come-twice = Give how many pairs come twice as a whole number up to { $most_repeats }.

## pages/eyes/labels.rs

half = { $id }, half
undyed-cloth = undyed cloth

## pages/eyes/show.rs

for-change-in-colour = { $change } for change in colour
without-a-difference = without a difference
for-staining = for staining
of-those-for-change-a-second-time = of those for change a second time
pairs = Pairs: { $join }.

## pages/eyes/turn.rs

cant-tell-2 = can’t tell
the-pair-side-by-side = The pair, side by side
no-change = no change
no-stain = no stain
the-most-change = the most change
the-deepest-stain = the deepest stain
the-form-names-no-pair-go-back = The form names no pair. Go back and choose again.
there-is-no-such-session-of-judging = There is no such session of judging in this trial. The page on judging by eye shows those that are there.
nobody-judges-at-this-address = Nobody judges at this address. Open the trial's page on judging by eye and begin there.
