## search/show.html

finds = { $count ->
    [0] Nothing has “{ $words }”
    [one] 1 find
   *[other] { $count } finds, the newest first
  }
search-woadstone = Search · Woadstone
search-the-notebook = Search the notebook
words-or-beginnings-of-words = Words, or beginnings of words
indigo-linen-soda = indigo, linen, soda …
search = Search
try-fewer-words-or-the-beginning = Try fewer words, or the beginning of one. Trials, plans, recipes, what was noted in runs, materials and their lots are searched.
near-a-colour = Near a colour
readings-of-your-trials-that-look-most = Readings of your trials that look most like a colour, by CIEDE2000; none further than { $furthest }.
l-a-and-b = L*, a* and b*
light-and-observer = Light and observer
find-by-numbers = Find by numbers
or-pick-a-colour = or pick a colour
find-by-eye = Find by eye
nearest-to = Nearest to
no-reading-for-lies-within = No reading for { $view } lies within { $furthest } of it.
readings-near-the-colour = Readings near the colour
colour = Colour
cielab = CIELAB
off-by-ciede2000 = Off by, CIEDE2000
piece = Piece
stage = Stage
trial = Trial
by = { $stage }, by { $source }
a-picked-colour-is-a-screens = A picked colour is a screen’s, so it only points the way; numbers find more surely. Readings for another light aren’t compared.

## pages/search/ask.rs

give-words-or-beginnings-of-words-such = Give words or beginnings of words, such as indigo or soda.
give-l-a-and-b-as-three = Give L*, a* and b* as three numbers, such as 40 20 10: L* from 0 to 100, the others from −128 to 128.
choose-one-of-the-lights = Choose one of the lights of the list.
give-a-colour-as-six-hexadecimal-digits = Give a colour as six hexadecimal digits, such as #7a3b2c.

## pages/search/show.rs

asked-for = asked for
piece-2 = piece { $piece }
a-trial = trial
a-plan = plan
a-recipe = recipe
a-run = run
a-material = material
