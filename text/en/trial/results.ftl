## results.rs

no-photo-or-instrument-has-read = No photo or instrument has read the pieces. What people judged by eye stands below.
nothing-has-been-read-yet-add = Nothing has been read yet. Add a photo of the pieces and mark where each lies.
there-is-no-verdict-yet-it-takes = There is no verdict yet: it takes readings of two arms after a round of washing.
