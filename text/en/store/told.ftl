### Sentences of the journal.

## told/mod.rs, of photos

photo-added = The photo “{ $name }” was added, taken { $stage ->
    [0] before the first round
    [one] after 1 round
   *[other] after { $stage } rounds
  }.
areas-marked = { $pieces ->
    [one] 1 piece was
   *[other] { $pieces } pieces were
  } marked on the photo “{ $name }”.
photo-read = The photo “{ $name }” was read: colours of { $pieces } of { $marked ->
    [one] 1 piece
   *[other] { $marked } pieces
  }.
photo-refused = The photo “{ $name }” was refused: { $message }
photo-taken-out = The photo “{ $name }” was taken out of the queue; it and its marks stay.
stage-corrected = The photo “{ $name }” was moved from round { $before } to round { $stage }.

## told/mod.rs, of trials

trial-entered = The trial “{ $title }” was entered, with { $arms ->
    [one] 1 arm
   *[other] { $arms } arms
  } and { $pieces ->
    [one] 1 piece
   *[other] { $pieces } pieces
  }.
readings-added = { $readings ->
    [one] 1 reading of an instrument was
   *[other] { $readings } readings of an instrument were
  } added, { $from }.
graded = { $by } judged piece { $piece } by eye: { $grade }.
withdrawn = A { $thing } was withdrawn: { $reason }
judging-begun = Judging by eye was begun, with { $pairs ->
    [one] 1 pair
   *[other] { $pairs } pairs
  } { $stage ->
    [0] before the first round
    [one] after 1 round
   *[other] after { $stage } rounds
  }.
judging-closed = Judging by eye was closed; its grades and codes were laid open.
person-judges = { $name } began to judge by eye.
blind-codes-opened = The blind codes of the trial’s pieces were opened.

## told/mod.rs, of plans, recipes and runs

plan-kept = The plan “{ $title }” was kept.
plan-changed = The plan “{ $title }” was changed: { $why }
recipe-kept = The recipe “{ $name }” was kept.
recipe-changed = The recipe “{ $name }” was changed: { $why }
recipe-is-for = The recipe “{ $name }” is now for “{ $title }”.
recipe-is-for-nothing = The recipe “{ $name }” is now for nothing in particular.
run-begun = The run “{ $title }” was begun by the recipe “{ $recipe }”, revision { $number }.
put-in-the-bin = The { $kind } “{ $title }” was put in the bin.
taken-out-of-the-bin = The { $kind } “{ $title }” was taken out of the bin.

## told/mod.rs, of the studio

material-added = The material “{ $name }” was added.
lot-added = A lot of “{ $name }” was added: { $amount }.
chart-added = The chart “{ $name }” was added.
set-up-checked = The set-up “{ $name }” was checked by { $photos ->
    [one] 1 photo
   *[other] { $photos } photos
  } of { $pieces ->
    [one] 1 piece
   *[other] { $pieces } pieces
  }.
settings-changed = The settings were changed: { $chosen }.
device-paired = The device “{ $name }” was paired.
device-revoked = The device “{ $name }” was shut out.

## told/mod.rs

as-it-stands = { $what }: { $detail }
