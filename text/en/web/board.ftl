## board/packing.html

keepers = { $count ->
    [one] 1 keeper
   *[other] { $count } keepers
  }

## board/blind.html

blind-codes = Blind codes · { $title }
where-you = Where you are
trials = Trials
blind-codes-2 = Blind codes
whoever-judges-by-eye-sees-these-codes = Whoever judges by eye sees these codes alone, which say nothing of the arm.
labels = Labels
let-somebody-who-doesnt-judge-print-them = Let somebody who doesn’t judge print them, fold each under at the dashed line and staple it to its piece.
blind-labels-on-a4 = Blind labels on A4
blind-labels-on-letter = Blind labels on Letter
codes = Codes
opened-on = Opened on { $value }.
blind-code = Blind code
piece = Piece
arm = Arm
they-are-hidden-open-them = They are hidden. Open them when all has been judged: when you did is kept, and they can’t be closed again.
open-the-codes = Open the codes

## board/choose.html

board-and-tags = Board and tags · { $title }
board-and-tags-2 = Board and tags
a-printed-sheet-for-photos-pieces = A printed sheet for photos: pieces in its windows, each with its tag, the pocket chart at the top. Such a photo needs no marking.
by-the-plan = By the plan
boards-on-which-each-window-names = Boards on which each window names its piece, as the random order has it, and what has to lie ready.
boards-with-places-on-a4 = Boards with places on A4
boards-with-places-on-letter = Boards with places on Letter
packing-list = Packing list
board = Board
print-on-matt-white-paper-at-100 = Print on matt white paper at 100 %, not “fit to page”, and measure the ruler at its foot: it has to be 100 mm long.
windows = Windows
n-6-about-61-by-71-mm = 6, about 61 by 71 mm each (Letter: 63 by 62)
n-12-about-45-by-39-mm = 12, about 45 by 39 mm each (Letter: 46 by 33)
paper = Paper
rounds-gone-through = Rounds gone through
leave-it-empty-for-a-board = Leave it empty for a board that serves at every stage.
for-what = For
any-trial = any trial
this-trial-alone = this trial alone
show-the-board = Show the board
tags = Tags
one-for-each-of-the-pieces = One for each of the { $pieces } pieces, to cut out and lay below its window. A tag’s code says nothing about the trial.
tags-on-a4 = Tags on A4
tags-on-letter = Tags on Letter
labels-that-stay-on-the-piece = Labels that stay on the piece
the-same-codes-as-strips-of-100 = The same codes as strips of 100 by 17 mm for Tyvek, with a hole to sew or pin through, or as pin tags of 24 by 34 mm. Short lines show where to cut.
strips-on-a4 = Strips on A4
strips-on-letter = Strips on Letter
pin-tags-on-a4 = Pin tags on A4
pin-tags-on-letter = Pin tags on Letter

## board/packing.html

packing-list-2 = Packing list · { $title }
cloth = Cloth
test-pieces = { $tests } test pieces
for-what-2 = for { $name }
for-unwashed-and-in-the-dark = for { $name }, unwashed and in the dark
witness-cloths-one-for-each-load = witness cloths, one for each load
baths-and-loads = Baths and loads
table-of-baths-and-loads = Table of baths and loads
step = Step
arms = Arms
how-many = How many
in-this-turn = In this turn
product-in = Product in each
all = all
each-round = each round
each-piece-by-itself = each piece by itself
none = none
to-water = to { $water } water
to-print = To print
boards-with-places = Boards with places
of-6-windows = { $six } of 6 windows
and = and
of-12-windows = { $twelve } of 12 windows
one-for-each-piece-and-witness-cloth = { $labels }, one for each piece and witness cloth
pocket-colour-chart-of-24-patches = Pocket colour chart of 24 patches, and a plain place in even light
photos-random-order-from-seed = Photos: { $stages }. Random order from seed { $seed }.

## pages/board/mod.rs

this-trial-was-started-without-a-plan = This trial was started without a plan, so there is no order of pieces to print. Its board and tags are on its own page.

## pages/board/places.rs

tag = { $code }, tag { $tag }
