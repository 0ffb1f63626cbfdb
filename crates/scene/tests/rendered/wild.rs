//! Photographs drawn by difficulty, laid anew, and with flaws.

use crate::decode::{mean_about, upright};
use colour::{Lab, Spectrum, View, difference::ciede2000};
use scene::{
    Background, Camera, Difficulty, Dye, Flaws, Gradient, LocalTone, Optics, Piece, Reflectance,
    Rendered, Resist, ResistDyed, Scene, Texture, Viewpoint, Wet, WhiteBalance, cotton, linen,
    render,
};

const LEVELS: [Difficulty; 3] = [Difficulty::Easy, Difficulty::Medium, Difficulty::Hard];

fn resisted(pattern: Resist) -> Piece {
    Piece::square("r", cotton(), [0.0, 34.0], 60.0).resisted(ResistDyed {
        pattern,
        pale: Dye::indigo().on(&cotton(), 0.05),
        deep: Dye::indigo().on(&cotton(), 0.9),
        deep_share: 0.55,
        border_mm: 3.0,
        pitch_mm: 16.0,
        seed: 3,
    })
}

fn pieces() -> Vec<Piece> {
    let shades = Dye::wide().map(|dye| (dye.name.clone(), dye.on(&linen(), 0.7)));
    Piece::rows(
        shades
            .iter()
            .map(|(id, shade)| (id.as_str(), shade.clone())),
    )
}

fn small(seed: u64, difficulty: Difficulty) -> Scene {
    Scene {
        width_px: 400,
        height_px: 300,
        ..Scene::wild(seed, difficulty, pieces())
    }
}

/// From above, evenly lit, nothing but the pieces on grey.
fn plain(pieces: Vec<Piece>) -> Scene {
    Scene {
        width_px: 800,
        height_px: 600,
        pieces,
        background: Background::plain(Reflectance::flat(0.4)),
        gradient: Gradient {
            share: 0.0,
            towards_deg: 0.0,
        },
        white_balance: WhiteBalance {
            red: 1.0,
            blue: 1.0,
        },
        viewpoint: Viewpoint {
            tilt_deg: 0.0,
            ..Viewpoint::default()
        },
        ..Scene::default()
    }
}

fn through(optics: Optics, scene: Scene) -> Scene {
    Scene {
        camera: Camera {
            optics,
            ..Camera::plain()
        },
        ..scene
    }
}

fn middle(polygon: &[[f64; 2]]) -> [f64; 2] {
    let n = polygon.len() as f64;
    [0, 1].map(|k| polygon.iter().map(|p| p[k]).sum::<f64>() / n)
}

#[test]
fn drawn_scenes_keep_within_their_bounds_and_in_the_photo() {
    for (level, tilt, gradient) in [
        (Difficulty::Easy, 8.0, 0.08),
        (Difficulty::Medium, 15.0, 0.25),
        (Difficulty::Hard, 25.0, 0.4),
    ] {
        for seed in 0..15 {
            let first = Scene {
                width_px: 200,
                height_px: 150,
                ..small(seed, level)
            };
            for scene in [first.relaid(7), first] {
                assert!(scene.viewpoint.tilt_deg <= tilt && scene.gradient.share <= gradient);
                assert_eq!(scene.difficulty, level);
                let truth = render(&scene).truth;
                let areas = truth.pieces.iter().flat_map(|piece| &piece.polygon);
                for [x, y] in areas.chain(&truth.chart_corners) {
                    let inside = (0.0..200.0).contains(x) && (0.0..150.0).contains(y);
                    assert!(inside, "{level:?} {seed} {x} {y}");
                }
            }
        }
    }
}

#[test]
fn the_same_seed_gives_the_same_file() {
    for level in LEVELS {
        let again = || render(&small(11, level));
        assert_eq!(again(), again());
        assert_ne!(again().jpeg, render(&small(12, level)).jpeg);
        let relaid = |seed| render(&small(11, level).relaid(seed));
        assert_eq!(relaid(1), relaid(1));
        assert_ne!(relaid(1).jpeg, relaid(2).jpeg);
    }
}

