## photos.rs

the-photos-file-is-empty-choose-another = The photo's file is empty: choose another one.
the-photo-has-no-width = The photo has no width or no height: survey it before it is added.
the-charts-corners-must-be-four-pairs = The chart's corners must be four pairs of numbers.
photo-of-trial-after-round-bytes-sha = photo { $id }, "{ $name }", of trial { $trial } after round { $stage }, { $bytes } bytes, SHA-256 { $hash }
