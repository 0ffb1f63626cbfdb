//! Writes a few rendered photographs into a folder, to be looked at.
//!
//! `cargo run -p scene --example contact_sheet -- FOLDER`

use scene::{Background, Camera, Dye, Piece, Scene, Texture, cotton, linen, render, wool};
use std::{error::Error, fs, path::PathBuf, time::Instant};

fn main() -> Result<(), Box<dyn Error>> {
    let folder: PathBuf = std::env::args()
        .nth(1)
        .ok_or("Name a folder to write the photographs into.")?
        .into();
    fs::create_dir_all(&folder)?;
    let calm = Scene {
        pieces: pieces(),
        ..Scene::default()
    };
    let mut scenes = vec![("calm".to_owned(), calm.clone())];
    for (name, background) in [("wood", Background::Wood), ("stripes", Background::Stripes)] {
        let scene = Scene {
            background,
            camera: Camera::phone(),
            ..calm.clone()
        };
        scenes.push((name.to_owned(), scene));
    }
    scenes.extend((1..=6).map(|seed| (format!("varied-{seed}"), Scene::varied(seed, pieces()))));
    for (name, scene) in scenes {
        let started = Instant::now();
        let rendered = render(&scene);
        let path = folder.join(format!("{name}.jpg"));
        fs::write(&path, &rendered.jpeg)?;
        let taken = started.elapsed().as_secs_f64();
        println!("{} {taken:.2} s {:?}", path.display(), scene.light);
    }
    Ok(())
}

/// Four dyes, each new and faded, on three cloths.
fn pieces() -> Vec<Piece> {
    let cloths = [wool(), linen(), cotton(), wool()];
    let mut shades = Vec::new();
    for (dye, cloth) in Dye::palette().iter().zip(&cloths) {
        for depth in [1.0, 0.7] {
            shades.push((dye.name.clone(), dye.on(cloth, depth)));
        }
    }
    let mut pieces = Piece::rows(shades.iter().map(|(id, r)| (id.as_str(), r.clone())));
    for piece in pieces.iter_mut().step_by(3) {
        piece.texture = Texture::KNIT;
    }
    pieces
}
