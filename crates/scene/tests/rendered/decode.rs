//! Reading a rendered file with an unrelated decoder.

use image::{DynamicImage, ImageDecoder, RgbImage, codecs::jpeg::JpegDecoder};
use std::io::Cursor;

/// The decoder of a file.
pub fn decoder(jpeg: &[u8]) -> JpegDecoder<Cursor<&[u8]>> {
    JpegDecoder::new(Cursor::new(jpeg)).expect("a rendered file is a JPEG")
}

/// The pixels set upright as the EXIF data ask.
pub fn upright(jpeg: &[u8]) -> RgbImage {
    let mut decoder = decoder(jpeg);
    let orientation = decoder
        .orientation()
        .expect("a rendered file has EXIF data");
    let mut image = DynamicImage::from_decoder(decoder).expect("a rendered file is whole");
    image.apply_orientation(orientation);
    image.to_rgb8()
}

/// Linear light of an sRGB value (IEC 61966-2-1).
pub fn linear(value: u8) -> f64 {
    let v = f64::from(value) / 255.0;
    if v <= 0.04045 {
        v / 12.92
    } else {
        ((v + 0.055) / 1.055).powf(2.4)
    }
}

/// The mean linear light in a square of `2 * reach + 1` px about a point.
pub fn mean_about(image: &RgbImage, point: [f64; 2], reach: i32) -> [f64; 3] {
    let mut sum = [0.0; 3];
    let side = 2 * reach + 1;
    for dy in -reach..=reach {
        for dx in -reach..=reach {
            let x = (point[0] as i32 + dx) as u32;
            let y = (point[1] as i32 + dy) as u32;
            for (k, value) in image.get_pixel(x, y).0.into_iter().enumerate() {
                sum[k] += linear(value);
            }
        }
    }
    sum.map(|s| s / f64::from(side * side))
}
