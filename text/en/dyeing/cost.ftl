## cost.rs

the-price-of-is-for-but = the price of "{ $name }" is for { $per }, but { $amount } of it is used, and nothing is known to turn one into the other; give the price by the unit it is measured in, or the size of a bottle
adds-per-piece-2 = { $step } adds { $each } per piece
each-material-is-price-times-amount-used = Each material is price times amount used, rounded once to the nearest cent, halves up; sums are of rounded figures, cents that don't divide go to the first arms, and what a piece costs is rounded the same way. Water, heat and work are not counted.
