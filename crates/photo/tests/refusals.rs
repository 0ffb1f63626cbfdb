//! Bad input: what is refused, in which words, and what is only remarked.

#[allow(dead_code, reason = "each test file uses its share")]
mod common;

use common::{photo, request};
use photo::{Area, FlagCode, Request, preview, read, survey};
use proptest::prelude::*;
use scene::{Flaws, Scene, render};

fn code(bytes: &[u8]) -> &'static str {
    let refusal = survey(bytes, None).expect_err("it has to be refused");
    assert!(refusal.message.ends_with('.'), "{}", refusal.message);
    assert!(refusal.message.len() > 30, "{}", refusal.message);
    assert_eq!(
        read(bytes, &Request::default()).expect_err("read refuses too"),
        refusal
    );
    refusal.code.as_str()
}

/// A PNG that says it has 60,000 x 60,000 pixels and holds none.
fn huge_png() -> Vec<u8> {
    let mut png = b"\x89PNG\r\n\x1a\n\0\0\0\rIHDR".to_vec();
    png.extend(60_000u32.to_be_bytes());
    png.extend(60_000u32.to_be_bytes());
    png.extend([8, 2, 0, 0, 0]);
    // CRC-32 of the header chunk (ISO 3309), computed bit by bit.
    let mut crc = u32::MAX;
    for byte in &png[12..] {
        crc ^= u32::from(*byte);
        for _ in 0..8 {
            crc = if crc & 1 == 1 {
                crc >> 1 ^ 0xEDB8_8320
            } else {
                crc >> 1
            };
        }
    }
    png.extend((!crc).to_be_bytes());
    png.extend(b"\0\0\0\0IDAT\x35\xaf\x06\x1e\0\0\0\0IEND\xae\x42\x60\x82");
    png
}

#[test]
fn files_that_are_no_photo_are_refused_in_words() {
    assert_eq!(code(b""), "not_a_photo");
    assert_eq!(code(b"dear diary, today I dyed a napkin"), "not_a_photo");
    assert_eq!(
        code(b"\0\0\0\x18ftypheic\0\0\0\0mif1heic"),
        "heic_unsupported"
    );
    assert_eq!(code(&huge_png()), "too_large");
    assert_eq!(code(b"\x89PNG\r\n\x1a\n"), "damaged_file");
    assert_eq!(code(&[0xFF, 0xD8, 0xFF, 0xE0]), "damaged_file");
}

#[test]
fn a_jpeg_cut_short_anywhere_is_damaged() {
    let jpeg = photo(1).jpeg;
    for share in [0.999, 0.9, 0.5, 0.1] {
        let cut = (jpeg.len() as f64 * share) as usize;
        assert_eq!(code(&jpeg[..cut]), "damaged_file", "cut at {share}");
    }
}

#[test]
fn what_the_photo_shows_may_be_refused_too() {
    let no_chart = Scene {
        chart: None,
        ..Scene::varied(5, scene::Piece::rows([("a", scene::linen())]))
    };
    assert_eq!(code(&render(&no_chart).jpeg), "chart_missing");
    let grey = Scene {
        flaws: Flaws {
            greyscale: true,
            ..Flaws::default()
        },
        ..Scene::default()
    };
    assert_eq!(code(&render(&grey).jpeg), "greyscale_photo");
    let mirrored = Scene {
        flaws: Flaws {
            mirrored: true,
            ..Flaws::default()
        },
        ..Scene::default()
    };
    assert_eq!(code(&render(&mirrored).jpeg), "mirrored");
}

#[test]
fn corners_that_make_no_sense_are_refused() {
    let jpeg = photo(2).jpeg;
    for corners in [
        [[0.0, 0.0], [1.0, 0.0], [1.0, 1.0], [0.0, 1.0]],
        [[0.0, 0.0], [90000.0, 0.0], [90000.0, 9000.0], [0.0, 9000.0]],
        [
            [600.0, 100.0],
            [100.0, 100.0],
            [100.0, 500.0],
            [600.0, 500.0],
        ],
        [[f64::NAN; 2]; 4],
    ] {
        let refusal = survey(&jpeg, Some(corners)).expect_err("no chart there");
        assert_eq!(refusal.code.as_str(), "bad_corners", "{corners:?}");
    }
    let refusal = survey(
        &jpeg,
        Some([[10.0, 10.0], [400.0, 10.0], [400.0, 300.0], [10.0, 300.0]]),
    )
    .expect_err("no chart there");
    assert_eq!(refusal.code.as_str(), "poor_fit");
}

