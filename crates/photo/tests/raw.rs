//! Raw pictures: a chart photo as DNG is read as its JPEG is.
#![cfg(feature = "raw")]

#[allow(dead_code, reason = "each test file uses its share")]
mod common;
#[allow(dead_code, reason = "each test file uses its share")]
mod dng_files;

use std::io::Cursor;

use common::{errors, median, photo, request};
use dng_files::{Dng, Packing};
use image::{DynamicImage, ImageDecoder, codecs::jpeg::JpegDecoder};
use scene::{Rendered, Scene};

/// Black and saturation of the sensor that is played.
const BLACK: f64 = 512.0;
const WHITE: f64 = 15_800.0;
/// What the sensor's channels get of grey light: a camera in daylight.
const NEUTRAL: [f64; 3] = [0.48, 1.0, 0.66];

/// IEC 61966-2-1.
fn linear(code: u8) -> f64 {
    let v = f64::from(code) / 255.0;
    if v <= 0.04045 {
        v / 12.92
    } else {
        ((v + 0.055) / 1.055).powf(2.4)
    }
}

/// A number between -1 and 1 for each place, as if by chance.
fn chance(i: u64) -> f64 {
    let mut z = i.wrapping_add(1).wrapping_mul(0x9E37_79B9_7F4A_7C15);
    z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
    z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
    (z >> 40) as f64 / f64::from(1_u32 << 23) - 1.0
}

/// The light of a rendered photo on a sensor with two by two sites for each of
/// its pixels, blue first, with the grain of 20,000 electrons.
fn on_a_sensor(rendered: &Rendered, stops: f64) -> Dng {
    let mut decoder = JpegDecoder::new(Cursor::new(&rendered.jpeg)).expect("a JPEG");
    let turned = decoder.orientation().expect("EXIF data").to_exif();
    let picture = DynamicImage::from_decoder(decoder)
        .expect("a JPEG")
        .into_rgb8();
    let (width, height) = (picture.width() as usize * 2, picture.height() as usize * 2);
    let site = |x: usize, y: usize| {
        let channel = 2 - x % 2 - y % 2;
        let code = picture.get_pixel(x as u32 / 2, y as u32 / 2)[channel];
        let share = linear(code) * NEUTRAL[channel] * stops.exp2();
        let grain = (1.5 * share / 20_000.0).sqrt() * chance((y * width + x) as u64);
        (BLACK + (share + grain) * (WHITE - BLACK)).clamp(0.0, WHITE) as u16
    };
    Dng {
        is_big_endian: true,
        packing: Packing::LosslessJpeg,
        tile: Some([256, 256]),
        first: vec![
            (274, 3, vec![u32::from(turned)]),
            (50_728, 5, vec![48, 100, 1, 1, 66, 100]),
        ],
        raw: vec![
            (33_422, 1, vec![2, 1, 1, 0]),
            (50_714, 3, vec![BLACK as u32]),
            (50_717, 3, vec![WHITE as u32]),
        ],
        ..Dng::mosaic(width, height, site)
    }
}

fn flags(reading: &photo::PhotoReading) -> Vec<&'static str> {
    reading
        .flags
        .iter()
        .map(|flag| flag.code.as_str())
        .collect()
}

#[test]
fn a_dng_is_read_as_well_as_its_jpeg() {
    let (mut by_jpeg, mut by_dng, mut held, mut pairs) = (Vec::new(), Vec::new(), 0, 0);
    for seed in [101, 104] {
        let rendered = photo(seed);
        let jpeg = photo::read(&rendered.jpeg, &request(&rendered)).expect("the JPEG is read");
        let dng = on_a_sensor(&rendered, 0.0).write();
        let dng = photo::read(&dng, &request(&rendered)).expect("the DNG is read");
        assert_eq!((dng.width, dng.height), (jpeg.width, jpeg.height));
        assert!(!flags(&dng).contains(&"profile_missing"), "{:?}", dng.flags);
        println!(
            "seed {seed}: left-out patches are missed by {:.2} (JPEG) and {:.2} (DNG); {:?}",
            jpeg.chart.loo_de00_median,
            dng.chart.loo_de00_median,
            flags(&dng)
        );
        assert!(dng.chart.loo_de00_median < jpeg.chart.loo_de00_median + 0.2);
        for (a, b) in jpeg.readings.iter().zip(&dng.readings) {
            let (a, b) = (a.lab.expect("read"), b.lab.expect("read"));
            let apart = colour::difference::ciede2000(a, b);
            assert!(apart < 0.6, "seed {seed}: {apart}");
        }
        by_jpeg.extend(errors(&rendered, &jpeg).colour);
        let e = errors(&rendered, &dng);
        by_dng.extend(e.colour);
        held += e.held;
        pairs += e.difference.len();
    }
    let (jpeg, dng) = (median(&by_jpeg), median(&by_dng));
    println!("medians: JPEG {jpeg:.3}, DNG {dng:.3}; {held} of {pairs} intervals hold");
    assert!(dng < jpeg + 0.15);
    assert!(held * 10 > pairs * 9);
}

/// Two and a half stops too much: the chart's light patches are beyond what the
/// sensor holds.
#[test]
fn saturation_of_the_sensor_is_over_exposure() {
    let rendered = photo(104);
    let dng = on_a_sensor(&rendered, 2.5).write();
    let refusal = photo::read(&dng, &request(&rendered)).expect_err("it is burnt out");
    assert_eq!(refusal.code.as_str(), "over_exposed", "{refusal}");
}

#[test]
fn a_preview_is_made() {
    let rendered = scene::render(&Scene {
        width_px: 400,
        height_px: 300,
        ..Scene::default()
    });
    let jpeg = photo::preview(&on_a_sensor(&rendered, 0.0).write(), 200).expect("a preview");
    let small = image::load_from_memory(&jpeg).expect("a JPEG");
    assert_eq!((small.width(), small.height()), (200, 150));
}
