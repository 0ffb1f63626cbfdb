## fade.rs

not-told = not told
not-told-by-these-looks = not told by these looks
no-loss-shown = no loss shown
one-piece = { $percent } (one piece)
no-change = no change
a-straight-line = a straight line
the-curve = the curve
too-few-looks = too few looks
marks-are-means-of-the-arms-pieces = Marks are means of the arm’s pieces, the line is the curve through them, the band its 95 % interval. What was not looked at is dashed and goes to twice the rounds looked at, never further. Below each plot: when the change falls below a grade of the grey scale (5 is no change), with its 95 % interval.
to = { $value } ({ $low } to { $high })

## _fades.html

fade-of-each-arm = Fade of each arm
arm = Arm
strength-left-95-interval = Strength left (95 % interval)
levels-off = Levels off at
below-grade = Below grade { $grade }
best-shape-aicc = Best shape (AICc)