#[test]
fn laid_anew_the_pieces_and_the_camera_stay_and_the_rest_changes() {
    for level in LEVELS {
        for seed in 0..3 {
            let scene = small(seed, level);
            let other = scene.relaid(seed + 100);
            assert_eq!(scene.camera, other.camera);
            assert_eq!(scene.background, other.background);
            for (a, b) in scene.pieces.iter().zip(&other.pieces) {
                assert_eq!((&a.id, &a.reflectance), (&b.id, &b.reflectance));
                assert_ne!(a.outline_mm, b.outline_mm);
            }
            assert_ne!(scene.viewpoint, other.viewpoint);
            assert_ne!(scene.exposure_stops, other.exposure_stops);
            assert_ne!(scene.white_balance, other.white_balance);
            let truth = |scene: &Scene| -> Vec<[f64; 3]> {
                let truth = render(scene).truth;
                truth.pieces.iter().map(|piece| piece.lab_d65_10).collect()
            };
            assert_eq!(truth(&scene), truth(&other));
        }
    }
}

#[test]
fn pieces_laid_anew_never_overlap() {
    let scene = small(3, Difficulty::Hard);
    for seed in 0..50 {
        let laid = scene.relaid(seed).pieces;
        for (i, a) in laid.iter().enumerate() {
            for b in &laid[i + 1..] {
                let [a, b] = [a, b].map(|piece| middle(&piece.outline_mm));
                // Squares of 40 mm, at most 3.5 degrees askew.
                let apart = (a[0] - b[0]).abs().max((a[1] - b[1]).abs());
                assert!(apart > 42.5, "{seed} {apart}");
            }
        }
    }
}

/// No hand covers a piece: the rest of the photo is what it is without one.
#[test]
fn hands_stay_at_the_edge() {
    let mut seen = 0;
    for seed in 0..12 {
        let scene = small(seed, Difficulty::Hard);
        if scene.flaws.hands.is_empty() {
            continue;
        }
        seen += 1;
        let without = Scene {
            flaws: Flaws {
                hands: Vec::new(),
                ..scene.flaws.clone()
            },
            ..scene.clone()
        };
        let (with, without) = (render(&scene), render(&without));
        let [a, b] = [&with, &without].map(|r| upright(&r.jpeg));
        for piece in &with.truth.pieces {
            for point in &piece.polygon {
                let [a, b] = [&a, &b].map(|image| mean_about(image, *point, 2));
                // Local tone mapping spreads a little of the hand's brightness.
                assert!((0..3).all(|k| (a[k] - b[k]).abs() < 0.05), "{seed}");
            }
        }
    }
    assert!(seen > 2, "{seen}");
}

/// Source: the crate `colour` for the means' colours; the share of area by the
/// photo's own pixels.
#[test]
fn resist_truth_is_what_the_photo_shows() {
    for pattern in [Resist::Stripes, Resist::Rings, Resist::Spots, Resist::Folds] {
        let piece = resisted(pattern).with_texture(Texture::FLAT);
        let dyed = piece.resist.clone().unwrap();
        let photo = |piece: Piece| {
            let scene = plain(vec![piece]);
            render(&Scene {
                width_px: 500,
                height_px: 375,
                ..scene
            })
        };
        let bare = |shade: &Reflectance| {
            let mut even = piece.clone();
            (even.resist, even.reflectance) = (None, shade.clone());
            mean_of_area(&photo(even))
        };
        let rendered = photo(piece.clone());
        let (pale, deep, mean) = (bare(&dyed.pale), bare(&dyed.deep), mean_of_area(&rendered));
        let truth = &rendered.truth.pieces[0];
        let parts = truth.parts.unwrap();
        let lab = |shade: &Reflectance| {
            let spectrum = Spectrum::new(380.0, 10.0, shade.0.to_vec()).unwrap();
            spectrum.lab(View::D65_10)
        };
        assert!(ciede2000(lab(&dyed.pale), Lab::from(parts.pale_lab)) < 0.1);
        assert!(ciede2000(lab(&dyed.deep), Lab::from(parts.deep_lab)) < 0.1);
        assert!(ciede2000(lab(&piece.reflectance), Lab::from(truth.lab_d65_10)) < 0.1);
        // A border is a little darker than half and half, as dye hides more the
        // less of it there is.
        let share = (pale[1] - mean[1]) / (pale[1] - deep[1]);
        let off = share - parts.deep_share;
        assert!(
            (-0.02..0.12).contains(&off),
            "{pattern:?} {share} {parts:?}"
        );
    }
}

/// The mean linear light over the area of the first piece.
fn mean_of_area(rendered: &Rendered) -> [f64; 3] {
    let image = upright(&rendered.jpeg);
    let [a, b, _, d] = rendered.truth.pieces[0].polygon[..] else {
        panic!("a square has four corners");
    };
    let mut sum = [0.0; 3];
    for i in 0..2500 {
        let [u, v] = [i % 50, i / 50].map(|n| (f64::from(n) + 0.5) / 50.0);
        let point = [0, 1].map(|k| a[k] + u * (b[k] - a[k]) + v * (d[k] - a[k]));
        let seen = mean_about(&image, point, 0);
        for k in 0..3 {
            sum[k] += seen[k] / 2500.0;
        }
    }
    sum
}

