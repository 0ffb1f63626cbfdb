## marking.rs

mark-the-area-of-one-piece = Mark the area of one piece at least.
piece-number = Piece number { $piece } is not one of this photo's trial: mark pieces of the trial only.
piece-number-is-marked-twice = Piece number { $piece } is marked twice on this photo: keep one of its areas.
the-area-of-piece-number-needs-three = The area of piece number { $piece } needs three corners at least, each a pair of numbers.

## marking.rs, for the journal

pieces-on-photo = { $pieces ->
    [one] 1 piece
   *[other] { $pieces } pieces
  } on photo { $photo }
