## new_trial.rs

the-title = the title
the-question = the question
write-down-the-question-the-trial = Write down the question the trial is to answer.
the-method = the method
the-margin-must-lie-above-0 = The margin must lie above 0 and at most at { $largest_margin_de00 }; 1 is a difference that can just be seen side by side.
plan-at-least-1-round = Plan at least 1 round and at most { $most_rounds }.
a-trial-compares-give-it-two-arms = A trial compares: give it two arms at least, one of them without the extra step.
a-trial-can-have-arms-at-most = A trial can have { $most_arms } arms at most.
the-name-of-arm = the name of arm { $i }
the-treatment = the treatment
two-arms-are-called-give = Two arms are called "{ $trim }": give each its own name.
the-arm-has-no-test-piece-add = The arm "{ $trim }" has no test piece: add one at least.
an-arm-can-have-pieces-at-most = An arm can have { $most_pieces } pieces at most.
the-code-of-a-piece = the code of a piece
two-pieces-carry-the-code-give = Two pieces carry the code "{ $trim }": give each its own.
the-load = the load
fill-in = Fill in { $what }.
keep-to-one-line-of-characters = Keep { $what } to one line of { $longest_name } characters at most.
keep-to-characters-at-most = Keep { $what } to { $longest_text } characters at most.
