//! Things that only look like the chart, and charts that must be refused.

use super::{dice::Dice, wild};
use scene::{
    Background, Chart, Flaws, Piece, Reflectance, Scene, Texture, Viewpoint, chart_spectra,
};

/// A scene that must be refused.
pub struct Decoy {
    /// What it shows.
    pub name: &'static str,
    /// The refusals that would be right.
    pub right: &'static [&'static str],
    /// The scene.
    pub scene: Scene,
}

const MISSING: &[&str] = &["chart_missing"];
const OTHER: &[&str] = &["poor_fit", "chart_missing"];

/// One of each kind, drawn from a seed.
pub fn decoys(seed: u64) -> Vec<Decoy> {
    let mut dice = Dice::new(seed);
    let patches = chart_spectra();
    let mut order: Vec<usize> = (0..24).collect();
    dice.shuffle(&mut order);
    // A rotation by whole rows: neither the chart nor its mirror image.
    let moved = 1 + dice.below(3);
    let hues = [(); 6].map(|()| dice.colour());
    let many: Vec<Reflectance> = (0..140).map(|_| dice.colour()).collect();
    let mut swapped: Vec<usize> = (0..24).collect();
    let other = unlike(&mut dice);
    swapped.swap(other[0], other[1]);
    let greys: Vec<f64> = (0..60).map(|_| dice.between(0.0, 1.0)).collect();
    let grids = [
        ("random colours", grid(6, 4, |k| many[k].clone()), 0.04),
        ("a wall of colours", grid(14, 10, |k| many[k].clone()), 0.04),
        (
            "patches shuffled",
            grid(6, 4, |k| patches[order[k]].clone()),
            0.04,
        ),
        (
            "rows moved on",
            grid(6, 4, |k| patches[(k + 6 * moved) % 24].clone()),
            0.04,
        ),
        (
            "keys",
            grid(12, 5, |k| Reflectance::flat(0.05 + 0.02 * greys[k])),
            0.6,
        ),
        (
            "panes",
            grid(4, 6, |k| Reflectance::flat(0.5 + 0.4 * greys[k])),
            0.1,
        ),
        (
            "two patches changed places",
            grid(6, 4, |k| patches[swapped[k]].clone()),
            0.04,
        ),
        (
            "two other colours",
            grid(6, 4, |k| match other.iter().position(|o| *o == k) {
                Some(n) => many[n].clone(),
                None => patches[k].clone(),
            }),
            0.04,
        ),
        ("quilt", quilt(6, 4, |k| many[k].clone()), 0.5),
        (
            "tiled cloth",
            quilt(12, 9, |k| hues[(k + k / 12) % 3].clone()),
            0.3,
        ),
        (
            "swatch book",
            grid(8, 6, |k| hues[k / 8].scaled(1.0 - 0.11 * (k % 8) as f64)),
            0.9,
        ),
        (
            "calendar",
            grid(7, 5, |k| match k % 7 {
                5 | 6 => hues[0].clone(),
                _ => Reflectance::flat(0.84),
            }),
            0.25,
        ),
        (
            "paint card",
            grid(6, 4, |k| hues[k % 6].scaled(1.0 - 0.22 * (k / 6) as f64)),
            0.8,
        ),
    ];
    let mut decoys: Vec<Decoy> = grids
        .into_iter()
        .map(|(name, pieces, ground)| Decoy {
            name,
            right: if name.starts_with("two ") {
                OTHER
            } else {
                MISSING
            },
            scene: laid(seed, pieces, ground),
        })
        .collect();
    decoys.push(Decoy {
        name: "no chart",
        right: MISSING,
        scene: Scene {
            chart: None,
            ..wild(seed, 1500)
        },
    });
    decoys.push(Decoy {
        name: "mirrored",
        right: &["mirrored"],
        scene: Scene {
            flaws: Flaws {
                mirrored: true,
                ..Flaws::default()
            },
            ..Scene::varied(seed, Vec::new())
        },
    });
    decoys.push(Decoy {
        name: "two charts",
        right: &["two_charts"],
        scene: Scene {
            flaws: Flaws {
                second_chart: Some(Chart {
                    middle_mm: [0.0, 90.0],
                    ..Chart::default()
                }),
                ..Flaws::default()
            },
            ..Scene::varied(seed, Vec::new())
        },
    });
    decoys.push(Decoy {
        name: "two sizes of chart",
        right: &["two_charts"],
        scene: Scene {
            width_px: 2400,
            height_px: 1800,
            flaws: Flaws {
                second_chart: Some(small_chart(&mut dice)),
                ..Flaws::default()
            },
            ..Scene::varied(seed, Vec::new())
        },
    });
    let mut cut = Scene::varied(seed, Vec::new());
    cut.viewpoint.shift = [[0.35, 0.0], [-0.35, 0.0], [0.0, 0.35], [0.0, -0.35]][seed as usize % 4];
    decoys.push(Decoy {
        name: "cut off",
        right: &["chart_cut_off", "chart_missing"],
        scene: cut,
    });
    decoys
}

/// A chart of a quarter to two thirds of the usual size, below it.
fn small_chart(dice: &mut Dice) -> Chart {
    let patch_mm = dice.between(5.0, 13.0);
    Chart {
        middle_mm: [dice.between(-40.0, 40.0), 70.0],
        turn_deg: dice.between(-30.0, 30.0),
        patch_mm,
        gap_mm: 0.15 * patch_mm,
        margin_mm: 0.3 * patch_mm,
        ..Chart::default()
    }
}

/// Two patches that nobody would take for each other: a colour and a neutral.
fn unlike(dice: &mut Dice) -> [usize; 2] {
    let colours = [6, 7, 8, 10, 11, 12, 13, 14, 15, 16, 17];
    [dice.pick(&colours), 18 + dice.below(4)]
}

/// Patches of cloth sewn together without a gap.
fn quilt(columns: usize, rows: usize, colour: impl Fn(usize) -> Reflectance) -> Vec<Piece> {
    (0..columns * rows)
        .map(|k| {
            let at = [(k % columns, columns), (k / columns, rows)]
                .map(|(n, of)| 22.0 * (n as f64 - (of as f64 - 1.0) / 2.0));
            Piece::square(&k.to_string(), colour(k), at, 22.0)
        })
        .collect()
}

fn grid(columns: usize, rows: usize, colour: impl Fn(usize) -> Reflectance) -> Vec<Piece> {
    const STEP_MM: f64 = 23.0;
    (0..columns * rows)
        .map(|k| {
            let at = [(k % columns, columns), (k / columns, rows)]
                .map(|(n, of)| STEP_MM * (n as f64 - (of as f64 - 1.0) / 2.0));
            Piece::square(&k.to_string(), colour(k), at, 20.0).with_texture(Texture::FLAT)
        })
        .collect()
}

/// Pieces alone on an even ground.
fn laid(seed: u64, pieces: Vec<Piece>, ground: f64) -> Scene {
    Scene {
        width_px: 1500,
        height_px: 1125,
        chart: None,
        pieces,
        background: Background::Plain(Box::new(Reflectance::flat(ground))),
        viewpoint: Viewpoint {
            tilt_deg: (seed % 20) as f64,
            turn_deg: seed as f64 * 37.0,
            fill: 0.4 + 0.05 * (seed % 10) as f64,
            ..Viewpoint::default()
        },
        seed,
        ..Scene::default()
    }
}
