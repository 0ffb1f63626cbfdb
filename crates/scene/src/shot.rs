//! What differs from one photo of a bench to the next.

use crate::{
    Difficulty, Flaws, Gradient, Hand, Jpeg, Light, NearLamp, Orientation, Piece, Scene,
    SecondLight, Shadow, Viewpoint, WhiteBalance, render, skin, wild::pick,
};
use rand::{Rng, RngExt, seq::SliceRandom};
use std::ops::Range;

/// Bounds of a difficulty.
struct Bounds {
    tilt_deg: f64,
    gradient: Range<f64>,
    balance: f64,
    exposure_stops: Range<f64>,
    fill: Range<f64>,
    blur_px: f64,
    /// How often there is a near lamp, a shadow, a second light and a hand.
    chances: [f64; 4],
}

impl Bounds {
    const fn of(difficulty: Difficulty) -> Self {
        match difficulty {
            Difficulty::Easy => Self {
                tilt_deg: 8.0,
                gradient: 0.0..0.08,
                balance: 0.03,
                exposure_stops: -0.35..0.0,
                fill: 0.75..0.92,
                blur_px: 0.0,
                chances: [0.0, 0.0, 0.0, 0.0],
            },
            Difficulty::Medium => Self {
                tilt_deg: 15.0,
                gradient: 0.15..0.25,
                balance: 0.06,
                exposure_stops: -0.55..0.0,
                fill: 0.65..0.92,
                blur_px: 0.5,
                chances: [0.1, 0.1, 0.1, 0.2],
            },
            Difficulty::Hard => Self {
                tilt_deg: 25.0,
                gradient: 0.1..0.4,
                balance: 0.12,
                exposure_stops: -0.9..0.0,
                fill: 0.5..0.9,
                blur_px: 1.0,
                chances: [0.3, 0.35, 0.35, 0.5],
            },
        }
    }
}

/// The bench in a light and from a place drawn anew.
pub(crate) fn draw(bench: &Scene, rng: &mut impl Rng) -> Scene {
    let bounds = Bounds::of(bench.difficulty);
    let light = light(rng, bench.difficulty);
    let [lamp, shadow, second, hand] = bounds.chances.map(|chance| rng.random_bool(chance));
    // What falls off by a lamp or a shadow needs no steep window as well.
    let gradient = if lamp || shadow {
        0.5 * rng.random_range(bounds.gradient)
    } else {
        rng.random_range(bounds.gradient)
    };
    let chart = bench.chart.clone().map(|chart| crate::Chart {
        turn_deg: rng.random_range(-3.0..3.0),
        ..chart
    });
    let quarter = f64::from(*pick(rng, &[0u8, 0, 0, 1, 2, 3]));
    let scene = Scene {
        gradient: Gradient {
            share: gradient,
            towards_deg: rng.random_range(0.0..360.0),
        },
        viewpoint: Viewpoint {
            tilt_deg: rng.random_range(0.0..bounds.tilt_deg),
            tilt_towards_deg: rng.random_range(0.0..360.0),
            turn_deg: 90.0 * quarter + rng.random_range(-14.0..14.0),
            fill: rng.random_range(bounds.fill),
            focal: rng.random_range(0.72..1.4),
            shift: [rng.random_range(-0.02..0.02), rng.random_range(-0.02..0.02)],
        },
        white_balance: balance(rng, bounds.balance, light.kelvin()),
        exposure_stops: rng.random_range(bounds.exposure_stops),
        jpeg: Jpeg {
            orientation: *pick(
                rng,
                &[
                    Orientation::Upright,
                    Orientation::HalfTurn,
                    Orientation::QuarterClockwise,
                    Orientation::QuarterAnticlockwise,
                ],
            ),
            ..bench.jpeg
        },
        flaws: Flaws {
            blur_px: bounds.blur_px * rng.random_range(0.0..1.0),
            second_light: second.then(|| second_light(rng)),
            near_lamp: lamp.then(|| NearLamp {
                at_mm: [
                    rng.random_range(-150.0..150.0),
                    rng.random_range(-150.0..150.0),
                ],
                height_mm: rng.random_range(500.0..900.0),
            }),
            shadow: shadow.then(|| Shadow {
                through_mm: [
                    rng.random_range(-100.0..100.0),
                    rng.random_range(-80.0..80.0),
                ],
                towards_deg: rng.random_range(0.0..360.0),
                soft_mm: rng.random_range(40.0..160.0),
                depth: rng.random_range(0.1..0.35),
            }),
            hands: Vec::new(),
            ..bench.flaws.clone()
        },
        light,
        chart,
        ..bench.clone()
    };
    let dark = rng.random_range(0.0..0.9);
    let place = rng.random_range(0.3..0.7);
    let hand = hand.then(|| hand_beside(&scene, place, dark)).flatten();
    Scene {
        flaws: Flaws {
            hands: hand.into_iter().collect(),
            ..scene.flaws.clone()
        },
        ..scene
    }
}

