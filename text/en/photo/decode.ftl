## decode/jpeg.rs

it-has-no-picture-header = it has no picture header
it-has-another-number-of-pixels = it has another number of pixels than it says
its-inside-doesnt-fit-its-size = its inside doesn't fit its size

## decode/mod.rs

the-file-has-mb-at-most-80 = The file has { $bytes } MB; at most 80 MB are read. Save the photo smaller or with more compression.
the-picture-says-it-has-x-pixels = The picture says it has { $width } x { $height } pixels; at most 120 million pixels and 30,000 a side are read. Save it smaller.
the-picture-has-only-x-pixels-too = The picture has only { $width } x { $height } pixels, too few to hold a chart. Use the photo as the camera saved it.
the-photo-has-no-colours-switch-off = The photo has no colours. Switch off black-and-white and take it again.
the-file-is-damaged-or-was-cut = The file is damaged or was cut short ({ $why }). Copy it from the camera again.

## decode/png.rs

the-photos-gamma-is-0-which-cant = The photo's gamma is 0, which can't be; it was taken as sRGB. Save the photo as sRGB or Display P3.

## decode/profile.rs

the-photo-names-no-colour-space = The photo names no colour space; it was taken as sRGB. Use the file as the camera saved it, not a screenshot or what a messenger made of it.
the-photos-colour-space-cant-be-used = The photo's colour space can't be used here; it was taken as sRGB. Save the photo as sRGB or Display P3.

## decode/sniff.rs

the-file-is-empty-copy = The file is empty. Copy it from the camera again.
heic-photos-cant-be-read-here-set = HEIC photos can't be read here. Set the camera to JPEG ("most compatible") or save the photo as JPEG.
an-avif-picture = an AVIF picture
a-film = a film
a-webp-picture = a WebP picture
a-tiff-or-raw-picture = a TIFF or raw picture
a-gif-picture = a GIF picture
a-bmp-picture = a BMP picture
the-file-is-a-web-page-whatever = The file is a web page, whatever its name says; a download may have gone wrong. Choose the photo as the camera saved it.
the-file-is-neither-a-jpeg-nor = The file is neither a JPEG nor a PNG photo, whatever its name says. Choose the photo as the camera saved it.
the-file-is-which-cant-be-read = The file is { $kind }, which can't be read here. Save the photo as JPEG in full size, or use the JPEG that the camera saved.
the-file-holds-printing-inks-cmyk = The file holds printing inks (CMYK), no camera's colours. Use the photo as the camera saved it.
the-jpeg-is-coded-in-an-unusual = The JPEG is coded in an unusual way ({ $coding }) that can't be read here. Save it anew as a usual JPEG.
the-jpeg-was-cut-short-its-end = The JPEG was cut short: its end is missing. Copy it from the camera again.
more-than-8-bits-a-sample = more than 8 bits a sample
arithmetic-coding = arithmetic coding
in-layers = in layers
the-file-is-a-dng-raw-picture = The file is a DNG raw picture, and this program was built without the part that reads them. Save the photo as JPEG in full size, or build the program with the feature "raw" (cargo build --release --features raw).
a-pdf = a PDF

## decode/raw/cells.rs

whose-colour-filters-are-laid-in-another = whose colour filters are laid in another pattern than cells of one red, two green and one blue

## decode/raw/frame.rs

the-part-to-be-shown-lies-outside = the part to be shown lies outside the picture

## decode/raw/levels.rs

its-pattern-of-black-levels-is = its pattern of black levels is impossible
it-has-too-many-or-too-few = it has too many or too few black levels
its-white-level-is-not-above = its white level is not above its black level

## decode/raw/lossless.rs

a-part-that-should-be-a-jpeg = a part that should be a JPEG is none
packed-with-losses = packed with losses
a-jpeg-in-it-begins-anew-amidst = a JPEG in it begins anew amidst a row
a-part-of-it-holds-too-few = a part of it holds too few samples
a-jpeg-in-it-has-an-impossible = a JPEG in it has an impossible header
with-channels-of-unlike-size = with channels of unlike size
with-one-scan-for-each-channel = with one scan for each channel
a-jpeg-in-it-is-cut-short = a JPEG in it is cut short or broken

## decode/raw/mod.rs

it-has-no-directory = it has no directory
with-samples-a-pixel = with { $channels } samples a pixel
that-holds-no-raw-picture = that holds no raw picture
in-this-dng = in this DNG, { $why }
the-file-is-a-dng-which-cant = The file is a DNG { $kind }, which can't be read here. Save the photo as JPEG in full size, or as DNG packed without losses.

## decode/raw/segments.rs

with-other-than-8-to-16-bits = with other than 8 to 16 bits a sample
with-floating-point-samples = with floating-point samples
with-its-channels-one-after-the-other = with its channels one after the other
the-dng-says-it-has-x-pixels = The DNG says it has { $width } x { $height } pixels of { $channels } samples; at most 150 million samples are read. Save it smaller.
it-has-less-data-than-its-size = it has less data than its size asks for
packed-as-jpeg-xl = packed as JPEG XL
packed-in-a-way-unknown-here = packed in a way unknown here ({ $other })
its-strips-or-tiles-have-an-impossible = its strips or tiles have an impossible size
it-should-have-strips-or-tiles = it should have { $count } strips or tiles and tells of { $lengths }
with-an-unusual-kind-of-prediction = with an unusual kind of prediction
a-strip-or-tile-is-cut-short = a strip or tile is cut short or broken

## decode/raw/tags.rs

it-ends-in-its-first-line = it ends in its first line
a-directory-lies-outside-the-file = a directory lies outside the file
part-of-the-picture-lies-outside = part of the picture lies outside the file
its-tag-points-outside-the-file = its tag { $tag } points outside the file
its-tag-holds-too-many-numbers = its tag { $tag } holds too many numbers
its-tag-holds-no-number = its tag { $tag } holds no number
its-tag-is-negative = its tag { $tag } is negative
