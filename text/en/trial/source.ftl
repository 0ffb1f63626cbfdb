## source.rs

is-no-source-of-readings-use-photo = "{ $value }" is no source of readings; use photo, spectrum or lab
