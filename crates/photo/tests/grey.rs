//! Differences by a grey card alone, on rendered photos with known colours.
//!
//! Source of the truth: spectra and CIE tables inside `scene`, which shares no
//! code with `photo`. The grey card is the chart's patch "neutral 5".

use colour::{Lab, View, difference::ciede2000};
use photo::{Area, GreyComparison, GreyRequest, Point, RefusalCode, compare_by_grey};
use scene::{Difficulty, Dye, Piece, Rendered, Scene, render};

fn photo(seed: u64) -> Rendered {
    let dyes = Dye::wide();
    let pieces: Vec<_> = (0..6u64)
        .map(|i| {
            let dye = &dyes[((seed * 5 + i / 2 * 7) % 12) as usize];
            let depth = [0.7, 0.5][(i % 2) as usize];
            (format!("p{i}"), dye.on(&scene::linen(), depth))
        })
        .collect();
    let rows = Piece::rows(pieces.iter().map(|(id, r)| (id.as_str(), r.clone())));
    let levels = [Difficulty::Easy, Difficulty::Medium, Difficulty::Hard];
    render(&Scene {
        width_px: 1400,
        height_px: 1050,
        ..Scene::wild(seed, levels[(seed % 3) as usize], rows)
    })
}

/// The middle of the fourth patch of the last row, as a share of the grid.
fn card(corners: &[Point; 4]) -> [Point; 4] {
    let at = |u: f64, v: f64| {
        [0, 1].map(|k| {
            let along = |a: usize, b: usize| corners[a][k] + u * (corners[b][k] - corners[a][k]);
            along(0, 1) + v * (along(3, 2) - along(0, 1))
        })
    };
    [
        at(0.54, 0.85),
        at(0.61, 0.85),
        at(0.61, 0.94),
        at(0.54, 0.94),
    ]
}

fn request(rendered: &Rendered) -> GreyRequest {
    let pieces = rendered.truth.pieces.iter();
    GreyRequest {
        card: card(&rendered.truth.chart_corners),
        reflectance: 0.19,
        areas: pieces
            .map(|piece| Area {
                id: piece.id.clone(),
                polygon: piece.polygon.clone(),
            })
            .collect(),
        view: View::D65_10,
    }
}

fn truth(rendered: &Rendered, id: &str) -> Lab {
    let piece = rendered.truth.pieces.iter().find(|p| p.id == id);
    Lab::from(piece.expect("a rendered piece").lab_d65_10)
}

fn held(rendered: &Rendered, told: &GreyComparison) -> (usize, usize) {
    let holds = |d: &&photo::Difference| {
        let true_de = ciede2000(truth(rendered, &d.a), truth(rendered, &d.b));
        (d.low..=d.high).contains(&true_de)
    };
    (
        told.differences.iter().filter(holds).count(),
        told.differences.len(),
    )
}

#[test]
fn wide_intervals_hold_and_are_not_endless() {
    let (mut sum, mut n, mut widths) = (0, 0, Vec::new());
    for seed in 500..509 {
        let rendered = photo(seed);
        let told = compare_by_grey(&rendered.jpeg, &request(&rendered))
            .unwrap_or_else(|refusal| panic!("seed {seed}: {refusal}"));
        assert_eq!(told.differences.len(), 15);
        let (held, of) = held(&rendered, &told);
        sum += held;
        n += of;
        widths.extend(told.differences.iter().map(|d| (d.high - d.low) / d.de00));
    }
    widths.sort_by(f64::total_cmp);
    let width = widths[widths.len() / 2];
    println!("{sum} of {n} intervals hold; width over difference, median {width:.2}");
    assert!(sum * 100 >= 88 * n);
    assert!(width < 1.2);
}

#[test]
fn a_card_that_is_none_is_refused() {
    let rendered = photo(501);
    let asked = request(&rendered);
    let refused = |card: [Point; 4], reflectance: f64| {
        let request = GreyRequest {
            card,
            reflectance,
            ..asked.clone()
        };
        compare_by_grey(&rendered.jpeg, &request).unwrap_err().code
    };
    let away = asked.card.map(|p| p.map(|v| v + 1e5));
    assert_eq!(refused(away, 0.18), RefusalCode::BadCorners);
    assert_eq!(refused([[10.0, 10.0]; 4], 0.18), RefusalCode::BadCorners);
    assert_eq!(refused(asked.card, 18.0), RefusalCode::BadCorners);
    assert_eq!(refused(asked.card, f64::NAN), RefusalCode::BadCorners);
}
