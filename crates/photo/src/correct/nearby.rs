//! What the model misses near a colour, as patches of like colour tell.

use colour::{Lab, difference};
use nalgebra::DMatrix;

use crate::bell::bell;

/// How far the misses of two colours are alike, CIELAB.
const REACH: f64 = 25.0;
/// Variance of what like colours are missed by alike, as a multiple of what each is
/// missed by for itself.
const ALIKE: f64 = 0.4;
/// A patch counts as missed by no more than this, CIELAB: one that is far off is faded,
/// dirty or cut off by the camera, which says nothing about other colours.
const MOST: f64 = 2.0;

/// A smooth field over colours that brings what the model foretells nearer to the truth.
///
/// A few terms don't follow a camera and a lamp everywhere: reds, say, are missed alike,
/// the patches' and the cloth's. The field is a Gaussian process through what left-out
/// patches are missed by. How strong it is was chosen by the cloth of rendered photos;
/// patches lie too far from each other to tell (left out, they are missed about as much
/// with it as without).
///
/// # Source
/// Rasmussen and Williams, Gaussian Processes for Machine Learning (2006), 2.2 and 5.4.2.
#[derive(Debug, Clone, Default)]
pub(super) struct Nearby {
    places: Vec<Lab>,
    pulls: Vec<[f64; 3]>,
}

impl Nearby {
    /// From where the patches are foretold and what each was missed by when it was left
    /// out (foretold minus true, CIELAB). Beside it what each is missed by when the
    /// others' field is added.
    pub fn new(places: Vec<Lab>, missed: &[[f64; 3]]) -> Option<(Self, Vec<[f64; 3]>)> {
        let n = places.len();
        let held: Vec<[f64; 3]> = missed.iter().map(|miss| hold(*miss)).collect();
        let covariance = DMatrix::from_fn(n, n, |r, c| {
            ALIKE * alike(places[r], places[c]) + f64::from(u8::from(r == c))
        });
        let inverse = covariance.cholesky()?.inverse();
        let solved = &inverse * DMatrix::from_fn(n, 3, |r, k| held[r][k]);
        let pulls = (0..n)
            .map(|i| [0, 1, 2].map(|k| -ALIKE * solved[(i, k)]))
            .collect();
        let left = (0..n)
            .map(|i| {
                let by_others = |k: usize| held[i][k] - solved[(i, k)] / inverse[(i, i)];
                [0, 1, 2].map(|k| missed[i][k] - by_others(k))
            })
            .collect();
        Some((Self { places, pulls }, left))
    }

    /// A foretold colour brought nearer to the truth.
    pub fn corrected(&self, lab: Lab) -> Lab {
        let mut sum = lab.to_array();
        for (place, pull) in self.places.iter().zip(&self.pulls) {
            let near = alike(*place, lab);
            for (value, pull) in sum.iter_mut().zip(pull) {
                *value += near * pull;
            }
        }
        Lab::from(sum)
    }
}

/// A miss no longer than [`MOST`].
fn hold(miss: [f64; 3]) -> [f64; 3] {
    let length = miss.iter().map(|v| v * v).sum::<f64>().sqrt();
    let share = if length > MOST { MOST / length } else { 1.0 };
    miss.map(|v| share * v)
}

/// How alike the misses of two colours are, 0 to 1.
fn alike(a: Lab, b: Lab) -> f64 {
    bell(difference::cie76(a, b) / REACH)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn places() -> Vec<Lab> {
        (0..24)
            .map(|i| {
                let turn = f64::from(i) * 0.9;
                Lab::new(
                    30.0 + 2.0 * f64::from(i),
                    35.0 * turn.cos(),
                    35.0 * turn.sin(),
                )
            })
            .collect()
    }

    #[test]
    fn colours_are_pulled_the_way_that_patches_near_them_were_missed() {
        let places = places();
        let missed: Vec<[f64; 3]> = places
            .iter()
            .map(|p| [0.0, if p.a > 0.0 { 2.0 } else { 0.0 }, 0.0])
            .collect();
        let (nearby, _) = Nearby::new(places, &missed).unwrap();
        let red = Lab::new(50.0, 35.0, 0.0);
        let pulled = nearby.corrected(red);
        assert!(
            pulled.a < red.a - 0.5 && pulled.a > red.a - 2.0,
            "{pulled:?}"
        );
        let far = Lab::new(50.0, 0.0, -120.0);
        assert!((nearby.corrected(far).a - far.a).abs() < 0.01);
    }

    /// Leaving out by the closed form, against the long way.
    #[test]
    fn what_the_others_leave_is_as_without_the_patch() {
        let places = places();
        let missed: Vec<[f64; 3]> = (0..24)
            .map(|i| [0.3, f64::from(i % 5) - 2.0, f64::from(i % 3)])
            .collect();
        let (_, left) = Nearby::new(places.clone(), &missed).unwrap();
        for i in [2, 11, 23] {
            let (mut others, mut of_others) = (places.clone(), missed.clone());
            others.remove(i);
            of_others.remove(i);
            let (field, _) = Nearby::new(others, &of_others).unwrap();
            let moved = field.corrected(places[i]);
            let place = places[i].to_array();
            for k in 0..3 {
                let slow = missed[i][k] + moved.to_array()[k] - place[k];
                assert!((left[i][k] - slow).abs() < 1e-9, "{i} {k}");
            }
        }
    }

    #[test]
    fn one_patch_far_off_pulls_no_more_than_another() {
        let far = hold([30.0, -40.0, 0.0]);
        assert!((far[0] - 1.2).abs() < 1e-12 && (far[1] + 1.6).abs() < 1e-12);
        assert_eq!(hold([1.0, -1.5, 0.5]), [1.0, -1.5, 0.5]);
        assert_eq!(hold([0.0; 3]), [0.0; 3]);
    }
}
