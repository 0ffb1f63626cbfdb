## revision_journal.rs

plan-kept = plan kept
plan-changed = plan changed
recipe-kept = recipe kept
recipe-changed = recipe changed
revision = revision { $number }: { $change }
which-the-trial-follows = { $revision } (the trial follows this one)
of-recipe = { $recipe }, { $revision }
