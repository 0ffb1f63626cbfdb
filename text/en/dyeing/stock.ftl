## stock.rs

above-0 = above 0
per-piece = per piece
a-piece = a piece
