## eyes/agreement.rs

it-takes-two-people-to-agree = It takes two people to agree or not.
it-takes-pairs-that-two-people-graded = It takes { $fewest_pairs } pairs that two people graded; here are { $pairs }.
they-agree-on-all-pairs-how-seldom = They agree on all { $pairs } pairs; how seldom they would not can't be told from so few.
they-agree-closely = They agree closely.
they-agree-well = They agree well.
they-agree-better-than-chance-how-well = They agree better than chance; how well is not settled by so few pairs.
that-they-agree-better-than-by-chance = That they agree better than by chance is not shown.
it-takes-pairs-here = It takes { $fewest_pairs } pairs; here are { $both }.

## eyes/judging.rs

choose-what-is-said-of-colour-vision = Choose what is said of colour vision, or leave it unstated.
say-who-judges-by-name-or-initials = Say who judges, by name or initials.
say-under-which-light-such-as-north = Say under which light, such as "north window, noon" or "D65 lamp".
write-this-in-letters-at-most = Write this in { $longest } letters at most.

## eyes/more.rs

about-per-arm-would-probably-settle = About { $more } per arm would probably settle it.
about-of-the-same-pieces-would-probably = About { $people } of the same pieces would probably settle it.
about-per-arm-and-would-probably-settle = About { $units } per arm and { $people } would probably settle it.
half-steps-of-a-grey-scale = Half-steps of a grey scale are coarse beside this margin: even { $most_units } { $unit ->
    [load] loads
    [cloth] witness cloths
   *[piece] pieces
  } per arm and { $most_judges } people might not settle it. Readings from a photo would be sharper.
the-difference-lies-so-near-the-margin = The difference lies so near the margin, or the { $unit ->
    [load] loads
    [cloth] witness cloths
   *[piece] pieces
  } scatter so much, that even { $most_units } { $unit ->
    [load] loads
    [cloth] witness cloths
   *[piece] pieces
  } per arm and { $most_judges } people might not settle it.

## eyes/read_csv.rs

has-graded-at-stage-in-row-already = { $judge } has graded { $piece } at stage { $stage } in row { $before } already; keep one of the two
the-grade-is-which-a-spreadsheet = the grade is "{ $written }", which a spreadsheet has made of a half-step; write it as 4.5

## eyes/row.rs

piece-is-in-arm-here = piece { $piece } is in arm { $arm } here and in arm { $arm2 } before; give each piece one arm
piece-has-the-role-here-and-role2 = piece { $piece } has the role { $role } here and { $role2 } before; give each piece one role

## eyes/session.rs

has-no-keeper-so-there-is-nothing = { $name } has no keeper, so there is nothing to judge its pieces against.
there-is-no-pair-to-judge = There is no pair to judge: an arm needs a keeper, unwashed and kept in the dark, beside its test pieces.
nothing-was-read-of-these-pieces = Nothing was read of these pieces at that stage, so there are no colours to show on a screen. Judge the cloths themselves, or add readings first.
there-would-be-pairs-more = There would be { $pairs } pairs, more than the { $most_pairs } that an eye can take: leave staining or catch pairs out.
n-1-pair-was-not-read = 1 pair was not read at that stage and is left out.
pairs-were-not-read-at-that-stage = { $count } pairs were not read at that stage and are left out.

## eyes/words.rs

