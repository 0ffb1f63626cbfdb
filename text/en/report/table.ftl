## table.rs

from-its-start-has-changed-by-a2 = { " " }From its start, { $a } has changed by { $a2 } and { $b } by { $b2 }.
its-own-original = its own original
under = { $by }, { $on }, under { $light }
