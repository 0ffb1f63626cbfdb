## error.rs

values-were-given-where-at-least = { $given } values were given where { $least } at least are needed
stages-after-the-start-were-given-where = { $given } stages after the start were given where a curve needs { $least } at least; look at the pieces after another round
splits-are-too-many-to-count = { $splits } splits are too many to count one by one; { $most } is the limit
a-value-is-not-a-finite-number = a value is not a finite number
all-values-of-a-group-are-equal = all values of a group are equal, so there is no scatter to judge by
the-margin-is-not-above-0 = the margin { $margin } is not above 0
the-number-is-out-of-range = the { $what } is { $value }; it has to be { $range }
arm-has-no-piece-give = arm { $arm } has no piece; give it one at least, or leave it out
nothing-is-wished-for-name-a-difference = nothing is wished for; name a difference to be shown or a margin to be kept
dunnetts-limit-is-for-comparisons = Dunnett's limit is for comparisons with one control; compare with one, or take Holm's rule
the-values-cant-tell-fixed-effect = the values can't tell fixed effect { $column } from those before it; leave it out, or add values that differ in it
how-scatter-among-themselves-cant-be = how { $part } scatter among themselves can't be told from what is compared, so the comparison has no error that could be trusted; let each side have two or more of them
arm-has-no-value-at-stage = arm { $arm } has no value at stage { $stage }
numbers-were-given-where-the-model = { $given } numbers were given where the model has { $wanted }
no-best-fit-was-found-in-steps = no best fit was found in { $steps } steps; the values don't settle { $what }
pieces-and-loads-of-leave-no-room = { $pieces } pieces and { $loads } loads of { $per_load } leave no room for { $arms } arms with two pieces each, or two loads each where arms don't share any; allow more
pieces-per-arm-reach-a-power = { $most } pieces per arm reach a power of { $reached }, not { $wanted }; allow a greater difference
units-were-given-but-levels-for-them = { $left } units were given, but { $right } levels for them
levels-of-loads-days-and-places = { $given } levels of loads, days and places are too many; { $most } is the limit
above-0-and-below-1 = above 0 and below 1

## agreement.rs

number-of-categories = number of categories
from-2-to-200 = from 2 to 200
category = category
below-the-number-of-categories-counted = below the number of categories, counted from 0

## direction.rs

the-number-of-parts-of-a-vector = the number of parts of a vector at least; give more readings
number-of-degrees-of-freedom = number of degrees of freedom
length-of-a-direction = length of a direction
above-0 = above 0
level = level
from-1-to-below-1 = from -1 to below 1
least-cosine = least cosine
from-100-to-1-000-000 = from 100 to 1,000,000
number-of-draws = number of draws
variance-in-some-direction = variance in some direction
n-0-or-above = 0 or above

## dunnett.rs

number-of-units = number of units

## holm.rs

probability = probability
from-0-to-1 = from 0 to 1

## hotelling.rs

share-of-the-covariance = share of the covariance
the-number-of-parts-of-a-vector-2 = the number of parts of a vector at least; give more vectors

## permutation.rs

n-1-or-more = 1 or more
number-of-draws-times-values = number of draws times values
at-most-2e9 = at most 2e9

## pool.rs

variance-of-a-trial = variance of a trial

## sample_size.rs

difference = difference
a-finite-number = a finite number
a-finite-number-other-than-0 = a finite number other than 0
true-difference = true difference
a-number-within-the-margin = a number within the margin
number-of-pieces-per-arm = number of pieces per arm
above-1-and-at-most-a-million = above 1 and at most a million
wanted-power = wanted power
above-the-level-and-below-1 = above the level and below 1

## share.rs

count = count
no-more-than-were-tried = no more than were tried

## permutation/vectors.rs

loads = loads

## simulate/design.rs

number-of-loads-and-arms = number of loads and arms in one comparison
smaller-where-so-many-pairs-are-compared = smaller where so many pairs are compared; take the scatter of all arms

## simulate/fit.rs

at-most-400 = at most 400

## simulate/layout.rs

number-of-arms = number of arms
n-2-to-50 = 2 to 50
one-for-each-arm-0-where = one for each arm, 0 where it has none
length-of-the-list-of-keepers = length of the list of keepers
number-of-the-control = number of the control
that-of-an-arm-counted-from-0 = that of an arm, counted from 0
arm-of-a-piece = arm of a piece
one-for-each-kind-of-load = one for each kind of load
length-of-a-pieces-list-of-loads = length of a piece's list of loads

## simulate/truth.rs

level-of-equivalence = level of equivalence
number-of-runs = number of runs
n-1-at-least = 1 at least
at-most-50-million-take-fewer-runs = at most 50 million; take fewer runs
number-of-pieces-times-runs = number of pieces times runs
length-of-the-list-of-effects = length of the list of effects
one-for-each-arm = one for each arm
length-of-the-list-of-load-scatters = length of the list of load scatters
effect = effect
scatter-from-piece-to-piece = scatter from piece to piece
scatter-of-a-reading = scatter of a reading
scatter-from-load-to-load = scatter from load to load
scatter-of-pieces-and-readings = scatter of pieces and readings
number-of-photos = number of photos
a-finite-number-0-at-least = a finite number, 0 at least
number-of-parts = number of parts
n-1-or-3 = 1 or 3

## simulate/smallest/wish.rs

above-the-levels-and-below-1 = above the levels and below 1
number-of-pieces-a-load-counts = number of pieces a load counts for

## mixed/criterion.rs

the-parts-of-the-scatter = the parts of the scatter

## mixed/data.rs

number-of-kinds-of-loads = number of kinds of loads
at-most-8 = at most 8
number-of-values = number of values
at-most-4-million = at most 4 million

## mixed/fit.rs

greatest-weight = greatest weight
above-0-or-below-0 = above 0 or below 0
pieces = pieces
number-of-models-by-full-likelihood = number of models by full likelihood
number-of-effects-that-are-tested = number of effects that are tested

## mixed/sums.rs

number-of-fixed-effects-and-loads = number of fixed effects and loads in one model
at-most-1000 = at most 1000
number-of-fixed-effects-and-loads-2 = number of fixed effects and loads, squared, times that of piece sizes
at-most-40-million = at most 40 million

## decay/fit.rs

number-of-rounds = number of rounds
from-0-to-twice-the-last-round = from 0 to twice the last round looked at; further than that no curve can be trusted
from-100-to-100-000 = from 100 to 100,000
error-shared-by-a-stage = error shared by a stage
error-shared-from-the-start = error shared from the start
error-of-others-start = error of others' start
from-0-to-1e6 = from 0 to 1e6
at-most-100-000 = at most 100,000
above-0-and-at-most-1e6 = above 0 and at most 1e6; the start is 1 by definition and isn't given
share-left = share left
from-1000-to-1000 = from -1000 to 1000

## decay/plain.rs

span-of-rounds = span of rounds
a-rate-above-0 = a rate above 0; they may be all equal, rise, or lie on a line
the-figures-of-the-curve = the figures of the curve
