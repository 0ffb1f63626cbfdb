//! Photos with a chart under any turn, up to 25 degrees of tilt, from 250 px in
//! 4000 to filling the photo; on busy tables, under lamps of all kinds, as dark as
//! 1.5 stops too little, with hands at the edge or a finger on the chart.

use super::dice::Dice;
use scene::{
    Background, Camera, Chart, Difficulty, Flaws, Frame, Gradient, Hand, Jpeg, Light, Piece,
    Reflectance, Scene, Texture, Viewpoint, WhiteBalance, skin,
};

/// Pitch of the charts drawn here, mm.
const PITCH_MM: f64 = 23.0;

/// A scene drawn from a seed, with its longer side at most `longest_px`.
pub fn wild(seed: u64, longest_px: u32) -> Scene {
    let mut dice = Dice::new(seed);
    let sizes = [
        (4000, 3000),
        (3000, 4000),
        (2000, 1500),
        (1200, 900),
        (640, 480),
        (300, 400),
        (1500, 1500),
    ];
    let (width, height) = dice.pick(&sizes.map(|(w, h): (u32, u32)| {
        let shrink = f64::from(longest_px) / f64::from(w.max(h));
        [w, h]
            .map(|side| (f64::from(side) * shrink.min(1.0)) as u32)
            .into()
    }));
    let gap = dice.between(0.04, 0.25);
    let chart = Chart {
        middle_mm: [dice.between(-60.0, 60.0), dice.between(-60.0, 60.0)],
        turn_deg: dice.between(0.0, 360.0),
        patch_mm: PITCH_MM * (1.0 - gap),
        gap_mm: PITCH_MM * gap,
        margin_mm: dice.between(1.5, 14.0),
        frame: dice.pick(&[Frame::Dark, Frame::Dark, Frame::Light]),
    };
    // Beside others the chart would be too small in a photo this small.
    let is_small = width.max(height) < 1000;
    let mut pieces = if is_small {
        Vec::new()
    } else {
        company(&mut dice, chart.middle_mm)
    };
    if !is_small && dice.below(8) == 0 {
        pieces.push(finger(&mut dice, &chart));
    }
    let fill = fill(&mut dice, width.max(height), pieces.is_empty());
    let aside = if fill < 0.5 { 0.2 } else { 0.0 };
    let (light, white_balance) = light(&mut dice);
    let plain = |surface| Background::Plain(Box::new(surface));
    Scene {
        width_px: width,
        height_px: height,
        pieces,
        chart: Some(chart),
        background: {
            let dyed = dice.colour();
            dice.pick(&[
                Background::Paper,
                Background::Wood,
                Background::Stripes,
                Background::DarkWood,
                Background::Checks,
                Background::Knit(Box::new(dyed.clone())),
                plain(Reflectance::flat(0.04)),
                plain(Reflectance::flat(0.85)),
                plain(dyed),
            ])
        },
        light,
        gradient: Gradient {
            share: dice.between(0.0, 0.5),
            towards_deg: dice.between(0.0, 360.0),
        },
        viewpoint: Viewpoint {
            tilt_deg: dice.between(0.0, 25.0),
            tilt_towards_deg: dice.between(0.0, 360.0),
            turn_deg: dice.between(0.0, 360.0),
            fill,
            focal: dice.between(0.72, 1.3),
            shift: [dice.between(-aside, aside), dice.between(-aside, aside)],
        },
        camera: match dice.below(2) {
            0 => dice.pick(&Camera::all()),
            _ => Camera::drawn_for(seed, dice.pick(&[Difficulty::Medium, Difficulty::Hard])),
        },
        white_balance,
        exposure_stops: dice.between(-1.5, 0.2),
        jpeg: Jpeg {
            quality: 70 + dice.below(27) as u8,
            ..Jpeg::default()
        },
        flaws: Flaws {
            blur_px: dice.between(-3.0, 1.8).max(0.0),
            hands: hands(&mut dice, fill),
            ..Flaws::default()
        },
        seed,
        ..Scene::default()
    }
}

/// A light, and a white balance that knows it more or less; now and then the
/// light of a lamp is taken for daylight.
fn light(dice: &mut Dice) -> (Light, WhiteBalance) {
    let kelvin = dice.between(2600.0, 6500.0);
    let light = dice.pick(&[
        Light::D65,
        Light::D50,
        Light::Daylight {
            kelvin: 1.4 * kelvin.max(3000.0),
        },
        Light::A,
        Light::Fl2,
        Light::Led,
        Light::ThreeBand,
        Light::RgbDiodes,
        Light::WhiteDiode { kelvin },
        Light::mixed(Light::D65, Light::A, 0.5),
    ]);
    let is_fooled = matches!(light, Light::A) && dice.below(2) == 0;
    let balance = if is_fooled {
        WhiteBalance {
            red: dice.between(1.3, 1.7),
            blue: dice.between(0.3, 0.5),
        }
    } else {
        WhiteBalance {
            red: dice.between(0.7, 1.45),
            blue: dice.between(0.55, 1.3),
        }
    };
    (light, balance)
}

