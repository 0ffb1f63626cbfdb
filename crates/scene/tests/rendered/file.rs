//! The file: EXIF data, profile, orientation, colour space.

use crate::decode::{decoder, mean_about, upright};
use image::{ImageDecoder, RgbImage};
use moxcms::{ColorProfile, Layout, TransformOptions};
use scene::{Dye, Jpeg, Orientation, Piece, Profile, Scene, render, wool};

const ORIENTATIONS: [Orientation; 4] = [
    Orientation::Upright,
    Orientation::HalfTurn,
    Orientation::QuarterClockwise,
    Orientation::QuarterAnticlockwise,
];

fn small(jpeg: Jpeg) -> Scene {
    let red = ("red", Dye::madder().on(&wool(), 1.0));
    let blue = ("blue", Dye::indigo().on(&wool(), 1.0));
    Scene {
        width_px: 480,
        height_px: 360,
        pieces: Piece::rows([red, blue]),
        jpeg,
        ..Scene::default()
    }
}

/// Mean difference of two photos in file values.
fn apart(a: &RgbImage, b: &RgbImage) -> f64 {
    assert_eq!(a.dimensions(), b.dimensions());
    let sum: u64 = a
        .iter()
        .zip(b.iter())
        .map(|(a, b)| u64::from(a.abs_diff(*b)))
        .sum();
    sum as f64 / a.len() as f64
}

/// Source: reference library (the orientation is read by the image crate).
#[test]
fn orientation_is_written_and_the_pixels_follow() {
    let plain = render(&small(Jpeg::default()));
    let wanted = upright(&plain.jpeg);
    for orientation in ORIENTATIONS {
        let turned = render(&small(Jpeg {
            orientation,
            ..Jpeg::default()
        }));
        let mut file = decoder(&turned.jpeg);
        let told = file.orientation().unwrap().to_exif();
        assert_eq!(u16::from(told), orientation.exif());
        let sideways = matches!(orientation.exif(), 6 | 8);
        assert_eq!(
            file.dimensions(),
            if sideways { (360, 480) } else { (480, 360) }
        );
        assert_eq!(turned.truth, plain.truth);
        assert!(
            apart(&upright(&turned.jpeg), &wanted) < 1.0,
            "{orientation:?}"
        );
    }
}

/// Source: reference library (both found by the image crate, the profile read by moxcms).
#[test]
fn exif_data_and_profile_are_carried() {
    for (profile, carried) in [
        (Profile::Srgb, true),
        (Profile::DisplayP3, true),
        (Profile::None, false),
    ] {
        let rendered = render(&small(Jpeg {
            profile,
            ..Jpeg::default()
        }));
        let mut file = decoder(&rendered.jpeg);
        let exif = file.exif_metadata().unwrap().unwrap();
        assert!(exif.windows(9).any(|text| text == b"Plain One"));
        let icc = file.icc_profile().unwrap();
        assert_eq!(icc.is_some(), carried, "{profile:?}");
        assert!(icc.is_none_or(|bytes| ColorProfile::new_from_slice(&bytes).is_ok()));
    }
}

/// Source: reference library (converted back by moxcms).
#[test]
fn display_p3_shows_the_same_colours() {
    let with = |profile| {
        let jpeg = Jpeg {
            profile,
            quality: 98,
            halved_colour: false,
            ..Jpeg::default()
        };
        render(&small(jpeg)).jpeg
    };
    let (srgb, wide) = (upright(&with(Profile::Srgb)), with(Profile::DisplayP3));
    let icc = decoder(&wide).icc_profile().unwrap().unwrap();
    let wide = upright(&wide);
    let back = ColorProfile::new_from_slice(&icc)
        .unwrap()
        .create_transform_8bit(
            Layout::Rgb,
            &ColorProfile::new_srgb(),
            Layout::Rgb,
            TransformOptions::default(),
        )
        .unwrap();
    let mut converted = RgbImage::new(wide.width(), wide.height());
    back.transform(&wide, &mut converted).unwrap();
    assert!(apart(&wide, &srgb) > 1.0);
    // Rounding to 8 bits, twice, may move the mean of an area by most of a file
    // value, which is 0.0055 of the light where the red piece is brightest.
    for piece in render(&small(Jpeg::default())).truth.pieces {
        let middle = [0, 1].map(|k| piece.polygon.iter().map(|p| p[k]).sum::<f64>() / 4.0);
        let [a, b] = [&converted, &srgb].map(|image| mean_about(image, middle, 15));
        for k in 0..3 {
            assert!((a[k] - b[k]).abs() < 0.004, "{} {a:?} {b:?}", piece.id);
        }
    }
}
