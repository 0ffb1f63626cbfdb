## setup/show.html

check-your-set-up-woadstone = Check your set-up · Woadstone
where-you = Where you are
studio = Studio
check-your-set-up = Check your set-up
photograph-the-same-pieces-a-few-times = Photograph the same pieces a few times and lay them anew between shots. Nothing happened to them, so whatever differs is the set-up’s: it tells the smallest difference you can prove.
photos = photos
pieces = pieces
scatter-within-a-photo-ciede2000 = scatter within a photo, CIEDE2000
scatter-from-photo-to-photo-ciede2000 = scatter from photo to photo, CIEDE2000
smallest-difference-shown-four-times-in = Smallest difference shown four times in five, CIEDE2000
smallest-difference-by-number-of-pieces = Smallest difference by number of pieces
pieces-an-arm = Pieces an arm
two-arms-changes = Two arms’ changes
two-arms-on-one-photo = Two arms on one photo
one-arms-change-with-a-keeper = One arm’s change, with a keeper
one-arms-change-without = One arm’s change, without
scatter-is-the-root-mean-square = Scatter is the root mean square CIEDE2000 of a reading from the piece’s mean, with its 95 % interval. The figures count the set-up alone.
the-same-as-data-json = The same as data (JSON)
earlier-checks = Earlier checks
set-up = Set-up
when = When
within-a-photo = Within a photo
from-photo-to-photo = From photo to photo
a-new-check = A new check
name-of-the-set-up = Name of the set-up
room-light-and-camera-in-a-few = Room, light and camera in a few words, such as north window, phone on a stand.
photos-2 = Photos
at-least-better-five-of-the-same = At least { $fewest_photos }, better five, of the same six or so pieces on the printed board, taken up and laid again before each. JPEG or PNG as the camera saved them, up to 160 MB together. Reading takes a second or two for each.
check-the-set-up = Check the set-up
without-the-board-say-where-the-pieces = Without the board, say where the pieces lie on the command line: woadstone setup-check --name NAME --areas AREAS.json PHOTO PHOTO PHOTO.

## pages/setup/check.rs

give-the-set-up-a-name = Give the set-up a name by which you know it again, such as north window.

## pages/setup/show.rs

to = { $sd } ({ $low } to { $high })
