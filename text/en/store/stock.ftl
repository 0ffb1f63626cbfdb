## stock.rs

this-lot-is-counted-in-so-write = This lot is counted in { $piece }, so write what was taken in that too.
weight-as-30-g = weight, as 30 g
volume-as-30-ml = volume, as 30 ml
bottles-as-1-bottle = bottles, as 1 bottle
pieces-as-2-pieces = pieces, as 2 pieces
