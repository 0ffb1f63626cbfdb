//! Patches that don't look as the chart's should.

use super::colours::{Seen, dot, minus};
use super::homography::Homography;
use super::layout::Layout;
use super::placement::Sample;
use super::search::Level;

/// What the patches say together.
#[derive(Debug, PartialEq, Eq)]
pub(crate) enum Verdict {
    /// They are the chart's; these few, counted from 0 along the rows, are
    /// covered or shone on.
    Sound(Vec<usize>),
    /// These have colours that the chart hasn't there.
    OtherColours(Vec<usize>),
}

/// Two patches have changed places where less than this share of the misfit is
/// left once they are put back; on charts as they should be it only grows.
const SWAPPED: f64 = 0.75;
/// How far a patch must be off to be foreign, in usual misfits; patches too rich
/// for the file's colour space reach six of them.
const FOREIGN: f64 = 8.0;
/// And on the scale of even steps: cameras and lamps alone do less.
const LEAST_OFF: f64 = 0.12;
/// As far off as this, a patch without its own edges is covered.
const COVERED: f64 = 4.0;
/// A patch of this brightness, on the scale of even steps, may be burnt out.
const BURNT_OUT: f64 = 0.98;
/// The deviation within a patch, on the scale of even steps, that noise alone
/// doesn't make: part of it is covered.
const UNEVEN: f64 = 0.06;
/// Edges that a patch has at least, of four.
const OWN_SIDES: u8 = 3;

/// Looks at each patch of a grid that fits; `sides` says how many of its edges
/// lie on the grid.
pub(crate) fn judge(level: &Level, layout: &Layout, map: &Homography, sides: &[u8]) -> Verdict {
    let gain = f64::from(level.gain()).sqrt();
    let samples: Vec<Option<Sample>> = (0..layout.count())
        .map(|k| Sample::at(map, level, layout.place(k)))
        .collect();
    let seen: Vec<Seen> = samples
        .iter()
        .map(|sample| sample.map(|s| s.colour.map(|v| v * gain)))
        .collect();
    let Some((expected, usual)) = layout.axes().expected(&seen) else {
        return Verdict::Sound(Vec::new());
    };
    let (mut covered, mut other) = (Vec::new(), Vec::new());
    for (patch, colour) in seen.iter().enumerate() {
        let Some(colour) = colour else {
            covered.push(patch);
            continue;
        };
        let off = off(*colour, expected[patch]);
        let is_burnt_out = colour.iter().any(|v| *v > BURNT_OUT * gain);
        if is_burnt_out || off < LEAST_OFF || off < COVERED * usual {
            continue;
        }
        let deviation = samples[patch].map_or(0.0, |s| s.grain.sqrt() * gain);
        let is_patch = sides[patch] >= OWN_SIDES && deviation < UNEVEN;
        if is_patch && off > FOREIGN * usual && !is_veiled(*colour, expected[patch]) {
            other.push(patch);
        } else if !is_patch || off > FOREIGN * usual {
            covered.push(patch);
        }
    }
    if let Some(pair) = swapped(layout, &seen, &covered) {
        return Verdict::OtherColours(pair.to_vec());
    }
    if other.is_empty() {
        Verdict::Sound(covered)
    } else {
        Verdict::OtherColours(other)
    }
}

/// How far a colour is from the expected one. In the dark the scale of even steps
/// makes much of what cameras and colour spaces cut off, so it is flattened there.
fn off(seen: [f64; 3], expected: [f64; 3]) -> f64 {
    let flat = |v: f64| v.max(0.0).powi(2) / (v.max(0.0) + 0.2);
    let miss = minus(seen.map(flat), expected.map(flat));
    dot(miss, miss).sqrt()
}

/// Two patches that have changed places.
fn swapped(layout: &Layout, seen: &[Seen], covered: &[usize]) -> Option<[usize; 2]> {
    let colours: Vec<[f64; 3]> = seen.iter().flatten().copied().collect();
    if colours.len() < layout.count() {
        return None;
    }
    let (share, pair) = layout.axes().best_swap(&colours)?;
    let is_covered = pair.iter().any(|patch| covered.contains(patch));
    (share < SWAPPED && !is_covered).then_some(pair)
}

/// Whether a colour is the expected one under a shine or in a shadow: all its
/// channels have gained, or all have kept the same share of the light.
fn is_veiled(seen: [f64; 3], expected: [f64; 3]) -> bool {
    let gains = [0, 1, 2].map(|c| seen[c] * seen[c] - expected[c].max(0.0).powi(2));
    let shares = [0, 1, 2].map(|c| seen[c] / expected[c].max(0.02));
    let range = |values: [f64; 3]| {
        let low = values.into_iter().fold(f64::MAX, f64::min);
        let high = values.into_iter().fold(f64::MIN, f64::max);
        (low, high)
    };
    let ((least, most), (dim, bright)) = (range(gains), range(shares));
    let shines = least > 0.02 && least > 0.6 * most;
    let is_shaded = bright < 1.0 && dim > 0.75 * bright;
    shines || is_shaded
}
