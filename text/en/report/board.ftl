## board.rs

board-of = Board { $i } of { $boards }.
boards-with-their-places = Boards with their places
woadstone-board-windows = Woadstone board, { $windows } windows, { $name }
window-tag-here = window { $number }: tag here
stays-empty = stays empty
n-24-patch-chart-here = 24-patch chart here
pocket-size-card-about-108-x-64 = pocket size, card about 108 x 64 mm; any way round
windows = { $windows } windows, { $name }.
after-round = After round { $stage }.
one-dry-piece-flat-in-each-window = One dry piece flat in each window, its tag below it.
leave-the-paper-between-the-windows-bare = Leave the paper between the windows bare: light is read from it.
woadstone-board = Woadstone board
print-at-100-not-fit-to-page = Print at 100 %, not “fit to page”, on matt white paper. Then measure the ruler at the foot. The four corner codes have to lie flat, clean and in the picture.
the-marks-above-it-1-inch-apart = , the marks above it 1 inch apart
this-ruler-is-100-mm-long = This ruler is 100 mm long{ $inches }. If it isn’t, print again at 100 %.
board = Board
trial = Trial { $trial }.
