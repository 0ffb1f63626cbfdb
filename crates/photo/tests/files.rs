//! Kinds of files: what a camera or a program may hand over.

#[allow(dead_code, reason = "each test file uses its share")]
mod common;

use image::{DynamicImage, ImageFormat, Rgb, RgbImage};
use jpeg_encoder::{ColorType, Encoder};
use photo::{preview, read, survey};
use scene::{Dye, Piece, Rendered, Scene, linen, render};

fn rendered() -> Rendered {
    render(&Scene {
        width_px: 1000,
        height_px: 750,
        pieces: Piece::rows([("a", Dye::madder().on(&linen(), 0.5))]),
        ..Scene::default()
    })
}

fn pixels(rendered: &Rendered) -> RgbImage {
    image::load_from_memory(&rendered.jpeg)
        .expect("a JPEG")
        .into_rgb8()
}

fn lab(bytes: &[u8], rendered: &Rendered) -> [f64; 3] {
    let reading = read(bytes, &common::request(rendered)).expect("it is read");
    reading.readings[0]
        .lab
        .expect("the piece is read")
        .to_array()
}

fn png(picture: DynamicImage) -> Vec<u8> {
    let mut bytes = std::io::Cursor::new(Vec::new());
    picture
        .write_to(&mut bytes, ImageFormat::Png)
        .expect("a PNG");
    bytes.into_inner()
}

fn jpeg(width: u16, height: u16, data: &[u8], colours: ColorType, progressive: bool) -> Vec<u8> {
    let mut bytes = Vec::new();
    let mut encoder = Encoder::new(&mut bytes, 95);
    encoder.set_progressive(progressive);
    encoder
        .encode(data, width, height, colours)
        .expect("a JPEG");
    bytes
}

#[test]
fn png_of_any_depth_reads_as_the_jpeg_does() {
    let rendered = rendered();
    let expected = lab(&rendered.jpeg, &rendered);
    let picture = DynamicImage::ImageRgb8(pixels(&rendered));
    for other in [
        picture.clone(),
        DynamicImage::ImageRgba8(picture.to_rgba8()),
        DynamicImage::ImageRgb16(picture.to_rgb16()),
        DynamicImage::ImageRgba16(picture.to_rgba16()),
    ] {
        let found = lab(&png(other), &rendered);
        for (f, e) in found.iter().zip(expected) {
            assert!((f - e).abs() < 0.1, "{found:?} {expected:?}");
        }
    }
}

#[test]
fn a_png_cut_short_is_damaged_and_a_grey_one_has_no_colours() {
    let rendered = rendered();
    let picture = DynamicImage::ImageRgb8(pixels(&rendered));
    let whole = png(picture.clone());
    for share in [0.95, 0.5, 0.1] {
        let cut = &whole[..(share * whole.len() as f64) as usize];
        let refusal = survey(cut, None).expect_err("it is cut short");
        assert_eq!(refusal.code.as_str(), "damaged_file", "{share}");
    }
    let grey = png(DynamicImage::ImageLuma8(picture.to_luma8()));
    let refusal = survey(&grey, None).expect_err("it has no colours");
    assert_eq!(refusal.code.as_str(), "greyscale_photo");
}

#[test]
fn a_progressive_jpeg_is_read_and_one_cut_short_is_damaged() {
    let rendered = rendered();
    let picture = pixels(&rendered);
    let progressive = jpeg(1000, 750, picture.as_raw(), ColorType::Rgb, true);
    let (found, expected) = (lab(&progressive, &rendered), lab(&rendered.jpeg, &rendered));
    assert!(
        (found[0] - expected[0]).abs() < 0.5,
        "{found:?} {expected:?}"
    );
    for share in [0.99, 0.6, 0.2] {
        let cut = &progressive[..(share * progressive.len() as f64) as usize];
        let refusal = survey(cut, None).expect_err("it is cut short");
        assert_eq!(refusal.code.as_str(), "damaged_file", "{share}");
    }
}

