## bin.rs

there-is-no-such = There is no such { $kind }.

## bin.rs, for the journal

thing-titled = { $kind } "{ $title }"
