## plan/ask.html

ask-a-question-woadstone = Ask a question · Woadstone
where-you = Where you are
trials = Trials
ask-a-question = Ask a question
say-what-you-want-to-know = Say what you want to know and what you can spare. You get a plan: how many pieces, which go together, in which order, and what it can and can’t show.
have-a-plan-of-your-own-already = Have a plan of your own already?
enter-a-trial-without-a-plan = Enter a trial without a plan
question = Question
in-words-that-a-student-would-understand = In words that a student would understand.
short-title = Short title
may-stay-empty = May stay empty.
what-kind-of-question = What kind of question is it?
also-which-stains-other-cloth-more = And which of them stains other cloth more?
each-then-needs-washes-of-its-own = Each then needs at least two washes of its own in each round, with undyed cloth in each: a stain on cloth that was washed with several can’t be laid to one. Bowls or jars will do.
what-do-you-set-side-by-side = What do you set side by side?
each-is-an-arm-of-the-trial = Each is an arm of the trial. Put the plain way, without the extra step, first. Empty rows are left out. Amounts as you’d say them: 2 tbsp, 1/3 cup, 60 ml, 1 gal.
arm = Arm { $row }
name-of-arm = Name of arm { $row }
product-if = Product, if any
amount = Amount
to-water = To water
minutes = Minutes
at-scale = At { $scale }
dye-of-fibre = Dye, % of fibre
add-another-arm = Add another arm
fibre = Fibre
class-of-dye = Class of dye
cotton = cotton
linen = linen
rayon = rayon
silk = silk
wool = wool
nylon = nylon
direct = direct
fibre-reactive = fibre-reactive
acid = acid
vat = vat
natural-mordanted = natural, mordanted
what-difference-would-matter = What difference would matter?
a-blue-cloth-and-the-same = A blue cloth and the same a little faded, touching. Decide now, before you see any result. Grades are those of the grey scale for change in colour, where 5 is no change; the number beside it is in CIEDE2000. Screens only approximate.
a-number-of-my-own-below = A number of my own, below
my-own-in-ciede2000 = My own, in CIEDE2000
what-can-you-spare = What can you spare?
rounds-of-wash-and-dry = Rounds of wash and dry
pieces-in-all-keepers-among-them = Pieces in all, keepers among them
separate-washes-in-each-round = Separate washes in each round
days = Days
how-much-equal-pieces-differ = How much equal pieces differ: { $scatter }
propose-a-plan = Propose a plan
leave-it = Leave it

## plan/show.html

plan-woadstone = Plan: { $title } · Woadstone
plan = Plan
as-first-proposed = As first proposed: { $proposed }
you-are-looking-at-revision = You are looking at revision { $number }, which is not the newest.
see-the-newest = See the newest
go-back = Go back to this one
margin = margin
arms = arms
test-pieces = test pieces
rounds = { $count ->
    [one] round
   *[other] rounds
  }
looked-at-after-rounds = looked at after rounds
what-the-margin-looks-like = What the margin looks like.
start-the-trial = Start the trial
nothing-stands-in-its-way = Nothing stands in its way.
it-can-be-started = It can be started as it is; what is found below then limits its verdict.
started-from-this-plan = Started from this plan:
what-it-cant-tell = What it can’t tell
nothing-found-this-plan-can-answer = Nothing found: this plan can answer its question.
on-purpose = On purpose: { $sentence }
what-it-can-show = What it can show
being-worked-out = Being worked out: some thousand trials by this plan are drawn by chance and judged. The rest of the page stands.
see-whether-it-is-there = See whether it is there
how-often-each-comparison-shows-what = How often each comparison shows what matters
of-100-such-trials = Of 100 such trials
show-the-margin = show the margin
show-a-grade-4-fade = show a grade 4 fade
show-arms-alike = show arms alike that are
show-a-difference-by-chance = show a difference by chance
judged = Judged
with-more-or-fewer-pieces = With more or fewer pieces
plot-of-power-by-pieces-per-arm = Plot of power by pieces per arm
how-many-of-100-such-trials-show = How many of 100 such trials show the margin, for the weakest pair of arms. The table says the same.
power-by-pieces-per-arm = Power by pieces per arm
test-pieces-per-arm = Test pieces per arm
show-the-margin-of-100 = Show the margin, of 100
arms-and-pieces = Arms and pieces
arms-and-their-pieces = Arms and their pieces
arm-2 = Arm
test-pieces-2 = Test pieces
keepers = Keepers
compared-with = compared with
test-pieces-3 = Test pieces of { $name }
keepers-of = Keepers of { $name }
keep-these-numbers = Keep these numbers
steps-and-loads = Steps and loads
each-round = each round
in-what = in { $loads }
with-in = with { $witnesses } in each
with-tied-to-each = each piece by itself with { $witnesses } tied or sewn to it
no-recipe-yet-for-its-baths = No recipe yet for its baths.
recipes = Recipes:
write-a-recipe-for-its-arms = Write a recipe for its arms
where-dye-can-travel = Where dye can travel
nowhere-between-arms-none-share-wet = Nowhere between arms: none share wet loads or vessels.
from = From
onto = Onto
in-what-2 = In
would-it-show = Would it show?
yes = yes
hardly-same-dye-like-depth = hardly: same dye, like depth
random-order = Random order
take-undyed-pieces-from-the-pile = Take undyed pieces from the pile and label them in this order. It follows from the seed { $seed }, which is kept. Blind codes for judging by eye stay hidden until you open them in the trial.
first = { $kind }: first { $loads }
all-pieces-in-their-order = All { $pieces } pieces in their order
pieces-in-random-order = Pieces in random order
piece = Piece
shares = Shares
board-window = Board, window
seed-empty-for-chance = Seed, empty for chance
draw-the-order-again = Draw the order again
the-whole-plan-as-text = The whole plan as text
see-or-edit = See or edit it
plan-text-toml = Plan text (TOML)
everything-can-be-changed-here-loads = Everything can be changed here: loads, days, vessels, witness cloths, what a product’s own label says. What can’t be taken is said with its place.
keep-this-text = Keep this text
revisions = Revisions
nothing-is-lost-each-change = Nothing is lost: each change is a revision, and going back is one more.
shown-here = shown here
see-revision = See revision { $number }
trials-started-from-it-stay = Trials started from it stay.
and-between = { " " }and{ " " }

## pages/plan/ask.rs

give-a-whole-number-such-as-5 = Give a whole number, such as 5.
choose-a-difference-or-give-your-own = Choose a difference, or give your own as a number, such as 1.5.
give-a-number-such-as-or-leave = Give a number, such as { $example }, or leave it empty.
grade = Grade { $grade }, { $de }

## pages/plan/revise.rs

this-button-is-of-no-page = This button is of no page of ours.
back-to-revision = Back to revision { $number }
edited-as-text = Edited as text
is-no-seed-give-a-whole-number = "{ $typed }" is no seed: give a whole number up to { $max }, or leave it empty.
order-drawn-from-seed = Order drawn from seed { $seed }
give-a-whole-number-such-as-4 = Give a whole number, such as 4.
other-numbers-of-pieces-or-rounds = Other numbers of pieces or rounds

## pages/plan/show.rs

against = { $second } against { $first }

## promises.rs

what-this-plan-can-show-failed = What this plan can show couldn’t be worked out: Woadstone failed at it, and its log says how. The plan itself is unharmed; a change of it is worked out anew.

## pages/plan/start.rs

the-new-trial = the new trial is not on the bench
there-is-no-plan-of-that-name = There is no plan of that name and revision on this bench. The list of trials shows the plans that are here.