#[test]
fn what_follows_the_picture_is_no_part_of_it() {
    let rendered = rendered();
    let mut with_film = rendered.jpeg.clone();
    with_film.extend([0, 0, 0, 24]);
    with_film.extend(b"ftypmp42");
    with_film.extend([0x11, 0xFF, 0xDA, 0x42].repeat(2000));
    let (found, expected) = (lab(&with_film, &rendered), lab(&rendered.jpeg, &rendered));
    for (f, e) in found.iter().zip(expected) {
        assert!((f - e).abs() < 1e-9, "{found:?} {expected:?}");
    }
}

#[test]
fn printing_inks_are_refused_in_words() {
    let inks = jpeg(200, 100, &[90; 200 * 100 * 4], ColorType::Cmyk, false);
    let refusal = survey(&inks, None).expect_err("no camera writes that");
    assert_eq!(refusal.code.as_str(), "not_a_photo");
    assert!(refusal.message.contains("CMYK"), "{refusal}");
}

/// Where the file's row `r` and column `c` stand on the upright photo of
/// `w` x `h` pixels.
///
/// # Source
/// Published: CIPA DC-008 (EXIF), tag 0x0112: which visual side the 0th row and
/// the 0th column are.
fn upright_place(orientation: u8, r: u32, c: u32, w: u32, h: u32) -> [u32; 2] {
    match orientation {
        1 => [c, r],
        2 => [w - 1 - c, r],
        3 => [w - 1 - c, h - 1 - r],
        4 => [c, h - 1 - r],
        5 => [r, c],
        6 => [w - 1 - r, c],
        7 => [w - 1 - r, h - 1 - c],
        _ => [r, h - 1 - c],
    }
}

/// A JPEG's EXIF segment that holds the orientation alone.
fn exif(orientation: u8) -> Vec<u8> {
    let mut tiff = b"MM\0\x2a\0\0\0\x08\0\x01\x01\x12\0\x03\0\0\0\x01\0".to_vec();
    tiff.extend([orientation, 0, 0, 0, 0, 0, 0]);
    let mut segment = vec![0xFF, 0xE1];
    segment.extend((tiff.len() as u16 + 8).to_be_bytes());
    segment.extend(b"Exif\0\0");
    segment.extend(tiff);
    segment
}

#[test]
fn every_exif_orientation_comes_out_upright() {
    let (w, h) = (160, 96);
    let colour = |[x, y]: [u32; 2]| match (x < w / 2, y < h / 2) {
        (true, true) => Rgb([200, 30, 30]),
        (false, true) => Rgb([30, 160, 30]),
        (true, false) => Rgb([30, 30, 200]),
        (false, false) => Rgb([220, 220, 60]),
    };
    for orientation in 1..=8 {
        let (across, down) = if orientation < 5 { (w, h) } else { (h, w) };
        let stored = RgbImage::from_fn(across, down, |c, r| {
            colour(upright_place(orientation, r, c, w, h))
        });
        let mut file = jpeg(
            across as u16,
            down as u16,
            stored.as_raw(),
            ColorType::Rgb,
            false,
        );
        file.splice(2..2, exif(orientation));
        let shown = image::load_from_memory(&preview(&file, 1000).expect("a photo"))
            .expect("a JPEG")
            .into_rgb8();
        assert_eq!(shown.dimensions(), (w, h), "orientation {orientation}");
        for place in [[20, 20], [140, 20], [20, 76], [140, 76]] {
            let (found, wanted) = (shown.get_pixel(place[0], place[1]), colour(place));
            let near = found
                .0
                .iter()
                .zip(wanted.0)
                .all(|(a, b)| a.abs_diff(b) < 12);
            assert!(near, "orientation {orientation} {place:?} {found:?}");
        }
    }
}

/// The rendered JPEG with the middle of its picture data overwritten.
fn hurt(whole: &[u8], with: impl Fn(usize) -> u8) -> Vec<u8> {
    let mut bytes = whole.to_vec();
    let from = bytes.len() / 2;
    for (i, byte) in bytes[from..from + 4096].iter_mut().enumerate() {
        *byte = with(i);
    }
    bytes
}

