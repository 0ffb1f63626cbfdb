## plan/check.rs

write-down-the-question-the-trial = Write down the question the trial is to answer.
the-margin-must-lie-above-0 = The margin must lie above 0 and at most at { $largest_margin_de00 } CIEDE2000; 1 is a difference that can just be seen side by side.
plan-at-least-1-round = Plan at least 1 round and at most { $most_rounds }.
pieces-cant-be-looked-at-after-rounds = Pieces can't be looked at after { $stage } rounds where only { $rounds } are planned.
a-trial-compares-give-it-two-arms = A trial compares: give it two arms at least, one of them without the extra step.
a-trial-can-have-arms-at-most = A trial can have { $most_arms } arms at most, not { $arms }.
only-one-arm-can-be-the-control = Only one arm can be the control; "{ $name }" is the second one marked.
witness-cloth = witness cloth
name-at-least-one-day-person = Name at least one day, person or place here, or leave the entry out.
the-vessel-names-the-load = The vessel "{ $name }" names the load "{ $load }", which no step has.
say-which-product-this-instruction = Say which product this instruction is for.
there-is-no-arm-the-arms = There is no arm "{ $name }"; the arms are { $name2 }.
fill-in-the-name-of-arm = Fill in the name of arm { $i }.
two-arms-are-called-give = Two arms are called "{ $name }": give each its own name.
the-arm-has-no-test-piece-give = The arm "{ $name }" has no test piece: give it 2 at least, better 4.
the-arm-has-pieces-an-arm = The arm "{ $name }" has { $all } pieces; an arm can have { $most_pieces } at most. So many are never needed: a dozen show all that matters.
the-depth-of-must-lie-between-0 = The depth of "{ $name }" must lie between 0 and { $deepest_percent } percent on weight of fibre; 0.5 is pale, 4 deep.
the-arm-has-pieces-but-codes-give = The arm "{ $name }" has { $all } pieces but { $codes } codes: give each piece one, or none at all.
a-piece-of-has-an-empty-code = A piece of "{ $name }" has an empty code.
two-pieces-carry-the-code-give = Two pieces carry the code "{ $code }": give each its own.
a-standard-deviation-lies-between-0 = A standard deviation lies between 0 and { $largest_margin_de00 } CIEDE2000 units, not { $sd }.
equal-pieces-never-read-alike = Equal pieces never read alike to the last digit: give a scatter from piece to piece or of reading above 0.
entries-are-too-many-here-are-possible = { $names } entries are too many here; { $most_loads } are possible.
a-has-no-name = A { $what } has no name.
the-is-named-twice = The { $what } "{ $name }" is named twice.
a-step-takes-more-than-0-minutes = A step takes more than 0 minutes and at most a week.
a-bath-has-between-0-and-degrees = A bath has between 0 and { $hottest_c } degrees Celsius.
entries-are-too-many-here-are-possible-2 = { $count } entries are too many here; { $most_entries } are possible.
keep-this-to-characters-at-most = Keep this to { $most } characters at most.
and = { $rest } and { $last }

## plan/dose.rs

times-the-dose = { $factor } times the dose
times-as-long = { $factor } times as long
all-arms = All arms
other-than-its-instruction-says = { $arms } { $verb } { $agent } other than its instruction says: { $value }.
the-verdict-holds-for-this-use-only = The verdict holds for this use only; it can't speak of the product used as it is meant to be.
warmer = warmer
cooler = cooler
uses = uses
use-what = use

## plan/enter.rs

min = { $minutes } min
each-piece-by-itself = each piece by itself
of = of { $as_str }
witness-of-wash = { $place }, wash { $wash }, { $cloth }
to = { $amount } to { $water }

## plan/margin.rs

grade = grade { $grade }
the-margin-is-neither-a-number = the margin "{ $value }" is neither a number of CIEDE2000 units nor a grade of the grey scale; write 1.7 or "grade 4"
the-margin-is-something-else = the margin is a number of CIEDE2000 units or a grade of the grey scale; write 1.7 or "grade 4"
grade-5-means-no-change = grade 5 means no change at all, so it can't be the smallest change that matters; write "grade 4-5" or a worse one
ciede2000-about-grade = { $value } CIEDE2000, about grade { $nearest_grade }
grade-ciede2000 = grade { $grade }, { $de } CIEDE2000

## plan/mend.rs

