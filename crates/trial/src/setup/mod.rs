//! What a set-up can prove: photos of the same pieces, laid anew between shots.
//!
//! The colours of the pieces don't change, so whatever differs from photo to
//! photo is the set-up's. What all pieces of a photo shift by is its *between*
//! scatter (light, exposure, the fit of the chart); what each piece shifts by on
//! its own is its *within* scatter (how it lies, texture, noise, the corner of
//! the light it got). A difference of pieces on one photo is free of the first.
//!
//! Scatter is told as the root of the mean squared CIEDE2000 between a reading
//! and the piece's long-run mean: the length of a vector with three parts. Along
//! one direction, such as lightness alone, it is on average 1 / sqrt(3) of that.

mod advice;
mod error;
mod provable;
mod shares;

pub use error::SetupError;
pub use provable::{Plan, Provable};
pub use shares::{Cause, Share};

use colour::{Lab, difference::ciede2000_metric};
use inference::{
    InferenceError,
    occasion::{Look, Occasions, Part},
};
use nalgebra::{Matrix3, SymmetricEigen, Vector3};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// Photos that a check needs at least.
pub const FEWEST_PHOTOS: usize = 3;
/// Pieces that a check needs at least, each on two photos or more.
pub const FEWEST_PIECES: usize = 2;
/// Arms of so many pieces stand in the table of what can be proved.
const TABLE: std::ops::RangeInclusive<usize> = 2..=12;
/// Level of every interval.
const LEVEL: f64 = 0.95;

/// One piece as one photo shows it.
#[derive(Debug, Clone, PartialEq)]
pub struct Shown {
    /// The piece's name; the same on every photo.
    pub piece: String,
    /// Its colour.
    pub lab: Lab,
    /// The part of the reading's covariance that texture and noise are held to
    /// explain, CIELAB units squared; none where it isn't told apart.
    pub texture: Option<[[f64; 3]; 3]>,
}

/// What a set-up scatters by, and what it can prove.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct SetupCheck {
    /// Photos that were compared.
    pub photos: usize,
    /// Pieces that were on two of them or more.
    pub pieces: usize,
    /// Readings of these pieces.
    pub readings: usize,
    /// Pieces left out because only one photo shows them.
    pub seen_once: Vec<String>,
    /// SD of a reading about what its photo shifts alike, CIEDE2000.
    pub within_sd_de00: f64,
    /// 95 % interval of it.
    pub within_interval: [f64; 2],
    /// SD of the same along the direction in which it is greatest, CIEDE2000.
    pub within_widest_sd_de00: f64,
    /// Degrees of freedom of each of its three parts.
    pub within_df: f64,
    /// SD of what a photo shifts alike for all pieces, CIEDE2000; 0 where it is
    /// no more than the scatter within explains.
    pub between_sd_de00: f64,
    /// 95 % interval of it.
    pub between_interval: [f64; 2],
    /// SD of the same along the direction in which it is greatest, CIEDE2000.
    pub between_widest_sd_de00: f64,
    /// Degrees of freedom of each of its three parts.
    pub between_df: f64,
    /// Pieces by which a photo's shift was judged, on average.
    pub pieces_per_photo: f64,
    /// Covariance within a photo, CIELAB units squared.
    pub within_cov: [[f64; 3]; 3],
    /// Covariance from photo to photo, CIELAB units squared.
    pub between_cov: [[f64; 3]; 3],
    /// What the scatter of a single reading is made of; adds up to 1.
    pub shares: Vec<Share>,
    /// What arms of 2 to 12 pieces prove.
    pub smallest_provable: Vec<Provable>,
    /// What it means and what to do next, in sentences.
    pub advice: Vec<String>,
}

