## deliveries.rs

there-is-nothing-to-add-no-name = There is nothing to add: no name in the table is the code of a piece.
write-this-in-letters-at-most = Write this in { $longest } letters at most.
a-reading-holds-a-number-without = A reading holds a number without an end.
piece-number = Piece number { $piece } is not one of this trial.
these-very-readings-were-added = These very readings were added at this stage before, and they count. Withdraw them first if they are to be added anew.

## deliveries.rs, for the journal

as-typed = as typed
from-file = from { $file }
readings-from = { $readings ->
    [one] 1 reading
   *[other] { $readings } readings
  } { $from }
