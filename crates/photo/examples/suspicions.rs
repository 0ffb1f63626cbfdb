//! Prints how often rendered photos are called wet or locally tone-mapped, with
//! and without cause: `suspicions [PHOTOS] [FIRST_SEED]`.

use photo::{Area, FlagCode, PhotoReading, Request};
use scene::{Difficulty, Dye, LocalTone, Piece, Rendered, Scene, Texture, Wet, render};

fn pieces(seed: u64, wet: bool) -> Vec<Piece> {
    let dyes = Dye::wide();
    let shades: Vec<_> = (0..6u64)
        .map(|i| {
            let dye = &dyes[((seed * 5 + i * 7) % 12) as usize];
            (
                format!("p{i}"),
                dye.on(&scene::cotton(), 0.3 + 0.1 * i as f64),
            )
        })
        .collect();
    let rows = Piece::rows(shades.iter().map(|(id, r)| (id.as_str(), r.clone())));
    let knit = |(i, piece): (usize, Piece)| {
        let piece = if i % 2 == 0 {
            piece.with_texture(Texture::KNIT)
        } else {
            piece
        };
        if wet {
            piece.wetted(Wet {
                soaked: 0.8,
                sparkle_share: 0.03 + 0.03 * (seed % 4) as f64,
                strength: 0.5 + 0.1 * (seed % 5) as f64,
            })
        } else {
            piece
        }
    };
    rows.into_iter().enumerate().map(knit).collect()
}

fn read(rendered: &Rendered) -> Option<PhotoReading> {
    let areas = rendered.truth.pieces.iter().map(|piece| Area {
        id: piece.id.clone(),
        polygon: piece.polygon.clone(),
    });
    let request = Request {
        areas: areas.collect(),
        corners: Some(rendered.truth.chart_corners),
        ..Request::default()
    };
    photo::read(&rendered.jpeg, &request).ok()
}

fn main() {
    let mut arguments = std::env::args()
        .skip(1)
        .filter_map(|a| a.parse::<u64>().ok());
    let photos = arguments.next().unwrap_or(30);
    let first = arguments.next().unwrap_or(0);
    let levels = [Difficulty::Easy, Difficulty::Medium, Difficulty::Hard];
    for (name, wet, mapping) in [
        ("as they come", false, None),
        ("wet", true, None),
        ("tone-mapped by 0.15", false, Some(0.15)),
        ("tone-mapped by 0.3", false, Some(0.3)),
    ] {
        let (mut pieces_read, mut called_wet, mut read_photos, mut called_mapped) = (0, 0, 0, 0);
        for seed in first..first + photos {
            let mut scene = Scene {
                width_px: 1600,
                height_px: 1200,
                ..Scene::wild(seed, levels[(seed % 3) as usize], pieces(seed, wet))
            };
            scene.flaws.local_tone = mapping.map(|strength| LocalTone {
                strength,
                reach: 0.06 + 0.02 * (seed % 4) as f64,
            });
            let Some(reading) = read(&render(&scene)) else {
                continue;
            };
            read_photos += 1;
            let mapped = |f: &photo::Flag| f.code == FlagCode::LocalToneMapping;
            called_mapped += usize::from(reading.flags.iter().any(mapped));
            for piece in &reading.readings {
                pieces_read += 1;
                let wet = |f: &photo::Flag| f.code == FlagCode::WetLook;
                called_wet += usize::from(piece.flags.iter().any(wet));
            }
        }
        println!(
            "{name:<22} wet: {called_wet:>3} of {pieces_read} pieces; tone-mapped: {called_mapped:>3} of {read_photos} photos"
        );
    }
}
