## setup_checks.rs

came-twice-leave-one-out-lay = { $name } came twice. Leave one out, lay the pieces anew and take another photo.
give-the-set-up-a-name = Give the set-up a name by which you know it again, such as north window.
is-empty-choose-another-photo = { $name } is empty: choose another photo.
check-of-photos-pieces = check { $id } of "{ $trim }", { $photos ->
    [one] 1 photo
   *[other] { $photos } photos
  }, { $pieces ->
    [one] 1 piece
   *[other] { $pieces } pieces
  }
