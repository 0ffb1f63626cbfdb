## setup/advice.rs

pieces-differ-so-much-from-photo = Pieces differ so much from photo to photo that two of them have probably changed names or places: see that each has the same name on every photo, and check again.
a-margin-of-needs = a margin of { $usual_margin } needs { $pieces }
a-margin-of-is-out-of-reach = a margin of { $usual_margin } is out of reach
with-this-set-up-pieces-an-arm = With this set-up, { $usual_pieces } pieces an arm prove a difference of { $usual } between two arms’ changes four times in five; { $needed }. That counts the set-up alone: dyeing and washing scatter too.
two-photos-at-each-stage = Two photos at each stage, with the pieces laid anew in between, bring the { $usual_pieces } pieces to { $changes_de00 }.
one-arms-change-from-photo-to-photo = One arm’s change from photo to photo is proved from { $with } on with an unwashed keeper beside it, and from { $without } on without
keep-a-keeper-on-every-photo = { $found }: keep a keeper on every photo.
photos-agree-so-well-here = { $found }: photos agree so well here that one keeper adds more than it takes away; two or more would help.
of-a-readings-scatter-comes = { $percent } % of a reading’s scatter comes with the photo: keep the light and the exposure the same, and set side by side only what lies on one photo.
of-a-readings-scatter-is-texture = { $percent } % of a reading’s scatter is texture and noise: go nearer, mark more of each piece, or take more light.
of-a-readings-scatter-comes-from-laying = { $percent } % of a reading’s scatter comes from laying the pieces anew: lay them flat, with the grain one way, in light that is even over all of them.
of-a-readings-scatter-is-each-pieces = { $percent } % of a reading’s scatter is each piece’s own: lay pieces flat, with the grain one way, mark more of each, and see that the light is even over all of them.
the-scatter-within-a-photo-is-known = The scatter within a photo is known only to lie between { $low } and { $high }, and all these figures with it: more photos or more pieces make them firmer.
only-one-photo-shows-so-nothing-follows = Only one photo shows { $seen_once }, so nothing follows from it there.

## setup/shares.rs

from-photo-to-photo = from photo to photo
texture-and-noise = texture and noise
laying-anew = laying anew
laying-anew-texture-and-noise = laying anew, texture and noise

## setup/error.rs

a-set-up-check-compares-at-least = A set-up check compares at least { $fewest_photos } photos of the same pieces, and { $given } came. Lay the pieces anew and take more; five show it well.
a-set-up-check-needs-at-least = A set-up check needs at least { $fewest_pieces } pieces that are on two photos or more, and { $given } came. Give each piece the same name on every photo, and lay six or so beside the chart.
photos-and-give-the-very-same-colours = Photos { $one } and { $other } give the very same colours, so they are one photo. Leave one out, lay the pieces anew and take another.
photo-has-two-pieces-named-give = Photo { $photo } has two pieces named "{ $piece }". Give each piece a name of its own.
photo-shows-none-of-the-pieces = Photo { $photo } shows none of the pieces that other photos show. Mark them there under the same names, or leave the photo out.
the-photos-have-too-few-pieces = The photos have too few pieces in common to be compared. Lay the same pieces on all of them.
a-colour-holds-a-value = A colour holds a value that is not a number. Read the photos again.
