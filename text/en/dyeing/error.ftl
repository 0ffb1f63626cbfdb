## error.rs

the-number-is-out-of-range = the { $what } is { $value } { $unit }; it has to be { $range }
the-number-without-unit-is-out-of-range = the { $what } is { $value }; it has to be { $range }
there-is-no-called = there is no { $what } called "{ $name }"; there are: { $known }
at-character = "{ $text }", at character { $at }: { $why }
