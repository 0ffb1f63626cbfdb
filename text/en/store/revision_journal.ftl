## revision_journal.rs

plan-revised = The plan “{ $title }” was { $number ->
    [1] kept
   *[other] changed, revision { $number }
  }: { $change }
recipe-revised = The recipe “{ $name }” was { $number ->
    [1] kept
   *[other] changed, revision { $number }
  }: { $change }
which-the-trial-follows = { $revision } The trial follows this one.
