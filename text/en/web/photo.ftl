## photo/new.html

the-others-were-taken-in = { $count ->
    [one] The other photo was taken in:
   *[other] The other { $count } photos were taken in:
  }

## photo/list.html

photos = Photos · { $title }
where-you = Where you are
trials = Trials
invented-trial = invented trial
photos-2 = Photos
add-photos = Add photos
to-the-verdict = To the verdict
no-photos-yet-lay-all-pieces-beside = No photos yet. Lay all pieces beside the chart, dry and flat, in even light, and take one photo before the first wash.
progress = Progress
photos-done = Photos done
mark-the-pieces = Mark the pieces
on = on { $name }
take-out-of-the-queue = Take out of the queue
read-again = Read again

## photo/new.html

add-photos-2 = Add photos · { $title }
all-pieces-dry-and-flat-beside = All pieces dry and flat beside the chart, keepers too, in even light without glare.
to-take-it-again = To take it again:
see-them = see them
send-only-those-named-above-again = Send only those named above again.
rounds-the-pieces-have-been-through = Rounds the pieces have been through
n-0-is-before-the-first-wash = 0 is before the first wash. This trial plans { $rounds }. It is said of all photos sent together.
where-a-board-has-another-stage-printed = Where a board has another stage printed on it, take that
chart-on-the-photos = Chart on the photos
another-one = Another one?
keep-its-values-first = Keep its values first.
jpeg-or-png-as-the-camera-saved = JPEG or PNG as the camera saved them, up to 80 MB each; choose several or drop them here. Don’t crop, filter or send them through a messenger first.
or-take-one-with-this-device = Or take one with this device
the-chart-was-not-found-say-where = The chart was not found? Say where it is
corners-of-the-chart = Corners of the chart
of-one-photo-the-four-outer-corners = Of one photo: the four outer corners of the patches, in pixels of the upright photo, each x,y with a space between: first at the brown patch, then the bluish green, the black and the white one (on a chart of your own: first patch, end of the first row, last patch, start of the last row). An image viewer shows the pixels.
being-sent = Being sent
sent = Sent
see-the-photos-that-were-taken = See the photos that were taken in
add-the-photos = Add the photos
leave-it = Leave it

## photo/show.html

taken-after-another-number-of-rounds = Taken after another number of rounds?
rounds-the-pieces-had-been-through = Rounds the pieces had been through
the-photo-goes-to-that-stage = 0 is before the first wash. The photo goes to that stage with all that was read of it, and grades, curves and verdicts follow. What was said before stays on record; move it back the same way.
move-the-photo-to-that-stage = Move the photo to that stage
sent-as-taken = { $at }: sent as taken { $when }.
corrected-as-taken = { $at }: corrected as taken { $when }.
this-is-now-a-photo = This is now a photo { $when }, and so are its readings.
photo = Photo { $when } · { $title }
photo-2 = Photo { $when }
by-pixels = { $name } · { $width } by { $height } pixels
this-very-file-was-here-already = This very file was here already, so it was kept once. This is its page.
being-read = Being read.
waits-to-be-read = Waits to be read.
this-page-looks-again-by-itself = This page looks again by itself.
take-it-out-of-the-queue = Take it out of the queue
not-read = Not read:
taken-out-of-the-queue-the-photo = taken out of the queue. The photo and its marks are kept.
this-photo-could-not-be-read = This photo could not be read.
add-the-new-photo = Add the new photo
noticed = Noticed:
readings = Readings
table-of-readings = Table of readings
piece = Piece
arm = Arm
colour = Colour
numbers = Numbers
spread-one-sd = Spread (one SD)
noticed-2 = Noticed
nothing = nothing
pieces-on-one-photo-share-most = { $sentence } Pieces on one photo share most of their spread, so their differences are known better than their colours.
add-another-photo = Add another photo
where-the-pieces-lie = Where the pieces lie
drawn-over-the-photo = Drawn over the photo
areas = Areas
chart = Chart
patches = Patches
board = Board
light = Light
troubled-spots = Troubled spots
of-patches-were-left-aside-darkened = { $left_aside } of { $patches } patches were left aside (darkened).
this-photo-was-read-before-its-light = This photo was read before its light and patches were kept. Read it again to see them.
the-photo-with-the-chart = The photo with the chart and the marked areas
choose-a-piece-then-draw-a-box = Choose a piece, then draw a box well inside it, by mouse, finger or pen. Drag a box to move it, a corner to stretch it. On the keyboard: Tab goes to a box and on to its corners, arrow keys move, with Shift ten times as far, Delete removes, Ctrl and Z undoes.
place-a-box-in-the-middle = Place a box in the middle
remove-this-box = Remove this box
undo-the-last-change = Undo the last change
corners-as-numbers = Corners as numbers
for-each-piece-the-corners = For each piece the corners of an area well inside it, x,y in pixels of the upright photo, with a space between two corners. Leave a piece empty if it isn’t on the photo.
corners-of = Corners of { $code }
read-the-colours = Read the colours
read-it-again-as-marked = Read it again as marked
what-was-read-before-is-kept = What was read before is kept, and counts until the new reading is there.
earlier-readings-of-this-photo = Earlier readings of this photo
these-count = These count.
readings-of = Readings of { $at }
its-readings-dont-count-while-it-lies = Its readings don’t count while it lies there.

## pages/photo/events.rs

too-many-pages-watch-photos = Too many pages watch photos at this moment. Close some, then reload this one.

## pages/photo/layers.rs

as-much = as much
more = { $p } % more
less = { $p } % less
the-darkest-place-gets-light-the = The darkest place gets { $least } light, the brightest { $most }, than the chart’s middle; readings have this taken out.
as-at-the-chart = as at the chart
an-area = an area
burnt-out = burnt out
deeper-than-the-file-can-hold = deeper than the file can hold
here = { $area }: { $share } % { $name } here
trouble-in-places = { $piece }: { $trouble } in { $places ->
    [one] 1 place
   *[other] { $places } places
  }.

## pages/photo/mark.rs

mark-the-area-of-one-piece = Mark the area of one piece at least: choose the piece, then draw a box on it.

## pages/photo/mod.rs

this-trial-has-no-such-photo = This trial has no such photo. Its page lists those it has.
give-the-number-of-rounds = Give the number of rounds the pieces have been through as a whole number; 0 is before the first.

## pages/photo/preview.rs

there-is-no-such-photo = There is no such photo.

## pages/photo/show.rs

corrected-by-a-patch-left-out = Corrected by { $name } ({ $model }): a patch left out of the correction comes back within { $loo_de00_median } CIEDE2000 at the median.
read = { $readings } read.
refused = Refused. { $message }

## pages/photo/taken.rs

corners-are-those-of-one-photo-send = Corners are those of one photo. Send that photo by itself, and the others without corners.
choose-one-of-the-charts = Choose one of the charts that are kept here.
choose-a-photo-to-add = Choose a photo to add.

## pages/photo/tile.rs

the-photo-doesnt-reach-that-far = The photo doesn’t reach that far.

## pages/photo/show.rs

the-chart = the chart
the-chart-2 = the chart “{ $name }”