#[test]
fn areas_that_cannot_be_read_are_flagged_and_the_rest_is_read() {
    let rendered = photo(3);
    let mut asked = request(&rendered);
    let area = |id: &str, polygon: &[[f64; 2]]| Area {
        id: id.into(),
        polygon: polygon.to_vec(),
    };
    asked.areas.extend([
        area(
            "away",
            &[[9000.0, 9000.0], [9100.0, 9000.0], [9100.0, 9100.0]],
        ),
        area("line", &[[5.0, 5.0], [80.0, 80.0]]),
        area("nan", &[[5.0, f64::NAN], [80.0, 80.0], [5.0, 80.0]]),
        area(
            "dot",
            &[[50.0, 50.0], [54.0, 50.0], [54.0, 54.0], [50.0, 54.0]],
        ),
        area("chart", &rendered.truth.chart_corners),
        area(
            "vast",
            &[[-1e12, -1e12], [1e12, -1e12], [1e12, 1e12], [-1e12, 1e12]],
        ),
        area(
            "absurd",
            &[[-1e308, -1e308], [1e308, -1e307], [1e300, 1e308]],
        ),
        area(
            "partly",
            &[[-60.0, 10.0], [80.0, 10.0], [80.0, 150.0], [-60.0, 150.0]],
        ),
    ]);
    let reading = read(&rendered.jpeg, &asked).expect("the photo is fine");
    let flags = |id: &str| -> Vec<FlagCode> {
        let r = reading
            .readings
            .iter()
            .find(|r| r.id == id)
            .expect("asked for");
        r.flags.iter().map(|f| f.code).collect()
    };
    assert_eq!(flags("away"), [FlagCode::AreaOutside]);
    assert!(flags("vast").contains(&FlagCode::AreaOutside));
    assert_eq!(flags("absurd"), [FlagCode::AreaOutline]);
    assert!(flags("partly").contains(&FlagCode::AreaOutside));
    assert_eq!(flags("line"), [FlagCode::AreaOutline]);
    assert_eq!(flags("nan"), [FlagCode::AreaOutline]);
    assert_eq!(flags("dot"), [FlagCode::AreaTooSmall]);
    assert!(flags("chart").contains(&FlagCode::AreaOnChart));
    assert!(reading.readings.iter().take(8).all(|r| r.lab.is_some()));
}

#[test]
fn a_preview_is_small_and_upright() {
    let rendered = photo(6);
    let small = preview(&rendered.jpeg, 400).expect("a photo");
    let again = image::load_from_memory(&small).expect("a JPEG");
    let (w, h) = (rendered.truth.width as f64, rendered.truth.height as f64);
    assert_eq!(again.width().max(again.height()), 400);
    assert!((f64::from(again.width()) / f64::from(again.height()) - w / h).abs() < 0.01);
    assert!(preview(b"words", 400).is_err());
}

#[test]
fn flaws_of_a_photo_are_remarked() {
    let flags = |scene: Scene| -> Vec<&'static str> {
        let survey = survey(&render(&scene).jpeg, None).expect("it can be read");
        survey.flags.iter().map(|flag| flag.code.as_str()).collect()
    };
    assert_eq!(flags(Scene::default()), Vec::<&str>::new());
    let blurred = Scene {
        flaws: Flaws {
            blur_px: 12.0,
            ..Flaws::default()
        },
        ..Scene::default()
    };
    assert!(flags(blurred).contains(&"blurred"));
    let bright = Scene {
        exposure_stops: 0.25,
        ..Scene::default()
    };
    assert!(flags(bright).contains(&"over_exposed"));
    let burnt = Scene {
        exposure_stops: 2.5,
        ..Scene::default()
    };
    let corners = render(&burnt).truth.chart_corners;
    let refusal = survey(&render(&burnt).jpeg, Some(corners)).expect_err("nothing is left");
    assert_eq!(refusal.code.as_str(), "over_exposed");
}

/// A small photo, quickly read, for many tries.
fn small() -> scene::Rendered {
    render(&Scene {
        width_px: 480,
        height_px: 360,
        ..Scene::default()
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    #[test]
    fn flipped_bits_bring_nothing_down(flips in prop::collection::vec((any::<prop::sample::Index>(), 0..8), 1..20)) {
        let whole = small();
        let mut jpeg = whole.jpeg.clone();
        for (place, bit) in flips {
            let i = place.index(jpeg.len());
            jpeg[i] ^= 1u8 << bit;
        }
        let asked = Request {
            corners: Some(whole.truth.chart_corners),
            areas: vec![Area { id: "a".into(), polygon: vec![[10.0, 10.0], [90.0, 10.0], [50.0, 80.0]] }],
            ..Request::default()
        };
        if let Ok(reading) = read(&jpeg, &asked) {
            let r = &reading.readings[0];
            prop_assert!(r.cov.iter().flatten().all(|v| v.is_finite()));
            prop_assert!(r.lab.is_none_or(|lab| lab.to_array().iter().all(|v| v.is_finite())));
        }
        let _ = survey(&jpeg, None);
    }

    #[test]
    fn no_bytes_bring_it_down(bytes in prop::collection::vec(any::<u8>(), 0..400), kind in 0..3) {
        let head: &[u8] = [&b"\xFF\xD8\xFF"[..], b"\x89PNG\r\n\x1a\n", b""][kind as usize];
        let mut file = head.to_vec();
        file.extend(bytes);
        prop_assert!(survey(&file, None).is_err());
    }
}
