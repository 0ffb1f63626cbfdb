## stock.rs

this-lot-is-counted-in-so-write = This lot is counted in { $piece }, so write what was taken in that too.
