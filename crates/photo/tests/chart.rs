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
