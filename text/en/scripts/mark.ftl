# Marking pieces on a photo.
undone = The last change of { $piece } is undone.
box-removed = The box of { $piece } is removed.
piece-is-marked = { $piece } is marked.
box-is-placed = A box for { $piece } lies in the middle of the photo; move it with the arrow keys.
area-of = Area of { $piece }
corner-of = Corner { $number } of { $corners } of { $piece }
marked = ✓ marked
to-mark = to mark
