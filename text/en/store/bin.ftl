## bin.rs

there-is-no-such = There is no such { $kind }.
