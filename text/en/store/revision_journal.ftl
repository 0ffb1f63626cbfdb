## revision_journal.rs

revision = revision { $number }: { $change }
which-the-trial-follows = { $revision } (the trial follows this one)
of-recipe = { $recipe }, { $revision }