#[test]
fn a_jpeg_damaged_inside_is_refused_though_its_end_is_there() {
    let rendered = rendered();
    let whole = &rendered.jpeg;
    let removed = [&whole[..whole.len() / 2], &whole[whole.len() / 2 + 4096..]].concat();
    for (what, bytes) in [
        ("zeros", hurt(whole, |_| 0)),
        ("a pattern", hurt(whole, |i| (i * 31 % 251) as u8)),
        ("a gap", removed),
    ] {
        let refusal = survey(&bytes, None).expect_err(what);
        assert_eq!(refusal.code.as_str(), "damaged_file", "{what}");
    }
}

#[test]
fn every_usual_sampling_of_colours_is_read() {
    let rendered = rendered();
    let picture = pixels(&rendered);
    let expected = lab(&rendered.jpeg, &rendered);
    for sampling in [
        jpeg_encoder::SamplingFactor::F_1_1,
        jpeg_encoder::SamplingFactor::F_2_1,
        jpeg_encoder::SamplingFactor::F_2_2,
    ] {
        for interval in [0, 7] {
            let mut bytes = Vec::new();
            let mut encoder = Encoder::new(&mut bytes, 95);
            encoder.set_sampling_factor(sampling);
            if interval > 0 {
                encoder.set_restart_interval(interval);
            }
            encoder
                .encode(picture.as_raw(), 1000, 750, ColorType::Rgb)
                .expect("a JPEG");
            let found = lab(&bytes, &rendered);
            let near = found.iter().zip(expected).all(|(f, e)| (f - e).abs() < 0.5);
            assert!(near, "{sampling:?} {interval} {found:?} {expected:?}");
        }
    }
}

/// A PNG of a colourful gradient with chunks put in before its pixels; the
/// checksums of the chunks are not looked at by the reader of colour spaces, and
/// the decoder passes over what it doesn't need.
fn png_with(chunks: &[(&[u8; 4], &[u8])]) -> Vec<u8> {
    let rendered = rendered();
    let mut bytes = png(DynamicImage::ImageRgb8(pixels(&rendered)));
    let mut added = Vec::new();
    for (name, data) in chunks {
        added.extend((data.len() as u32).to_be_bytes());
        let body = [&name[..], data].concat();
        added.extend(&body);
        added.extend(checksum(&body).to_be_bytes());
    }
    // Behind the signature and the header chunk.
    bytes.splice(33..33, added);
    bytes
}

/// Published: the checksum of PNG (ISO/IEC 15948, annex D).
fn checksum(bytes: &[u8]) -> u32 {
    !bytes.iter().fold(u32::MAX, |sum, &byte| {
        (0..8).fold(sum ^ u32::from(byte), |sum, _| {
            (sum >> 1) ^ (0xEDB8_8320 * (sum & 1))
        })
    })
}

#[test]
fn a_pngs_word_on_its_colour_space_is_taken() {
    let space_flags = |bytes: &[u8]| -> Vec<&'static str> {
        let flags = survey(bytes, None).expect("it is read").flags;
        let codes = flags.iter().map(|flag| flag.code.as_str());
        codes.filter(|code| code.starts_with("profile")).collect()
    };
    let gamma = 45_455u32.to_be_bytes();
    assert_eq!(space_flags(&png_with(&[])), ["profile_missing"]);
    assert!(space_flags(&png_with(&[(b"sRGB", &[0])])).is_empty());
    assert!(space_flags(&png_with(&[(b"gAMA", &gamma)])).is_empty());
    assert!(space_flags(&png_with(&[(b"cICP", &[12, 13, 0, 1])])).is_empty());
    assert_eq!(
        space_flags(&png_with(&[(b"cICP", &[9, 16, 0, 1])])),
        ["profile_unusable"]
    );
    assert_eq!(
        space_flags(&png_with(&[(b"iCCP", b"name\0\0not packed at all")])),
        ["profile_unusable"]
    );
}
