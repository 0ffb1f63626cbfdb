//! Shadows with one straight edge across table, chart or pieces.
//!
//! Source: rendered photos, whose true colours come from spectra inside `scene`, which
//! shares no code with `photo`.

#[allow(dead_code, reason = "each test file uses its share")]
mod common;

use colour::difference::ciede2000;
use common::request;
use photo::{FlagCode, PhotoReading};
use scene::{Background, Dye, Flaws, Piece, Rendered, Scene, Shadow, render};

/// Three pieces below the chart's middle in a shadow's light.
fn photo(shadow: Option<Shadow>) -> (Rendered, PhotoReading) {
    let shades =
        [Dye::madder(), Dye::indigo(), Dye::weld()].map(|dye| dye.on(&scene::cotton(), 0.5));
    let ids = ["red", "blue", "yellow"];
    let rendered = render(&Scene {
        width_px: 1600,
        height_px: 1200,
        pieces: Piece::rows(ids.into_iter().zip(shades)),
        background: Background::Paper,
        flaws: Flaws {
            shadow,
            ..Flaws::default()
        },
        ..Scene::default()
    });
    let reading = photo::read(&rendered.jpeg, &request(&rendered)).expect("the photo is read");
    (rendered, reading)
}

/// The worst miss of a colour, CIEDE2000.
fn worst((rendered, reading): &(Rendered, PhotoReading)) -> f64 {
    let misses = rendered.truth.pieces.iter().map(|piece| {
        let read = reading.reading(&piece.id).and_then(|r| r.lab);
        ciede2000(read.expect("a colour"), colour::Lab::from(piece.lab_d65_10))
    });
    misses.fold(0.0, f64::max)
}

fn is_uneven((_, reading): &(Rendered, PhotoReading)) -> bool {
    let uneven = |flag: &photo::Flag| flag.code == FlagCode::UnevenLight;
    reading.flags.iter().any(uneven)
}

fn shadow(through_mm: [f64; 2], towards_deg: f64, soft_mm: f64) -> Option<Shadow> {
    Some(Shadow {
        through_mm,
        towards_deg,
        soft_mm,
        depth: 0.3,
    })
}

/// Without the edge the pieces would be read as if they got all the light: 0.3 less is
/// about ten units of CIEDE2000.
#[test]
fn pieces_are_read_right_past_a_shadows_edge() {
    let plain = photo(None);
    assert!(!is_uneven(&plain));
    for (what, shadow) in [
        ("soft, askew", shadow([0.0, -20.0], 60.0, 70.0)),
        ("sharp, across the chart", shadow([10.0, -30.0], 0.0, 3.0)),
        ("sharp, below the chart", shadow([0.0, 8.0], 90.0, 3.0)),
    ] {
        let shaded = photo(shadow);
        let (least, most) = (worst(&plain), worst(&shaded));
        println!(
            "{what}: {most:.2} beside {least:.2}, flags {:?}",
            shaded.1.flags
        );
        assert!(most < least + 1.5, "{what}: {most} beside {least}");
        assert!(is_uneven(&shaded), "{what}");
    }
}

/// What parts chart and pieces may be a shadow or a paper under the pieces: both have to
/// lie in the interval.
#[test]
fn a_sharp_edge_that_the_chart_cannot_judge_is_doubt() {
    let [plain, shaded] = [None, shadow([0.0, 8.0], 90.0, 3.0)].map(photo);
    for (sure, doubtful) in plain.1.readings.iter().zip(&shaded.1.readings) {
        let [sure, doubtful] = [sure, doubtful].map(|reading| reading.cov[0][0].sqrt());
        // Half a step of 0.36, a logarithm, at L* 40 to 80.
        assert!(doubtful > 2.5 && doubtful > 2.0 * sure, "{doubtful} {sure}");
    }
    let flags = &shaded.1.flags;
    let is_told = flags.iter().any(|flag| flag.message.contains("sharp edge"));
    assert!(is_told, "{flags:?}");
}
