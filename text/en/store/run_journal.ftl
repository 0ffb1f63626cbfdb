## run_journal.rs

step = , step { $step }
at = , at { $at }
instead-of-note = , instead of note { $of }
instead-of-reading = , instead of reading { $of }
run = run "{ $title }"
