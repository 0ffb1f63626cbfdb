## trials.rs

arms-pieces = "{ $title }" ({ $slug }), { $arms ->
    [one] 1 arm
   *[other] { $arms } arms
  }, { $pieces ->
    [one] 1 piece
   *[other] { $pieces } pieces
  }
