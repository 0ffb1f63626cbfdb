//! Photos drawn from a seed that the examples read: dyed pieces, what is asked
//! of them and what is true.

use colour::Lab;
use photo::{Area, Request};
use scene::{Difficulty, Dye, Piece, Rendered, Scene};

/// Names of the difficulties, in the order of [`DIFFICULTIES`].
pub const NAMES: [&str; 3] = ["easy", "medium", "hard"];

/// The difficulties from easy to hard.
pub const DIFFICULTIES: [Difficulty; 3] = [Difficulty::Easy, Difficulty::Medium, Difficulty::Hard];

/// Four dyes of the palette on four cloths, each at two depths not far apart: `0a`
/// and `0b` are those of the first, the deeper one before.
fn pieces(seed: u64) -> Vec<Piece> {
    let cloths = [
        scene::wool(),
        scene::linen(),
        scene::cotton(),
        scene::silk(),
    ];
    let dyes = Dye::wide();
    let mut all = Vec::new();
    for i in 0..4u64 {
        let dye = &dyes[((seed * 5 + i * 7) % 12) as usize];
        let cloth = &cloths[((seed + i) % 4) as usize];
        let depth = [0.12, 0.3, 0.6, 1.0][((seed / 3 + i) % 4) as usize];
        let faded = depth * [0.92, 0.8, 0.65][((seed + 2 * i) % 3) as usize];
        all.push((format!("{i}a"), dye.on(cloth, depth)));
        all.push((format!("{i}b"), dye.on(cloth, faded)));
    }
    Piece::rows(all.iter().map(|(id, r)| (id.as_str(), r.clone())))
}

/// Two scenes of the same pieces by the same camera, laid anew in other light.
///
/// The difficulty is that of the seed's remainder by 3.
pub fn pair(seed: u64, width_px: u32, height_px: u32) -> [Scene; 2] {
    let one = Scene {
        width_px,
        height_px,
        ..Scene::wild(seed, DIFFICULTIES[(seed % 3) as usize], pieces(seed))
    };
    let other = one.relaid(seed + 1000);
    [one, other]
}

/// Asks for every piece of a rendered photo, its chart's corners given.
pub fn request(rendered: &Rendered) -> Request {
    let areas = rendered.truth.pieces.iter().map(|piece| Area {
        id: piece.id.clone(),
        polygon: piece.polygon.clone(),
    });
    Request {
        areas: areas.collect(),
        corners: Some(rendered.truth.chart_corners),
        ..Request::default()
    }
}

/// The true colour of a piece, D65/10.
pub fn truth(rendered: &Rendered, id: &str) -> Lab {
    let piece = rendered.truth.pieces.iter().find(|p| p.id == id);
    Lab::from(
        piece
            .expect("every piece that was read was rendered")
            .lab_d65_10,
    )
}