/// The pieces laid anew.
pub(crate) fn lay_anew(pieces: &[Piece], rng: &mut impl Rng) -> Vec<Piece> {
    let reach = |piece: &Piece| {
        let m = piece.middle_mm();
        let far = piece
            .outline_mm
            .iter()
            .map(|p| (p[0] - m[0]).hypot(p[1] - m[1]));
        far.fold(0.0, f64::max)
    };
    let mut places: Vec<[f64; 2]> = pieces.iter().map(Piece::middle_mm).collect();
    let least = pieces.iter().map(reach).fold(f64::INFINITY, f64::min);
    let most = pieces.iter().map(reach).fold(0.0, f64::max);
    if most < 1.05 * least {
        places.shuffle(rng);
    }
    let lay = |(piece, place): (&Piece, [f64; 2])| {
        let askew = rng.random_range(-2.5..2.5) + 180.0 * f64::from(u8::from(rng.random_bool(0.5)));
        let middle = piece.middle_mm();
        let to = place.map(|at| at + rng.random_range(-1.2..1.2));
        let mut laid = piece.clone().turned(askew);
        for point in &mut laid.outline_mm {
            *point = [0, 1].map(|k| point[k] - middle[k] + to[k]);
        }
        laid
    };
    pieces.iter().zip(places).map(lay).collect()
}

fn light(rng: &mut impl Rng, difficulty: Difficulty) -> Light {
    let daylight = |kelvin| Light::Daylight { kelvin };
    let diode = |kelvin| Light::WhiteDiode { kelvin };
    let window = daylight(rng.random_range(4000.0..10_000.0));
    let lamps = [
        Light::A,
        Light::Fl2,
        Light::ThreeBand,
        Light::RgbDiodes,
        diode(2700.0),
        diode(4000.0),
    ];
    let lamp = pick(rng, &lamps).clone();
    let mixed = Light::mixed(window.clone(), lamp.clone(), rng.random_range(0.2..0.8));
    match difficulty {
        Difficulty::Easy => {
            let kelvin = rng.random_range(5000.0..7000.0);
            let good = diode(rng.random_range(4000.0..6500.0));
            pick(rng, &[Light::D65, Light::D50, daylight(kelvin), good]).clone()
        }
        Difficulty::Medium => pick(
            rng,
            &[
                window.clone(),
                window,
                lamp.clone(),
                lamp,
                diode(6500.0),
                mixed,
            ],
        )
        .clone(),
        Difficulty::Hard => {
            let narrow = [Light::ThreeBand, Light::RgbDiodes];
            let narrow = pick(rng, &narrow).clone();
            pick(rng, &[narrow, lamp, mixed]).clone()
        }
    }
}

/// Errors of the white balance of up to `most`; cameras leave lamplight some of its warmth.
fn balance(rng: &mut impl Rng, most: f64, kelvin: f64) -> WhiteBalance {
    let warmth = if kelvin < 3500.0 {
        rng.random_range(0.0..0.1)
    } else {
        0.0
    };
    WhiteBalance {
        red: (1.0 + rng.random_range(-most..most)) * (1.0 + 0.6 * warmth),
        blue: (1.0 + rng.random_range(-most..most)) * (1.0 - warmth),
    }
}

fn second_light(rng: &mut impl Rng) -> SecondLight {
    let daylight = Light::Daylight {
        kelvin: rng.random_range(5000.0..9000.0),
    };
    let lights = [daylight, Light::A, Light::WhiteDiode { kelvin: 2700.0 }];
    SecondLight {
        light: pick(rng, &lights).clone(),
        shares: [rng.random_range(0.0..0.15), rng.random_range(0.2..0.6)],
        towards_deg: rng.random_range(0.0..360.0),
    }
}

/// A hand in the widest margin; None where there is room for none.
fn hand_beside(scene: &Scene, place: f64, dark: f64) -> Option<Hand> {
    /// Across the palm, mm.
    const PALM_MM: f64 = 85.0;
    let size = [scene.width_px, scene.height_px].map(f64::from);
    let projection = render::projection(scene);
    let seen: Vec<[f64; 2]> = render::content(scene)
        .into_iter()
        .map(|p| projection.to_photo(p))
        .collect();
    let side = |k: usize, pick: fn(f64, f64) -> f64, start: f64| {
        seen.iter().map(|p| p[k]).fold(start, pick)
    };
    let margins = [
        (side(0, f64::min, size[0]), [0.0, place], 0.0),
        (side(1, f64::min, size[1]), [place, 0.0], 90.0),
        (size[0] - side(0, f64::max, 0.0), [1.0, place], 180.0),
        (size[1] - side(1, f64::max, 0.0), [place, 1.0], 270.0),
    ];
    let widest = margins.into_iter().max_by(|a, b| a.0.total_cmp(&b.0))?;
    let (margin_px, at, towards_deg) = widest;
    let longest = size[0].max(size[1]);
    let [a, b] = [[0.0, 0.0], [PALM_MM, 0.0]].map(|p| projection.to_photo(p));
    (margin_px > 0.05 * longest).then(|| Hand {
        at,
        towards_deg,
        reach: 0.85 * margin_px / longest,
        palm: (b[0] - a[0]).hypot(b[1] - a[1]) / longest,
        skin: skin(dark),
    })
}
