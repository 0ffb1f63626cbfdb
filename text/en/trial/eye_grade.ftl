## eye_grade.rs

is-no-grey-scale-use-change = "{ $value }" is no grey scale; use change or staining
choose-a-piece-of-this-trial = Choose a piece of this trial.
choose-a-piece-of-this-trial-2 = Choose a piece of this trial, or the piece's own original.
a-piece-cant-be-judged-against-itself = A piece can't be judged against itself: choose a keeper, or the piece's own original.
say-who-judged-eyes-differ = Say who judged: eyes differ.
say-under-which-light-it-was-judged = Say under which light it was judged, such as "north window" or "D65 cabinet".
write-this-in-letters-at-most = Write this in { $longest } letters at most.
change-in-colour = change in colour
staining = staining
