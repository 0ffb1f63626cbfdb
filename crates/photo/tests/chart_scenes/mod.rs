//! Photos with a chart as different as hands take them, and things that only
//! look like a chart.

mod decoys;
mod dice;
mod wild;

pub use decoys::decoys;
pub use wild::wild;

/// The worst corner's distance from the truth, in px and in patch pitches.
pub fn corner_error(corners: &[[f64; 2]; 4], truth: &[[f64; 2]; 4]) -> (f64, f64) {
    let distance = |a: [f64; 2], b: [f64; 2]| (a[0] - b[0]).hypot(a[1] - b[1]);
    let off = (0..4)
        .map(|k| distance(corners[k], truth[k]))
        .fold(0.0, f64::max);
    // Six columns and four rows; the outer patches end half a gap early.
    let pitch = (distance(truth[0], truth[1]) / 5.86).min(distance(truth[1], truth[2]) / 3.86);
    (off, off / pitch)
}
