//! Photos that are not what they seem: wet cloth, and light that the phone made up.
//!
//! Source: rendered photos, which share no code with `photo`; rates over many:
//! `cargo run --release -p photo --example suspicions`.

#[allow(dead_code, reason = "each test file uses its share")]
mod common;

use common::request;
use photo::{FlagCode, PhotoReading};
use scene::{Background, Dye, LocalTone, Piece, Scene, Texture, Wet, render};

fn pieces() -> Vec<Piece> {
    let shades =
        [Dye::madder(), Dye::indigo(), Dye::weld()].map(|dye| dye.on(&scene::cotton(), 0.5));
    let ids = ["red", "blue", "yellow"];
    let rows = Piece::rows(ids.into_iter().zip(shades));
    let knit = |piece: Piece| piece.with_texture(Texture::KNIT);
    rows.into_iter().map(knit).collect()
}

fn read(scene: &Scene) -> PhotoReading {
    let rendered = render(scene);
    photo::read(&rendered.jpeg, &request(&rendered)).expect("the photo is read")
}

fn bench(pieces: Vec<Piece>) -> Scene {
    Scene {
        width_px: 1600,
        height_px: 1200,
        pieces,
        background: Background::Paper,
        ..Scene::default()
    }
}

fn is_called_wet(reading: &PhotoReading) -> Vec<bool> {
    let wet = |f: &photo::Flag| f.code == FlagCode::WetLook;
    reading
        .readings
        .iter()
        .map(|r| r.flags.iter().any(wet))
        .collect()
}

fn is_called_mapped(reading: &PhotoReading) -> bool {
    reading
        .flags
        .iter()
        .any(|f| f.code == FlagCode::LocalToneMapping)
}

#[test]
fn dry_cloth_in_plain_light_is_not_suspected() {
    let reading = read(&bench(pieces()));
    assert_eq!(is_called_wet(&reading), [false; 3]);
    assert!(!is_called_mapped(&reading));
}

#[test]
fn wet_cloth_is_told_by_its_sparks() {
    let soak = |piece: Piece| {
        piece.wetted(Wet {
            soaked: 0.8,
            sparkle_share: 0.08,
            strength: 0.7,
        })
    };
    let reading = read(&bench(pieces().into_iter().map(soak).collect()));
    let called = is_called_wet(&reading);
    println!("called wet: {called:?}");
    // A pale yellow knit shows sparks least.
    assert_eq!(called[..2], [true; 2]);
}

#[test]
fn light_that_the_phone_made_up_is_told_by_the_ground() {
    let mut scene = bench(pieces());
    scene.flaws.local_tone = Some(LocalTone {
        strength: 0.25,
        reach: 0.08,
    });
    assert!(is_called_mapped(&read(&scene)));
}
