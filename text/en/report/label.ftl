## label.rs

fold-under-staple = fold under, staple
blind-labels = Blind labels
to-cut-out = { $title } to cut out
cards-for-the-board-40-by-17 = cards for the board, 40 by 17 mm
tyvek-strips-100-by-17-mm = Tyvek strips, 100 by 17 mm, with a hole to sew or pin through
pin-tags-24-by-34-mm = pin tags, 24 by 34 mm, with a hole at the top
tags = Tags
