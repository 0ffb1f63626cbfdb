## label.rs

fold-under-staple = fold under, staple
blind-labels = Blind labels
to-cut-out = { $title } to cut out
