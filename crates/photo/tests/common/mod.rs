//! Rendered photos of dyed pieces, and how far their readings are off.

use colour::{Lab, difference::ciede2000};
use photo::{Area, PhotoReading, Request};
use scene::{Dye, Piece, Rendered, Scene, cotton, linen, render, wool};

/// A photo drawn from a seed: eight pieces of four dyes, two depths each.
pub fn photo(seed: u64) -> Rendered {
    let cloths = [wool(), linen(), cotton()];
    let mut pieces = Vec::new();
    for (i, dye) in Dye::palette().iter().enumerate() {
        let depth = 0.25 + 0.2 * ((seed as usize + i) % 4) as f64;
        let cloth = &cloths[(seed as usize + i) % 3];
        pieces.push((format!("{i}a"), dye.on(cloth, depth)));
        pieces.push((format!("{i}b"), dye.on(cloth, depth * 0.85)));
    }
    let rows = Piece::rows(pieces.iter().map(|(id, r)| (id.as_str(), r.clone())));
    render(&Scene::varied(seed, rows))
}

/// Asks for every piece of a rendered photo.
pub fn request(rendered: &Rendered) -> Request {
    Request {
        areas: rendered
            .truth
            .pieces
            .iter()
            .map(|piece| Area {
                id: piece.id.clone(),
                polygon: piece.polygon.clone(),
            })
            .collect(),
        ..Request::default()
    }
}

/// Errors of a reading against the truth, CIEDE2000.
pub struct Errors {
    /// Of each piece's colour.
    pub colour: Vec<f64>,
    /// Of each pair's difference; the first are the pairs of one dye.
    pub difference: Vec<f64>,
    /// The same for the two depths of one dye alone.
    pub near_difference: Vec<f64>,
    /// How many pairs' intervals hold the truth.
    pub held: usize,
    /// How many of the near pairs' do.
    pub near_held: usize,
    /// How many colours lie within their own 95 % region.
    pub colour_held: usize,
}

/// Compares a reading with what was rendered.
pub fn errors(rendered: &Rendered, reading: &PhotoReading) -> Errors {
    let truth = |id: &str| -> Lab {
        let piece = rendered.truth.pieces.iter().find(|p| p.id == id);
        piece
            .map(|p| Lab::from(p.lab_d65_10))
            .expect("a rendered piece")
    };
    let mut errors = Errors {
        colour: Vec::new(),
        difference: Vec::new(),
        near_difference: Vec::new(),
        held: 0,
        near_held: 0,
        colour_held: 0,
    };
    for r in &reading.readings {
        let lab = r
            .lab
            .unwrap_or_else(|| panic!("{} not read: {:?}", r.id, r.flags));
        errors.colour.push(ciede2000(lab, truth(&r.id)));
        errors.colour_held += usize::from(holds(lab, &r.cov, truth(&r.id)));
    }
    for d in &reading.differences {
        let true_de = ciede2000(truth(&d.a), truth(&d.b));
        let miss = (d.de00 - true_de).abs();
        errors.difference.push(miss);
        let held = usize::from((d.low..=d.high).contains(&true_de));
        errors.held += held;
        if d.a[..1] == d.b[..1] {
            errors.near_difference.push(miss);
            errors.near_held += held;
        }
    }
    errors
}

/// Whether the truth lies in the 95 % region of a reading.
///
/// # Source
/// Published: the quantile 7.815 of chi-squared with three degrees of freedom.
fn holds(lab: Lab, cov: &[[f64; 3]; 3], truth: Lab) -> bool {
    let d = nalgebra::Vector3::new(truth.l - lab.l, truth.a - lab.a, truth.b - lab.b);
    let cov = nalgebra::Matrix3::from_fn(|r, c| cov[r][c]);
    let inverse = cov.try_inverse().expect("a covariance has an inverse");
    d.dot(&(inverse * d)) < 7.815
}

/// The middle one of some figures.
pub fn median(figures: &[f64]) -> f64 {
    let mut sorted = figures.to_vec();
    sorted.sort_by(f64::total_cmp);
    sorted.get(sorted.len() / 2).copied().unwrap_or(f64::NAN)
}