give-pieces = Give "{ $arm }" { $to } pieces
give-a-keeper = Give "{ $arm }" a keeper
look-at-all-pieces-before-the-first = Look at all pieces before the first round
add-a-plain-soak-as-long = Add a plain soak, as long and as warm
split-each-over-all-arms = Split each { $kind } over all arms
give-every-pieces-of-every-arm = Give every { $kind } pieces of every arm
two-loads-for-each-arm = Two loads for each arm in the { $kind }, none shared
a-jar-of-its-own = A jar of its own for each piece in the { $kind }
put-a-multifibre-strip-into-every-wash = Put a multifibre strip into every wash
clean-between-loads = Clean "{ $vessel }" between loads
alternate-the-arms = Alternate the arms in "{ $vessel }"
use-the-product-as-its-instruction-says = Use the product as its instruction says
this-departure-is-what-the-trial-asks = This departure is what the trial asks about
plain-soak = plain soak { $n }

## plan/model.rs

assumed-for-want-of-trials = Assumed, for want of trials of your own: 0.5 from piece to piece, 0.3 from load to load and 0.3 for reading a piece beside a chart (common practice, no source). Your own trials and a set-up check replace them.

## plan/promise.rs

what-this-plan-can-show-cant = What this plan can show can't be worked out: { $error }.
against = "{ $second }" against "{ $first }"
less-than-once = less than once
times = { $times } times
with-pieces-per-arm-youd-miss = { $pair }: with { $pieces } pieces per arm you'd miss a grade 4 fade { $often } in 10.

## plan/propose.rs

a-trial-compares-name-two-arms = A trial compares: name two arms at least, one of them without the extra step.
with-no-there-is-no-trial-give = With no { $what } there is no trial: give how many you can spare.
pieces-are-too-few-for-arms = { $pieces } pieces are too few for { $arms } arms: each needs two to be treated and one kept unwashed, { $least } in all. Take more pieces, smaller ones if need be, or compare fewer arms.
deep-and-pale-colours-cant-be-washed = Deep and pale colours can't be washed together, so each of the { $arms } arms needs two washes of its own, { $arms2 } in a round. Bowls will do for small pieces; or compare fewer depths.
staining-is-told-by-washes-of-one-arm = A stain is told by cloth that was washed with one arm alone, so each of the { $arms } arms needs two washes of its own, { $arms2 } in a round. Bowls or jars will do for small pieces; or leave staining out.
no-design-fits-into-pieces-and-washes = No design fits into { $pieces } pieces and { $washes } washes a round for { $arms } arms. Allow more, or compare fewer arms.
no-design-can-be-worked-out = No design can be worked out: { $error }.
dye-pot = dye pot
wash = wash { $n }
day = day { $n }
times-in-100 = { $share } times in 100
test-pieces-in-each-arm-pieces = { $per_arm } test pieces in each arm, { $pieces } pieces in all, { $loads } a round
a-difference-of-is-shown = a difference of { $margin } is shown { $shows_margin }
and-arms-that-dont-differ-are-shown = { $design }: { $shows }, and arms that don't differ are shown alike { $alike }.
to-show-as-often-that-arms = { $design }: { $shows }. To show as often that arms are alike, the budget would have to be larger: without a difference the verdict may stay open.
nothing-within-the-budget-shows-the = Nothing within the budget shows the margin four times in five. This comes closest. { $design }: { $shows }. Allow more pieces or washes, or ask for a larger difference.
pot = pot

## plan/read.rs

the-plan-cant-be-written = The plan can't be written: { $error }.
this-file-has-bytes-a-plan = This file has { $value } bytes; a plan has { $most_bytes } at most.
the-plan = the plan
the-enquiry = the enquiry

## plan/studio.rs

reading-by-your-set-up-check-within = Reading by your set-up check "{ $name }", { $within_widest_sd_de00 }.
from-piece-to-piece-by-pieces = From piece to piece by { $pieces } pieces of { $n }, { $own }.
piece-sd-de00-from-piece-to-piece = { $piece_sd_de00 } from piece to piece
load-sd-de00-from-load-to-load = { $load_sd_de00 } from load to load
reading-sd-de00-for-reading = { $reading_sd_de00 } for reading
assumed-common-practice-no-source = Assumed (common practice, no source): { $assumed }.

## plan/critique/alias.rs

has = "{ $name }" has { $names }
all-pieces-of-one-arm-share = All pieces of one arm share one load in the { $kind }: { $own }.
in-the-arms-have-one-load = In the { $kind } arms have one load of their own: { $own }.
arms-are-worked-on-days = Arms are worked on days of their own: { $own }.
arms-are-worked-by-people = Arms are worked by people of their own: { $own }.
arms-lie-at-places-of-their-own = Arms lie at places of their own on the board: { $own }.
a-difference-goes-with-the-treatment = A difference goes with the treatment or with the { $kind }; no number of pieces tells which, and the verdict will name both.
the-is-spread-unevenly-over = The { $kind } is spread unevenly over { $string }.
allowing-for-the-costs-of-what-these = Allowing for the { $kind } costs { $efficiency } % of what these pieces could tell of the two arms' difference.
cant-be-told-apart-once-are-allowed = { $string } can't be told apart once { $kinds } are allowed for together.
none-of-them-hides-the-difference-alone = None of them hides the difference alone, but their sum does: the verdict would have to name all of them.
and-2 = { " " }and{ " " }

