//! Rendered photos with resist-dyed pieces among plain ones, and how they are read.

use colour::{Lab, difference::ciede2000};
use scene::{Cloth, Difficulty, Dye, Piece, Resist, ResistDyed, Scene, Texture, render};

/// A photo of four resist-dyed and four plain pieces of many cloths.
pub fn scene(seed: u64, [width_px, height_px]: [u32; 2]) -> Scene {
    let cloths = [
        scene::wool(),
        scene::linen(),
        scene::cotton(),
        scene::silk(),
    ];
    let dyes = Dye::wide();
    let patterns = [Resist::Stripes, Resist::Rings, Resist::Spots, Resist::Folds];
    let coarse = Texture {
        cloth: Cloth::Weave,
        pitch_mm: 2.0,
        contrast: 0.35,
    };
    let textures = [Texture::default(), Texture::KNIT, coarse, Texture::FLAT];
    let mut plain = Vec::new();
    for i in 0..8u64 {
        let dye = &dyes[((seed * 5 + i * 7) % 12) as usize];
        let cloth = &cloths[((seed + i) % 4) as usize];
        let depth = [0.2, 0.45, 0.7, 1.0][((seed / 3 + i) % 4) as usize];
        plain.push((format!("p{i}"), dye.on(cloth, depth)));
    }
    let rows = Piece::rows(plain.iter().map(|(id, r)| (id.as_str(), r.clone())));
    let lay = |(i, piece): (u64, Piece)| {
        let piece = piece.with_texture(textures[((seed + i / 2) % 4) as usize]);
        if i % 2 == 1 {
            return piece;
        }
        let dye = &dyes[((seed * 5 + i * 7) % 12) as usize];
        let cloth = &cloths[((seed + i) % 4) as usize];
        piece.resisted(ResistDyed {
            pattern: patterns[((seed + i / 2) % 4) as usize],
            pale: dye.on(cloth, [0.0, 0.04, 0.1][(seed % 3) as usize]),
            deep: dye.on(cloth, [0.5, 0.8, 1.0][((seed / 3 + i) % 3) as usize]),
            deep_share: [0.35, 0.5, 0.65][((seed / 2 + i) % 3) as usize],
            border_mm: [1.0, 2.0, 3.0][((seed + i) % 3) as usize],
            pitch_mm: 13.0,
            seed: seed + i,
        })
    };
    let pieces = (0..).zip(rows).map(lay).collect();
    let levels = [Difficulty::Easy, Difficulty::Medium, Difficulty::Hard];
    Scene {
        width_px,
        height_px,
        ..Scene::wild(seed, levels[(seed % 3) as usize], pieces)
    }
}

/// How photos with resist-dyed pieces were read.
#[derive(Default)]
pub struct Tally {
    /// Photos that were refused.
    pub refused: usize,
    /// Resist-dyed pieces whose parts lie 8 or more apart (CIEDE2000).
    pub resisted: usize,
    /// How many of them were split.
    pub found: usize,
    /// Plain pieces that were split.
    pub false_splits: usize,
    /// Errors of pale parts, of deep parts and of plain pieces, CIEDE2000.
    pub pale: Vec<f64>,
    pub deep: Vec<f64>,
    pub plain: Vec<f64>,
    /// Errors of the share that is pale.
    pub share: Vec<f64>,
}

impl Tally {
    /// Renders and reads a scene; `says` prints what went wrong.
    pub fn add(&mut self, scene: &Scene, says: bool) {
        let rendered = render(scene);
        let request = photo::Request {
            corners: Some(rendered.truth.chart_corners),
            ..super::common::request(&rendered)
        };
        let Ok(reading) = photo::read(&rendered.jpeg, &request) else {
            self.refused += 1;
            return;
        };
        for truth in &rendered.truth.pieces {
            let r = reading.reading(&truth.id).expect("asked for");
            let Some(parts) = truth.parts else {
                self.false_splits += usize::from(r.split.is_some());
                if let (true, Some(split)) = (says, &r.split) {
                    println!("seed {} {}: false split {split:?}", scene.seed, truth.id);
                }
                let lab = r.lab.expect("it is read");
                self.plain.push(ciede2000(lab, Lab::from(truth.lab_d65_10)));
                continue;
            };
            let [pale, deep] = [parts.pale_lab, parts.deep_lab].map(Lab::from);
            if ciede2000(pale, deep) < 8.0 {
                continue;
            }
            self.resisted += 1;
            let Some(split) = &r.split else {
                if says {
                    println!("seed {} {}: not split, {parts:?}", scene.seed, truth.id);
                }
                continue;
            };
            self.found += 1;
            self.pale.push(ciede2000(split.pale.lab, pale));
            self.deep.push(ciede2000(split.deep.lab, deep));
            self.share
                .push((split.pale.share - (1.0 - parts.deep_share)).abs());
        }
    }
}