/// Finds what a set-up scatters by.
///
/// `photos` hold the pieces each photo shows. The photos are of the same pieces
/// with nothing done to them, laid anew each time.
///
/// # Errors
/// Fewer than three photos, fewer than two pieces on several photos, one photo
/// given twice, a piece twice on a photo, a photo with none of the pieces, a value
/// that isn't finite: each with what to do.
pub fn check(photos: &[Vec<Shown>]) -> Result<SetupCheck, SetupError> {
    error::refuse_unsound(photos)?;
    let mut seen: BTreeMap<&str, Vec<(usize, &Shown)>> = BTreeMap::new();
    for (photo, shown) in photos.iter().enumerate() {
        for piece in shown {
            seen.entry(&piece.piece).or_default().push((photo, piece));
        }
    }
    let seen_once = seen
        .iter()
        .filter(|(_, looks)| looks.len() == 1)
        .map(|(name, _)| (*name).to_owned())
        .collect();
    seen.retain(|_, looks| looks.len() > 1);
    error::refuse_too_few(photos, &seen)?;
    let looks: Vec<Look> = seen
        .values()
        .enumerate()
        .flat_map(|(subject, looks)| {
            looks.iter().map(move |(photo, shown)| Look {
                occasion: *photo,
                subject,
                value: Vector3::from(shown.lab.to_array()),
            })
        })
        .collect();
    let found = Occasions::of(&looks).map_err(|error| match error {
        InferenceError::TooFew { .. } => SetupError::Apart,
        _ => SetupError::NotFinite,
    })?;
    let metric = mean_metric(&seen);
    let (within, between) = (found.within_part(&metric), found.between_part(&metric));
    let mut check = SetupCheck {
        photos: photos.len(),
        pieces: seen.len(),
        readings: looks.len(),
        seen_once,
        within_sd_de00: within.sd(),
        within_interval: ends(&within),
        within_widest_sd_de00: widest(&found.within(), &metric),
        within_df: found.within_df() as f64,
        between_sd_de00: between.sd(),
        between_interval: ends(&between),
        between_widest_sd_de00: widest(&found.between(), &metric),
        between_df: found.between_df() as f64,
        pieces_per_photo: found.copies(),
        within_cov: rows(&found.within()),
        between_cov: rows(&found.between()),
        shares: shares::shares(&seen, &metric, within.variance, between.variance),
        smallest_provable: Vec::new(),
        advice: Vec::new(),
    };
    check.smallest_provable = TABLE
        .map(|pieces| check.provable(&Plan::of(pieces)))
        .collect();
    check.advice = advice::sentences(&check);
    Ok(check)
}

/// The measure of small differences, averaged over the pieces' mean colours.
fn mean_metric(seen: &BTreeMap<&str, Vec<(usize, &Shown)>>) -> Matrix3<f64> {
    let sum: Matrix3<f64> = seen
        .values()
        .map(|looks| {
            let n = looks.len() as f64;
            let mean = looks.iter().fold([0.0; 3], |sum, (_, shown)| {
                let lab = shown.lab.to_array();
                [0, 1, 2].map(|k| sum[k] + lab[k] / n)
            });
            Matrix3::from(ciede2000_metric(Lab::from(mean)))
        })
        .sum();
    sum / seen.len() as f64
}

/// The SD along the direction in which a scatter is greatest by a measure.
fn widest(covariance: &Matrix3<f64>, metric: &Matrix3<f64>) -> f64 {
    let eigen = SymmetricEigen::new(*metric);
    let roots = eigen.eigenvalues.map(|v| v.max(0.0).sqrt());
    let root = Matrix3::from_diagonal(&roots) * eigen.eigenvectors.transpose();
    let inside = root * covariance * root.transpose();
    let variances = SymmetricEigen::new((inside + inside.transpose()) / 2.0).eigenvalues;
    variances.max().max(0.0).sqrt()
}

fn ends(part: &Part) -> [f64; 2] {
    let interval = part.interval(LEVEL);
    [interval.low, interval.high]
}

fn rows(m: &Matrix3<f64>) -> [[f64; 3]; 3] {
    [0, 1, 2].map(|i| [0, 1, 2].map(|j| m[(i, j)]))
}

#[cfg(test)]
mod tests;