## plan/critique/carry.rs

in-the-lie-wet-together-in-though = In the { $kind } { $copied } lie wet together in { $into_iter }, though they differ in dye or depth.
dye-from-can-settle-on-into-iter2 = Dye from { $into_iter } can settle on { $into_iter2 } and count there as a change of their own.

## plan/critique/count.rs

has-one-test-piece = has one test piece
have-one-test-piece = have one test piece each
so-nothing-shows-how-much-equal-pieces = { $arms } { $has }, so nothing shows how much equal pieces differ.
the-verdict-will-be-not-enough-evidence = The verdict will be "not enough evidence", however large the difference looks: it may be this one piece.
has-no-keeper = has no keeper
have-no-keeper = have no keeper
no-piece-is-kept-unwashed = { $arms } { $has }: no piece is kept unwashed in the dark to lie beside the washed ones on every photo.
what-the-light-and-the-camera-change = What the light and the camera change from one photo to the next counts as change of the cloth, so intervals get several times as wide.
no-piece-is-looked-at-before = No piece is looked at before its first round.
how-far-a-piece-has-changed = How far a piece has changed can then only be told from its keeper, not from its own start; what differed from the beginning looks like fading.

## plan/critique/order.rs

in-the-pieces-of-always-come-before = In "{ $name }" the pieces of "{ $first }" always come before those of "{ $last }", and it isn't cleaned in between.
what-leaves-behind-comes-onto-a = What "{ $first }" leaves behind comes onto "{ $last }": a difference goes with the treatment or with the order.

## plan/critique/soak.rs

the = the { $kind }
the-with = the { $kind } with { $agent }
min-2 = { " " }({ $minutes } min)
no-plain-soak-that-matches = { $arms } { $verb } no plain soak that matches { $what } of { $string }{ $how }.
warm-water-alone-takes-loose-dye-off = Warm water alone takes loose dye off. A difference may come from the product or from the water, and the verdict can't say from which.
at = (at { $celsius })
gets = gets
get = get

## plan/critique/witness.rs

the-wash = The wash has
washes-have = { $n } washes have
no-witness-cloth-no-undyed-strip = { $place } no witness cloth, no undyed strip that is washed along.
nothing-will-show-whether-dye-came-off = Nothing will show whether dye came off and settled elsewhere, so the trial can't speak of staining, nor tell dye lost from dye gained.
has-2 = has
have = have

## plan/propose.rs

n-1-wash = 1 wash
washes = { $loads } washes

## plan/studio.rs

a-past-trial-of-your-own = a past trial of your own
past-trials-of-your-own = { $n } past trials of your own

## plan/critique/soak.rs

min-at = { " " }({ $minutes } min at { $celsius })
day-2 = day
person = person
place-on-the-board = place on the board
soak = soak
dye-bath = dye bath
rinse = rinse
after-treatment = after-treatment
wash-2 = wash
drying = drying
does-the-colour-last = Does the colour last?
does-the-extra-step-matter = Does the extra step matter?
which-one-is-best = Which one is best?
what-does-one-dye-give-at-several = What does one dye give at several depths?
by-pieces = by pieces
by-pieces-within-loads = by pieces within loads
by-means-of-loads = by means of loads
never-each-arm-has-one-load = never: each arm has one load, its own
never-too-few-pieces-to-tell = never: too few pieces to tell what chance does

## plan/staining.rs

no-wash-has-a-witness-cloth = Staining can't be told: no wash has a witness cloth.
witness-cloths-lie-with-pieces-of-several = Staining can't be laid to one arm: the witness cloths in { $loads } are washed with pieces of several.
ask-for-staining-to-compare = { $told } They show whether dye comes off. To compare the arms by what they stain, wash each by itself, in two loads at least, or each piece in a jar of its own.
loads-of-one-name-are-one-load = { $told } Several steps name { $loads }, and a name stands for one load: if they are different loads, give each a name of its own.
fewer-than-two-witness-cloths = Staining can't be compared: { $arms } would have fewer than two witness cloths of { $cloths } in washes of its own.
cloth-of-wash = "{ $cloth }" from wash { $wash }
staining-can-be-compared = Staining can be compared: each arm is washed by itself, with { $witnesses } witness cloths of a kind at least from each of its washes.
the-stain-cant-be-laid-to-one-arm = Any of them may have stained such a cloth, so the verdict on staining stays open however many pieces there are.
one-cloth-tells-nothing-of-chance = One cloth doesn't show what chance does, so the verdict on staining stays open.
