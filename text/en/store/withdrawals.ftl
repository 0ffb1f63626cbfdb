## withdrawals.rs

say-in-1-to-letters-why = Say in 1 to { $longest } letters why it is withdrawn.