/// Hands at the edge, where the chart leaves room for them.
fn hands(dice: &mut Dice, fill: f64) -> Vec<Hand> {
    if fill > 0.4 || dice.below(3) > 0 {
        return Vec::new();
    }
    let along = dice.between(0.2, 0.8);
    let (at, towards_deg) = dice.pick(&[
        ([0.0, along], 0.0),
        ([along, 0.0], 90.0),
        ([1.0, along], 180.0),
        ([along, 1.0], 270.0),
    ]);
    vec![Hand {
        at,
        towards_deg,
        reach: dice.between(0.03, 0.07),
        palm: dice.between(0.05, 0.2),
        skin: skin(dice.between(0.0, 0.9)),
    }]
}

/// A finger on the edge of the chart: on one patch, or on parts of two.
fn finger(dice: &mut Dice, chart: &Chart) -> Piece {
    let across = (dice.between(0.0, 5.0) - 2.5) * PITCH_MM;
    let (half_mm, tip_mm) = (dice.between(5.0, 8.0), 46.0 - dice.between(12.0, 22.0));
    let sign = dice.pick(&[-1.0, 1.0]);
    let (sin, cos) = chart.turn_deg.to_radians().sin_cos();
    let tip = (0..=8).map(|k| {
        let (s, c) = (std::f64::consts::PI * f64::from(k) / 8.0).sin_cos();
        [across + half_mm * c, tip_mm + half_mm * (1.0 - s)]
    });
    let mut outline: Vec<[f64; 2]> = tip
        .chain([[across - half_mm, 110.0], [across + half_mm, 110.0]])
        .map(|[x, y]| [x, sign * y])
        .map(|[x, y]| [x * cos - y * sin, x * sin + y * cos])
        .map(|[x, y]| [chart.middle_mm[0] + x, chart.middle_mm[1] + y])
        .collect();
    if sign < 0.0 {
        outline.reverse();
    }
    let skin = skin(dice.between(0.0, 0.9));
    let mut finger = Piece::square("finger", skin, [0.0, 0.0], 1.0).with_texture(Texture::FLAT);
    finger.outline_mm = outline;
    finger
}

/// Share of the photo that chart and pieces fill: half of the photos hold a chart
/// near the smallest of use.
fn fill(dice: &mut Dice, longest_px: u32, is_alone: bool) -> f64 {
    let least_px = if longest_px < 1000 { 150.0 } else { 250.0 };
    let least = (least_px / f64::from(longest_px)).min(0.8) * if is_alone { 1.1 } else { 3.2 };
    let fill = match dice.below(2) {
        0 => dice.between(least.min(0.9), 0.95),
        _ => least * dice.between(1.0, 1.6),
    };
    fill.min(0.95)
}

/// What lies about a chart.
fn company(dice: &mut Dice, middle: [f64; 2]) -> Vec<Piece> {
    let beside =
        |angle: f64, far: f64| [middle[0] + far * angle.cos(), middle[1] + far * angle.sin()];
    match dice.below(5) {
        0 | 1 => (0..2 + dice.below(7))
            .map(|k| {
                let at = beside(
                    dice.between(0.0, std::f64::consts::TAU),
                    dice.between(115.0, 170.0),
                );
                let side = dice.between(12.0, 60.0);
                Piece::square(&format!("piece {k}"), dice.colour(), at, side)
                    .turned(dice.between(0.0, 90.0))
                    .with_texture(dice.pick(&[Texture::KNIT, Texture::FLAT, Texture::default()]))
            })
            .collect(),
        2 => tiles(dice, middle),
        _ => Vec::new(),
    }
}

/// Tiles all round, none on the chart.
fn tiles(dice: &mut Dice, middle: [f64; 2]) -> Vec<Piece> {
    let side = dice.between(15.0, 60.0);
    let base = dice.colour();
    let count = (200.0 / side) as i32;
    let mut pieces = Vec::new();
    for (x, y) in (-count..=count).flat_map(|y| (-count..=count).map(move |x| (x, y))) {
        let offset = [x, y].map(|n| 1.06 * side * f64::from(n));
        if offset[0].hypot(offset[1]) > 97.0 + 0.72 * side {
            let at = [middle[0] + offset[0], middle[1] + offset[1]];
            let shade = base.scaled(dice.between(0.9, 1.0));
            let tile = Piece::square(&format!("tile {x} {y}"), shade, at, side);
            pieces.push(tile.with_texture(Texture::FLAT));
        }
    }
    pieces
}
