## fade.rs

not-told = not told
not-told-by-these-looks = not told by these looks
no-loss-shown = no loss shown
one-piece = { $percent } (one piece)
no-change = no change
a-straight-line = a straight line
the-curve = the curve
too-few-looks = too few looks
