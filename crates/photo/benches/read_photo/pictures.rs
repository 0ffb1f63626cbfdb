//! The photos that are read: rendered at a quarter of their sides and enlarged,
//! with fresh grain, since rendering 48 megapixels takes longer than all else.

use jpeg_encoder::{ColorType, Encoder, SamplingFactor};
use photo::Area;
use scene::{Dye, Piece, Scene, linen, render};

/// A photo and what to read from it.
pub struct Picture {
    pub name: String,
    pub jpeg: Vec<u8>,
    pub areas: Vec<Area>,
}

/// The JPEG library alone, to the same pixels.
pub fn decoded(jpeg: &[u8]) -> image::RgbImage {
    image::load_from_memory_with_format(jpeg, image::ImageFormat::Jpeg)
        .expect("a JPEG")
        .into_rgb8()
}

/// A photo with six pieces.
pub fn photo(width: u32, height: u32) -> Picture {
    let (pixels, areas) = pixels(width, height);
    Picture {
        name: format!("{width} x {height}"),
        jpeg: encoded(&pixels),
        areas,
    }
}

/// The same, stored on its side, as phones do with photos taken upright.
pub fn on_its_side(width: u32, height: u32) -> Picture {
    let (pixels, areas) = pixels(height, width);
    let mut jpeg = encoded(&image::imageops::rotate270(&pixels));
    jpeg.splice(2..2, turned_right());
    Picture {
        name: format!("{height} x {width}, stored on its side"),
        jpeg,
        areas,
    }
}

/// An EXIF segment that says: turn by a quarter to the right to see it upright.
fn turned_right() -> Vec<u8> {
    let mut segment = vec![0xFF, 0xE1, 0, 34];
    segment.extend(b"Exif\0\0MM\0\x2a\0\0\0\x08\0\x01\x01\x12\0\x03\0\0\0\x01\0\x06\0\0\0\0\0\0");
    segment
}

fn encoded(pixels: &image::RgbImage) -> Vec<u8> {
    let mut jpeg = Vec::new();
    let mut encoder = Encoder::new(&mut jpeg, 92);
    // As phones save them.
    encoder.set_sampling_factor(SamplingFactor::F_2_2);
    encoder
        .encode(
            pixels.as_raw(),
            pixels.width() as u16,
            pixels.height() as u16,
            ColorType::Rgb,
        )
        .expect("a JPEG");
    jpeg
}

/// The pixels of an enlarged photo, and the areas in it.
fn pixels(width: u32, height: u32) -> (image::RgbImage, Vec<Area>) {
    const TIMES: u32 = 4;
    let depths = [0.2, 0.35, 0.5, 0.65, 0.8, 0.95];
    let names = ["P1", "P2", "P3", "P4", "P5", "P6"];
    let pieces = names
        .into_iter()
        .zip(depths)
        .map(|(name, depth)| (name, Dye::madder().on(&linen(), depth)));
    let small = render(&Scene {
        width_px: width / TIMES,
        height_px: height / TIMES,
        pieces: Piece::rows(pieces),
        ..Scene::default()
    });
    let enlarged = image::imageops::resize(
        &decoded(&small.jpeg),
        width,
        height,
        image::imageops::FilterType::Triangle,
    );
    let areas = small.truth.pieces.iter().map(|piece| Area {
        id: piece.id.clone(),
        polygon: piece
            .polygon
            .iter()
            .map(|p| p.map(|v| v * f64::from(TIMES)))
            .collect(),
    });
    let areas = areas.collect();
    (grained(enlarged), areas)
}

/// Grain of two code values, as a camera leaves it, by a fixed sequence.
fn grained(mut pixels: image::RgbImage) -> image::RgbImage {
    let mut state = 1u32;
    for code in pixels.iter_mut() {
        state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
        let grain = (state >> 24) as i16 % 5 - 2;
        *code = (i16::from(*code) + grain).clamp(0, 255) as u8;
    }
    pixels
}
