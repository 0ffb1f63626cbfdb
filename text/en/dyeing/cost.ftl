## cost.rs

adds-per-piece = { $step } adds { $per_piece }{ $currency } per piece
the-price-of-is-for-but = the price of "{ $name }" is for { $per }, but { $amount } of it is used, and nothing is known to turn one into the other; give the price by the unit it is measured in, or the size of a bottle