/// The corners of a piece bright on black are found in the pixels where the truth
/// has them, bent by the lens.
#[test]
fn barrel_distortion_moves_truth_and_pixels_together() {
    let piece = Piece::square("a", Reflectance::flat(0.8), [150.0, 0.0], 40.0);
    let optics = Optics {
        barrel: 0.05,
        ..Optics::default()
    };
    let straight = plain(vec![piece.with_texture(Texture::FLAT)]);
    let bent = render(&through(optics, straight.clone()));
    let straight = render(&straight);
    let [there, here] = [&bent, &straight].map(|r| middle(&r.truth.pieces[0].polygon));
    assert!((there[0] - here[0]).abs() > 5.0);
    let image = upright(&bent.jpeg);
    let (mut sum, mut count) = ([0.0; 2], 0.0);
    for y in -45..45 {
        for x in -45..45 {
            let point = [there[0] + f64::from(x), there[1] + f64::from(y)];
            if point[0] < 799.0 && mean_about(&image, point, 0)[1] > 0.5 {
                sum = [
                    sum[0] + point[0].floor() + 0.5,
                    sum[1] + point[1].floor() + 0.5,
                ];
                count += 1.0;
            }
        }
    }
    let seen = sum.map(|s| s / count);
    assert!(
        (seen[0] - there[0]).hypot(seen[1] - there[1]) < 1.0,
        "{seen:?} {there:?}"
    );
}

#[test]
fn corners_darken_by_the_vignette() {
    let empty = Scene {
        chart: None,
        ..plain(Vec::new())
    };
    let optics = Optics {
        vignette: 0.3,
        ..Optics::default()
    };
    let image = upright(&render(&through(optics, empty)).jpeg);
    let corner = mean_about(&image, [8.0, 8.0], 6)[1];
    let middle = mean_about(&image, [400.0, 300.0], 6)[1];
    assert!((corner / middle - 0.71).abs() < 0.02, "{}", corner / middle);
}

#[test]
fn wet_cloth_is_darker_with_sparks_and_its_truth_stays_dry() {
    let dry = Piece::square("a", Dye::madder().on(&cotton(), 0.4), [0.0, 34.0], 60.0);
    let wet = dry.clone().wetted(Wet {
        soaked: 1.0,
        sparkle_share: 0.05,
        strength: 0.7,
    });
    let [dry, wet] = [dry, wet].map(|piece| render(&plain(vec![piece])));
    assert_eq!(dry.truth, wet.truth);
    let brightest = |r: &Rendered| {
        let image = upright(&r.jpeg);
        let m = middle(&r.truth.pieces[0].polygon);
        let points = (0..3600).map(|i| {
            [
                m[0] + f64::from(i % 60) - 30.0,
                m[1] + f64::from(i / 60) - 30.0,
            ]
        });
        let mut seen: Vec<f64> = points.map(|p| mean_about(&image, p, 0)[2]).collect();
        seen.sort_by(f64::total_cmp);
        (seen[1800], seen[3590])
    };
    let ((dry_middle, dry_top), (wet_middle, wet_top)) = (brightest(&dry), brightest(&wet));
    assert!(wet_middle < 0.85 * dry_middle, "{dry_middle} {wet_middle}");
    assert!(wet_top > 2.0 * dry_top, "{dry_top} {wet_top}");
}

#[test]
fn local_tone_mapping_raises_dark_surroundings() {
    let grey = |id: &str, x: f64, share: f64| {
        let side = Piece::square(id, Reflectance::flat(share), [x, 40.0], 95.0);
        side.with_texture(Texture::FLAT)
    };
    let pieces = vec![grey("dark", -50.0, 0.05), grey("bright", 50.0, 0.8)];
    let plainly = plain(pieces);
    let mapped = Scene {
        flaws: Flaws {
            local_tone: Some(LocalTone {
                strength: 0.4,
                reach: 0.06,
            }),
            ..Flaws::default()
        },
        ..plainly.clone()
    };
    let ratio = |scene: &Scene| {
        let rendered = render(scene);
        let image = upright(&rendered.jpeg);
        let [dark, bright] = [0, 1].map(|i| {
            let at = middle(&rendered.truth.pieces[i].polygon);
            mean_about(&image, at, 10)[1]
        });
        bright / dark
    };
    let (before, after) = (ratio(&plainly), ratio(&mapped));
    assert!(after < 0.6 * before, "{before} {after}");
}
