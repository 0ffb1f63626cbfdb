## fade/against.rs

at-the-start-it-is-hardly-deeper = at the start it is hardly deeper than undyed cloth, so that no share of it can be told

## fade/curve.rs

no-test-piece-was-read = no test piece was read at the start or beside a keeper, so there is nothing to compare with

## fade/mod.rs

has-no-curve = { $name } has no curve of its { $else_value }: { $why }.

## fade/words.rs

its-change = Its change { $last }.
n-95-interval-to-i2 = { " " }(95 % interval { $i } to { $i2 } %)
reads-stronger-than-at-its-start = { $arm } reads stronger than at its start, which washing does not bring about: look at the photos and their keeper before trusting its readings.
or-more-is-left = ; { $i } % or more is left
no-loss-of-strength-is-shown-after = { $arm }: no loss of strength is shown after { $rounds }{ $at_least }.
it-levels-off-near = { " " }It levels off near { $floor } % ({ $low } to { $high } %).
where-it-levels-off-cant-be-told = { " " }Where it levels off can't be told yet.
that-is-one-piece-how-pieces-differ = { " " }That is one piece; how pieces differ can't be told from it.
after-about-of-the-dyes-strength = { $arm }: after { $rounds } about { $left } of the dye’s strength is left{ $range }.{ $floor }{ $single }
by-the-curve = { $n } (by the curve)
more-than = more than { $furthest }
n-95-interval = 95 % interval { $low } to { $high }
falls-below-grade-after-about = falls below grade { $grade } after about { $n } ({ $ends })
falls-below-grade-after-about-2 = falls below grade { $grade } after about { $n }
was-still-at-grade-or-better-after = was still at grade { $grade } or better after { $last }; by the curve alone it falls below after about { $n }{ $ends }
the-95-interval-of-when-it-falls = ; the 95 % interval of when it falls below begins at { $n }
even-at-the-near-end = , even at the near end of the 95 % interval
stays-at-grade-or-better-through-rounds = stays at grade { $grade } or better through { $furthest } rounds by the curve ({ $last } looked at){ $doubt }
s-n-floor2-exp-n = S(n) = { $floor } + { $floor2 } exp(−{ $rate } n){ $curve }
de-f-n-1-exp-n = dE_F(n) = { $floor } (1 − exp(−{ $rate } n)){ $curve }
each-against-its-keeper-of-the-same = each against its keeper of the same stage and its own start
each-against-its-own-start = each against its own start; what a photo does to all its pieces alike is not in the intervals
each-against-the-keeper-of-the-same = each against the keeper of the same stage
k-s-summed-over-400-to-700 = K/S summed over 400 to 700 nm
k-s-of-three-channels-worked-out = K/S of three channels worked out from Lab, which by itself errs by up to some 5 points of 100
undyed-cloth-taken-off = undyed cloth taken off
no-undyed-cloth-was-read = no undyed cloth was read at the start, so its own K/S is counted in
n-1-piece = 1 piece
pieces = { $n } pieces
at-rounds = { $pieces } at rounds { $stages }, { $against }; { $by }, { $off }.
more-had-nothing-to-be-compared = { $left_out } more had nothing to be compared with.
a-single-piece-without-intervals = , a single piece, without intervals.
the-floor-is-at-its-bound = { " " }The floor is at its bound.
the-rate-is-at-its-bound = { " " }The rate is at its bound: all of it had left by the first look.
the-loss-is-at-its-bound = { " " }The loss is at its bound of 0.
the-values-rise-the-loss-is-held = { " " }The values rise; the loss is held at 0.
no-upper-end = no upper end
n-95-intervals-to-k-to-per-round = , 95 % intervals: { $floor } { $low } to { $high }, k { $slow } to { $fast } per round.{ $note }
too-few-looks-to-compare-shapes = Too few looks to compare shapes of the { $of }.
no-change = no change
a-straight-line = a straight line
the-curve = the curve
aicc-of-the-no-change-line-curve = AICc of the { $of }: no change { $no_change }, line { $line }, curve { $curve }; { $best } is best.
n-1-round = 1 round
rounds = { $n } rounds
