## compare.rs

beside-names2 = { $names } beside { $names2 }
grades-are-made-for-d65-and-10 = Grades are made for D65 and 10 degrees; these colours are for { $view }, so none are shown.
beside-colours-that-have-changed-along = { $names } beside colours that have changed along the same way as { $names2 }, each by a half-step more.
the-two-hardly-differ-so-the-way = The two hardly differ, so the way is taken to be that of getting lighter. { $names } beside colours that have changed by a half-step more each.
out-of-reach-no-surface = Out of reach: no surface of this hue changes so far this way.
beyond-what-an-srgb-screen-shows = { $after }, beyond what an sRGB screen shows: the nearest is drawn.
a-change-of-grade = A change of grade { $grade }
stronger-in-colour = stronger in colour
the-second-looks-like-the-first = The second looks like the first in lightness and hue.
the-second = The second is { $parts }.
spectra-from-elsewhere = spectra from elsewhere
lab-values-from-elsewhere = Lab values from elsewhere
both-lie-on-one-photo = Both lie on one photo, of which most errors drop out of the difference.
they-lie-on-different-photos = They lie on different photos, so the difference is less sure than within one.
both-are = Both are { $what }.
photos = photos
by = { $word } by { $abs }
lighter = lighter
darker = darker
redder = redder
greener = greener
yellower = yellower
bluer = bluer
duller = duller