before-the-first-round = Before the first round
after-1-round = After 1 round
after-rounds = After { $n } rounds
one-pair-of-eyes-sees = one pair of eyes sees
people-see = { $count } people see
judged-by-eye-that-has-clearly-faded = { $when }, judged by eye, { $see } that { $more } has clearly faded further than { $less }, by more than was set as what matters.
judged-by-eye-that-has-faded = { $when }, judged by eye, { $see } that { $more } has faded a little further than { $less }, but by too little to matter.
judged-by-eye-and-have-changed-equally = { $when }, judged by eye, { $a } and { $b } have changed equally far: { $see } no difference that matters.
one-piece-of-an-arm-says-nothing = { $when }, one piece of an arm says nothing of how much pieces differ, so eyes can't settle { $a } against { $b }.
judged-by-eye-that-has-faded-further = { $when }, judged by eye, { $see } that { $more } has faded further than { $less }, but whether by as much as matters is not settled.
eyes-cant-tell-from-and-cant-show = { $when }, eyes can't tell { $a } from { $b }, and can't show them to be alike either. Treat the question as open.
mean-grades-are-for-and-for-pieces2 = Mean grades are { $of_a } for { $a } ({ $pieces }) and { $of_b } for { $b } ({ $pieces2 }), by { $judges }.
they-differ-by-of-a-grade = They differ by { $abs } of a grade (95 % interval { $e } to { $e2 }); the margin of { $margin_de00 } is { $margin } of a grade here, taking one CIEDE2000 as one unit of { $scale }.
the-grey-scales-own-difference = the grey scale's own difference (ISO 105-A05)
the-difference-of-the-scale-for-staining = the difference by which the grey scale for staining is graded (ISO 105-A04)
one-person-judged-the-verdict-leans = One person judged: the verdict leans on an assumption of how little people differ, and tells nothing of other eyes.
each-arm-had-a-load = Each arm had a load of its own, so the difference goes with the arm or with its load: this trial can't tell which.
loads-not-pieces-are-counted = Loads, not pieces, are counted: { $fewest } in the arm with fewer.
grades-tell-how-far-a-piece = Grades tell how far a piece has changed, not in which direction: two arms of one grade may still differ in hue.
different-people-judged-and-so-eyes-cant = { $stage }, different people judged { $a } and { $b }, so eyes can't compare them.
nobody-judged-pieces-of-both-and-nor = Nobody judged pieces of both { $a } and { $b }, nor is there a chain of people who did: a strict judge can't be told from a faded piece. Let one person judge all pieces of both.
judged-by-eye-that-has-clearly-stained = { $when }, judged by eye, { $see } that { $more } has clearly stained its witness cloths more than { $less }, by more than was set as what matters.
judged-by-eye-that-has-stained = { $when }, judged by eye, { $see } that { $more } has stained its witness cloths a little more than { $less }, but by too little to matter.
judged-by-eye-and-have-stained-equally = { $when }, judged by eye, { $a } and { $b } have stained their witness cloths alike: { $see } no difference that matters.
one-witness-of-an-arm-says-nothing = { $when }, one witness cloth of an arm says nothing of how much such cloths differ, so eyes can't settle whether { $a } or { $b } stains more.
judged-by-eye-that-has-stained-further = { $when }, judged by eye, { $see } that { $more } has stained its witness cloths more than { $less }, but whether by as much as matters is not settled.
eyes-cant-tell-stains-of-from = { $when }, eyes can't tell the stains of { $a } from those of { $b }, and can't show them to be alike either. Treat the question as open.
mean-grades-of-staining-are = Mean grades of staining are { $of_a } for { $a } ({ $pieces }) and { $of_b } for { $b } ({ $pieces2 }), by { $judges }.
witness-cloths-washed-with-other-arms = { $when }, witness cloths were washed together with pieces of another arm, so whether { $a } or { $b } stains more can't be told from them. To tell, wash each arm in a load of its own, with witness cloths of its own.
a-witness-was-in-a-load-with = A witness cloth was in a load with pieces of another arm, whose dye may be what stained it.
grades-tell-how-much-a-cloth = Grades tell how much a cloth was stained, not in which colour.
nobody-judged-witnesses-of-both = Nobody judged witness cloths of both { $a } and { $b }, nor is there a chain of people who did: a strict judge can't be told from a stronger stain. Let one person judge all witness cloths of both.

## eyes/more.rs

normal-colour-vision = normal colour vision
colour-vision-that-is-not-normal = colour vision that is not normal
colour-vision-not-stated = colour vision not stated
the-cloths-themselves = the cloths themselves
measured-colours-on-a-screen = measured colours on a screen
nearly-all-got-one-and-the-same = Nearly all got one and the same grade, which leaves nothing by which agreement could be told from habit.

## eyes/more.rs

more-units = { $unit ->
    [load] { $count ->
        [one] 1 more load
       *[other] { $count } more loads
      }
    [cloth] { $count ->
        [one] 1 more witness cloth
       *[other] { $count } more witness cloths
      }
   *[piece] { $count ->
        [one] 1 more piece
       *[other] { $count } more pieces
      }
  }
more-people = { $count ->
    [one] 1 more person
   *[other] { $count } more people
  }
more-people-judging = { $count ->
    [one] 1 more person's judging
   *[other] { $count } more people's judging
  }

## eyes/words.rs

pieces = { $count ->
    [one] 1 piece
   *[other] { $count } pieces
  }
people = { $count ->
    [one] 1 person
   *[other] { $count } people
  }
witness-cloths = { $count ->
    [one] 1 witness cloth
   *[other] { $count } witness cloths
  }
