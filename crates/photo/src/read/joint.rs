//! How sure the colours of one photo are, each alone and all together.

use serde::{Deserialize, Serialize};

use super::piece::Recorded;
use crate::{
    correct::kinship,
    matrix::{Matrix3, add, root, times, transposed},
    survey::Prepared,
};

/// The covariance of a reading, by cause; CIELAB squared.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize)]
pub struct Parts {
    /// Texture of the cloth and noise of the camera: each reading has its own.
    pub pixels: Matrix3,
    /// Tone and colour model: nearly shared by like colours in one photo.
    pub correction: Matrix3,
    /// The light field: shared the more, the nearer two pieces lie.
    pub light: Matrix3,
    /// What changes from photo to photo: shared wholly inside a photo.
    pub photo_to_photo: Matrix3,
}

impl Parts {
    /// All parts together.
    pub fn total(&self) -> Matrix3 {
        let mut sum = self.pixels;
        for part in [&self.correction, &self.light, &self.photo_to_photo] {
            add(&mut sum, part, 1.0);
        }
        sum
    }
}

/// Standard deviation of each of L*, a*, b* that no reading gets below.
const FLOOR: f64 = 0.04;

/// The parts of a reading.
pub(super) fn parts(r: &Recorded, prepared: &Prepared, photo_to_photo: &Matrix3) -> Parts {
    let correction = &prepared.correction;
    let mut pixels = r.pixel_cov;
    add(&mut pixels, &crate::matrix::ONE, FLOOR * FLOOR);
    let mut light = [[0.0; 3]; 3];
    let variance = correction.sight.light.variance(r.middle);
    add(&mut light, &crate::matrix::outer(r.by_light), variance);
    Parts {
        pixels,
        correction: correction.spread(r.recorded, r.scene, r.lab),
        light,
        photo_to_photo: *photo_to_photo,
    }
}

/// Covariance of the errors of two readings of one photo.
pub(super) fn shared(
    (a, parts_a): (&Recorded, &Parts),
    (b, parts_b): (&Recorded, &Parts),
    prepared: &Prepared,
) -> Matrix3 {
    let mut cov = between_roots(
        &parts_a.correction,
        &parts_b.correction,
        kinship(a.lab, b.lab),
    );
    let light = prepared
        .correction
        .sight
        .light
        .covariance(a.middle, b.middle);
    for (row, x) in cov.iter_mut().zip(a.by_light) {
        for (cell, y) in row.iter_mut().zip(b.by_light) {
            *cell += x * y * light;
        }
    }
    add(&mut cov, &parts_a.photo_to_photo, 1.0);
    cov
}

/// Covariance of two errors that are alike by `share` (-1 to 1), given each one's own.
pub(crate) fn between_roots(a: &Matrix3, b: &Matrix3, share: f64) -> Matrix3 {
    times(&root(a), &root(b)).map(|row| row.map(|v| share * v))
}

/// Covariance of the difference b - a of two uncertain colours, from each one's own
/// covariance and from that of a with b.
pub fn covariance_of_difference(a: &Matrix3, b: &Matrix3, shared: &Matrix3) -> Matrix3 {
    let mut cov = *a;
    add(&mut cov, b, 1.0);
    add(&mut cov, shared, -1.0);
    add(&mut cov, &transposed(shared), -1.0);
    cov
}
