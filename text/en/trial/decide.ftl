## decide/csv_text.rs

it-is-not-utf-8-text-save = it is not UTF-8 text; save it as CSV in UTF-8
the-is-empty = the { $column } is empty
the-stage-is-write-how-many-rounds = the stage is "{ $text }"; write how many rounds the piece has had, such as 0 or 5

## decide/dealt_anew.rs

of-all-ways-of-dealing-the-pieces = Of all { $ways } ways of dealing the pieces out to the two arms { $count } as great a difference.

## decide/of_trial.rs

it-rests = { " " }It rests on { $in_words } ({ $view }).
readings-from-other-sources-stand-beside = { " " }Readings from other sources stand beside it and are not mixed in.

## decide/read_csv.rs

here-are = { $fault }; here are { $l }, { $a }, { $b }
is-which-is-no-number-write = { $column } is "{ $value }", which is no number; write it like 41.2, with a point
is-a-standard-deviation-is-0 = { $column } is { $value }; a standard deviation is 0 or more

## decide/reason.rs

n-1-round = 1 round
rounds = { $stage } rounds
after-and-arm2-differ-by-de00-95 = After { $rounds } { $arm } and { $arm2 } differ by { $de00 } (95 % interval { $low } to { $high })
the-whole-interval-lies-above-the-margin = { $seen }: the whole interval lies above the margin of { $margin }.
a-difference-is-there-and-with-95 = { $seen }: a difference is there, and with 95 % confidence it is below { $below }, less than the margin of { $margin }.
no-difference-is-shown-and-with-95 = { $seen }: no difference is shown, and with 95 % confidence any is below { $below }, less than the margin of { $margin }.
along-the-way-both-fade-has-gone = Along the way both fade, { $further } has gone { $abs } further than { $other } (96 % interval { $ends } to { $ends2 }, p { $p }).
below-0-001 = below 0.001
it-stands-when-all-pairs = { " " }It stands when all { $pairs } pairs of this stage are weighed together (Holm).
of-pairs-at-one-stage = { " " }Of { $pairs } pairs at one stage one may look so by chance: weighed together (Holm) it is not certain.
one-piece-per-arm = one piece per arm
one-piece = one piece in { $arm }
after-and-arm2-differ-by-de00 = After { $rounds } { $arm } and { $arm2 } differ by { $de00 }
not-enough-evidence-but-a-single-piece = Not enough evidence: { $who }. { $seen }, but a single piece can't show how much pieces of one arm differ among themselves. Use 3 pieces per arm at least.
a-difference-is-there-but-whether = a difference is there, but whether it reaches the margin of { $margin } is not settled
no-difference-is-shown-but-one-beyond = no difference is shown, but one beyond the margin of { $margin } remains possible
it-looks-larger-than-the-margin = it looks larger than the margin of { $margin }, but chance alone could do that
with-keepers-in-step = , with keepers in step,
about-1-more-per-arm-would-probably = About 1 more { $unit ->
    [load] load
   *[piece] piece
  } per arm{ $keepers } would probably settle it.
about-more-s-per-arm-would-probably = About { $more } more { $unit ->
    [load] loads
   *[piece] pieces
  } per arm{ $keepers } would probably settle it.
the-difference-lies-so-near-the-margin = The difference lies so near the margin, or the { $unit ->
    [load] loads
   *[piece] pieces
  } scatter so much, that even { $most_units } { $unit ->
    [load] loads
   *[piece] pieces
  } per arm might not settle it.
each-arm-had-a-load = Each arm had a load of its own, so the difference goes with the arm or with its load: this trial can't tell which.
loads-not-pieces-are-counted = Loads, not pieces, are counted: { $units } in the arm with fewer.
arms-are-compared-within-the-loads = Arms are compared within the loads they shared.
the-scatter-of-one-arm-had = The scatter of one arm had to be taken from the other pieces.
how-well-photos-repeat-is-taken = How well photos repeat is taken from the set-up check.
test-piece-had-neither-a-start-nor = { $left_out ->
    [one] 1 test piece had neither a start nor a keeper to be compared with and is left out.
   *[other] { $left_out } test pieces had neither a start nor a keeper to be compared with and are left out.
  }

## decide/row.rs

l-a-and-b-must-be-plain = L, a and b must be plain numbers
l-must-lie-between-0-and-100 = L must lie between 0 and 100
a-and-b-must-lie-between-200 = a and b must lie between -200 and 200
piece-is-in-arm-here = piece "{ $piece }" is in arm "{ $arm }" here and in arm "{ $arm2 }" in row { $first }; give each piece a code of its own
piece-is-a-here-and-a-role2 = piece "{ $piece }" is a { $role } here and a { $role2 } in row { $first }; a piece keeps one role

## decide/dealt_anew.rs

this-one-alone-gives = this one alone gives
give = { $count } give
visible-difference = visible difference
real-but-too-small-to-matter = real, but too small to matter
no-difference-that-matters = no difference that matters
not-enough-evidence = not enough evidence

## decide/error.rs

the-margin-cant-be-used-give = The margin { $margin } can't be used: give a difference above 0, such as 1.0.
the-table-is-empty-it-needs = The table is empty: it needs a first line with arm,piece,role,load,stage,L,a,b and a row for each reading.
the-table-holds-no-grade-it-needs = The table holds no grade: it needs a first line with arm,piece,role,load,stage,judge,grade and a row for each grade.
the-first-line-has-no-column = The first line has no column "{ $column }": it must name { $columns }.
the-first-line-names-the-column-twice = The first line names the column "{ $column }" twice: leave one of them out.
no-grade-is-of-a-test-piece = No row has the role test or witness: eyes decide by washed test pieces or by stained witness cloths.
no-row-has-the-role-test = No row has the role test: a decision needs washed test pieces.
no-test-piece-can-be-compared = No test piece can be compared: each needs a row at stage 0, or a keeper of its arm at its own stage, and a row after one round or more.
there-are-pairs-of-arms-and-stages = There are { $pairs } pairs of arms and stages, more than { $most }: check the columns arm and stage, or split the table.
the-table-has-readings-of-several = The table has readings of several sources or lights ({ $kinds }), which differ by more than a change does: keep the rows of one.
row-below-the-column-names = Row { $row } below the column names: { $message }.
the-table-cant-be-read = The table can't be read: { $cause }.
