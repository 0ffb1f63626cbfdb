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
