## queue.rs

woadstone-broke-down-over-this-photo = Woadstone broke down over this photo; that is a fault of the program, not of the photo. Other photos are not touched by it.
photo = photo { $id }, { $code }: { $message }

## queue.rs, for the journal

pieces-read = { $pieces ->
    [one] 1 piece
   *[other] { $pieces } pieces
  } of { $marked } on photo { $photo }
