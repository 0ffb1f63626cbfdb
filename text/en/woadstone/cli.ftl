## cli.rs

is-no-number-of-photos-to-read = "{ $value }" is no number of photos to read at once, 1 to 64
