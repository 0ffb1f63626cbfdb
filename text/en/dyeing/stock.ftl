## stock.rs

above-0 = above 0
per-piece = per piece
a-piece = a piece
bottles = { $count ->
    [one] 1 bottle
   *[other] { $count } bottles
  }
pieces = { $count ->
    [one] 1 piece
   *[other] { $count } pieces
  }
amount = amount
