## read.rs

light-falls-unevenly-the-brightest-place = Light falls unevenly: the brightest place gets { $range } % more than the darkest. It was evened out by calculation; softer light from further away is safer.
a-hard-edge-lies-between-chart-and-pieces = A sharp edge between light and dark ground runs between the chart and pieces, or across pieces. It is taken for a shadow's, and colours are the less sure; if the ground itself is of two parts there, they may be wrong. Lay chart and pieces on one ground in one light.

## read/grey.rs

the-grey-cards-reflectance-is-a-share = The grey card's reflectance is a share from 0.02 to 1, such as 0.18.
the-grey-cards-corners-span-no-surface = The grey card's corners span no surface inside the photo.
the-grey-card-holds-too-few-pixels = The grey card holds too few pixels. Go nearer, or mark more of it.
the-grey-card-is-burnt-out-take = The grey card is burnt out. Take the photo again with less exposure (-1).
the-grey-card-is-nearly-black = The grey card is nearly black in the photo. Take it again with more light.
what-is-marked-as-the-grey-card = What is marked as the grey card is strongly coloured. Mark the grey card itself.

## read/piece.rs

the-areas-outline-needs-at-least-three = The area's outline needs at least three corners that span a surface.
the-area-lies-outside-the-photo = The area lies outside the photo, or holds no pixel of it. Mark it on the upright photo.
part-of-the-area-lies-outside = Part of the area lies outside the photo (or its outline crosses itself); only what is inside was read.
the-area-holds-only-pixels-a-reading = The area holds only { $found } pixels; a reading needs at least { $fewest_pixels }. Mark more of the piece or go nearer.
the-area-holds-only-pixels = The area holds only { $found } pixels; from { $few_pixels } on a reading is steadier.
the-area-lies-on-the-chart = The area lies on the chart or card. Mark the piece instead.
the-area-is-so-dark-that-noise = The area is so dark that noise outweighs its colour. Give the photo more light.
of-the-areas-pixels = { $max } % of the area's pixels are at the end of the scale and were left out; the colour may be off. Expose less.
of-the-area-shines-and-was-left = { $max } % of the area shines and was left out. Turn the piece or the light, and see that it is dry.
of-the-areas-pixels-have-a-channel = { $as_value } % of the area's pixels have a channel at 0: the colour is deeper than the file can hold, and its reading falls short. A camera set to Display P3 or Adobe RGB holds more.

## read/shine.rs

the-piece-sparkles-all-over = The piece sparkles all over ({ $max } % of it): it looks wet, and wet cloth is darker and fuller in colour. Dry it and take the photo again.
