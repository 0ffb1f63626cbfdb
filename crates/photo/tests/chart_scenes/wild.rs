//! Photos with a chart under any turn, up to 25 degrees of tilt, from 250 px in
//! 4000 to filling the photo.

use super::dice::Dice;
use scene::{
    Background, Camera, Chart, Flaws, Frame, Gradient, Jpeg, Light, Piece, Reflectance, Scene,
    Texture, Viewpoint, WhiteBalance,
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
    let pieces = company(&mut dice, chart.middle_mm);
    let fill = fill(&mut dice, width.max(height), pieces.is_empty());
    let aside = if fill < 0.5 { 0.2 } else { 0.0 };
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
                plain(Reflectance::flat(0.04)),
                plain(Reflectance::flat(0.85)),
                plain(dyed),
            ])
        },
        light: dice.pick(&[Light::D65, Light::D50, Light::A, Light::Fl2, Light::Led]),
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
        camera: dice.pick(&Camera::all()),
        white_balance: WhiteBalance {
            red: dice.between(0.7, 1.45),
            blue: dice.between(0.55, 1.3),
        },
        exposure_stops: dice.between(-1.5, 0.2),
        jpeg: Jpeg {
            quality: 70 + dice.below(27) as u8,
            ..Jpeg::default()
        },
        flaws: Flaws {
            blur_px: dice.between(-3.0, 1.8).max(0.0),
            ..Flaws::default()
        },
        seed,
        ..Scene::default()
    }
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
