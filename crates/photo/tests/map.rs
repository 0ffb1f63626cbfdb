//! Where on a rendered photo lies what was found, against where it was rendered.

#![allow(
    clippy::unwrap_used,
    reason = "a test that can't go on should stop where it stands"
)]

#[allow(dead_code, reason = "each test file uses its share")]
mod common;

use common::request;
use photo::{FlagCode, PhotoReading, Tiles, Trouble, read, tiles};
use scene::{Dye, Flaws, Glare, Gradient, Piece, Rendered, Scene, cotton, render};

fn scene() -> Scene {
    let cloth = |depth| Dye::madder().on(&cotton(), depth);
    Scene {
        width_px: 1400,
        height_px: 1050,
        pieces: Piece::rows([("A", cloth(0.9)), ("B", cloth(0.9))]),
        ..Scene::default()
    }
}

fn reading(rendered: &Rendered) -> PhotoReading {
    read(&rendered.jpeg, &request(rendered)).unwrap()
}

#[test]
fn patches_lie_on_the_chart_and_light_grows_the_way_it_was_made_to() {
    let rendered = render(&Scene {
        gradient: Gradient {
            share: 0.3,
            towards_deg: 0.0,
        },
        ..scene()
    });
    let map = reading(&rendered).map;
    assert_eq!(map.patches.len(), 24);
    assert!(map.patches.iter().filter(|p| p.is_used).count() >= 20);
    let chart = rendered.truth.chart_corners;
    let [low, high] = [f64::min, f64::max].map(|pick: fn(f64, f64) -> f64| {
        [0, 1].map(|k| chart.iter().map(|p| p[k]).reduce(pick).unwrap())
    });
    for [x, y] in map.patches.iter().flat_map(|patch| patch.corners) {
        assert!((low[0]..=high[0]).contains(&x) && (low[1]..=high[1]).contains(&y));
    }
    // Made to be 0.85 at the left edge and 1.15 at the right one: a ratio of 1.353.
    let middle = &map.light.values[map.light.rows / 2 * map.light.columns..][..map.light.columns];
    let ratio = middle.last().unwrap() / middle[0];
    assert!((ratio - 1.15 / 0.85).abs() < 0.15, "{ratio}");
    assert!(map.board.is_none());
}

#[test]
fn a_shine_is_told_where_it_lies_and_quiet_areas_have_no_spots() {
    let [x, y] = scene().pieces[0].outline_mm[0];
    let rendered = render(&Scene {
        flaws: Flaws {
            glare: Some(Glare {
                at_mm: [x + 20.0, y + 20.0],
                radius_mm: 5.0,
                strength: 1.5,
            }),
            ..Flaws::default()
        },
        ..scene()
    });
    let reading = reading(&rendered);
    let flags = &reading.reading("A").unwrap().flags;
    let told = |code| flags.iter().any(|flag| flag.code == code);
    assert!(
        told(FlagCode::Clipped) || told(FlagCode::Glare),
        "{flags:?}"
    );
    let spots = &reading.map.spots;
    assert!(!spots.is_empty());
    let truth = &rendered.truth.pieces[0].polygon;
    let middle = [0, 1].map(|k| truth.iter().map(|p| p[k]).sum::<f64>() / truth.len() as f64);
    let width = truth[1][0] - truth[0][0];
    for spot in spots {
        assert_eq!(spot.area, "A");
        assert!(matches!(spot.trouble, Trouble::BurntOut | Trouble::Shining));
        assert!((0.02..=1.0).contains(&spot.share));
        let at = [0, 1].map(|k| (spot.corners[0][k] + spot.corners[1][k]) / 2.0);
        let off = (at[0] - middle[0]).hypot(at[1] - middle[1]);
        assert!(off < 0.7 * width, "{at:?} lies {off} px from {middle:?}");
    }
}

#[test]
fn tiles_cover_the_photo_at_full_size() {
    let rendered = render(&scene());
    let cut = tiles(&rendered.jpeg).unwrap();
    assert_eq!((cut.columns, cut.rows, cut.jpegs.len()), (3, 3, 9));
    let sizes: Vec<(usize, usize)> = cut.jpegs.iter().map(|jpeg| size(jpeg)).collect();
    let side = Tiles::SIDE_PX as usize;
    assert_eq!(sizes[0], (side, side));
    assert_eq!(sizes[8], (1400 - 2 * side, 1050 - 2 * side));
    assert!(tiles(b"no photo").is_err());
}

/// Width and height in a JPEG's frame header (ISO/IEC 10918-1, B.2.2, baseline).
fn size(jpeg: &[u8]) -> (usize, usize) {
    let at = jpeg
        .windows(2)
        .position(|pair| pair == [0xff, 0xc0])
        .unwrap();
    let two = |k: usize| usize::from(jpeg[at + k]) << 8 | usize::from(jpeg[at + k + 1]);
    (two(7), two(5))
}
