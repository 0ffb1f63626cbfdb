//! The chart is found where there is one, and nowhere else. Source of the truth:
//! rendered photos, made by a crate that shares nothing with the finder.

mod chart_scenes;

use chart_scenes::{corner_error, decoys, wild};
use scene::{Piece, Scene, Texture, render, skin};

#[test]
fn charts_are_found_to_a_small_share_of_a_patch() {
    for seed in 0..16 {
        let rendered = render(&wild(seed, 2000));
        let survey = match photo::survey(&rendered.jpeg, None) {
            Ok(survey) => survey,
            // A lamp may be too odd for the correction; the chart must be found.
            Err(why)
                if ["poor_fit", "under_exposed", "over_exposed"].contains(&why.code.as_str()) =>
            {
                continue;
            }
            Err(why) => panic!("seed {seed}: {why}"),
        };
        let (px, pitches) = corner_error(&survey.corners, &rendered.truth.chart_corners);
        assert!(
            // Photos of 300 px have patches of 12 px, and a pixel is much there.
            pitches < 0.06 || px < 1.5,
            "seed {seed}: off by {px:.1} px, {pitches:.3} pitches"
        );
    }
}

#[test]
fn a_patch_under_a_thumb_is_told_and_left_aside() {
    let over_white = [-60.0, -12.0];
    let thumb = Piece::square("thumb", skin(0.4), over_white, 26.0).with_texture(Texture::FLAT);
    let rendered = render(&Scene {
        pieces: vec![thumb],
        ..Scene::default()
    });
    let survey = photo::survey(&rendered.jpeg, None).expect("23 patches do");
    let (_, pitches) = corner_error(&survey.corners, &rendered.truth.chart_corners);
    assert!(pitches < 0.03, "{pitches}");
    let told = |flag: &photo::Flag| flag.message.contains("patch 1 of row 4");
    assert!(survey.flags.iter().any(told), "{:?}", survey.flags);
}

#[test]
fn what_only_looks_like_a_chart_is_refused() {
    for seed in 0..2 {
        for decoy in decoys(seed) {
            let answer = photo::survey(&render(&decoy.scene).jpeg, None);
            let code = answer
                .as_ref()
                .map_or_else(|r| r.code.as_str(), |_| "accepted");
            assert!(
                decoy.right.contains(&code),
                "{}, seed {seed}: {code}",
                decoy.name
            );
        }
    }
}

#[test]
fn a_chart_of_which_a_strip_is_cut_off_is_refused() {
    let rendered = render(&Scene::default());
    let corners = rendered.truth.chart_corners;
    let left = corners.iter().map(|p| p[0]).fold(f64::MAX, f64::min);
    let right = corners.iter().map(|p| p[0]).fold(f64::MIN, f64::max);
    let pitch = (right - left) / 6.0;
    let picture = image::load_from_memory(&rendered.jpeg).expect("a JPEG");
    for (share, is_whole) in [(-0.3, true), (0.12, false), (0.3, false)] {
        let x = (left + share * pitch) as u32;
        let rest = picture.crop_imm(x, 0, picture.width() - x, picture.height());
        let mut jpeg = std::io::Cursor::new(Vec::new());
        rest.write_to(&mut jpeg, image::ImageFormat::Jpeg)
            .expect("a JPEG");
        let outcome = photo::survey(&jpeg.into_inner(), None).map_err(|why| why.code);
        let expected = if is_whole {
            Ok(())
        } else {
            Err(photo::RefusalCode::ChartCutOff)
        };
        assert_eq!(outcome.map(|_| ()), expected, "{share}");
    }
}
