//! Subjects and occasions as two additive parts, by least squares.

use super::Look;
use crate::InferenceError;
use nalgebra::{DMatrix, Matrix3, SymmetricEigen, Vector3};
use std::collections::BTreeMap;

/// Below this share of the greatest, a direction carries no occasion: it only
/// moves all of them against all subjects.
const NOTHING: f64 = 1e-9;

/// Sums of squares with their degrees of freedom.
pub(super) struct Fit {
    /// What neither subjects nor occasions explain.
    pub rest: Matrix3<f64>,
    pub rest_df: usize,
    /// What occasions explain beyond subjects.
    pub occasions: Matrix3<f64>,
    pub occasions_df: usize,
    /// How many times an occasion's covariance is in `occasions` on average.
    pub copies: f64,
}

impl Fit {
    pub fn of(looks: &[Look]) -> Result<Self, InferenceError> {
        if looks
            .iter()
            .any(|look| !look.value.iter().all(|v| v.is_finite()))
        {
            return Err(InferenceError::NotFinite);
        }
        let looks = centred(looks);
        let subjects = numbered(looks.iter().map(|look| look.subject));
        let occasions = numbered(looks.iter().map(|look| look.occasion));
        for given in [subjects.len(), occasions.len()] {
            if given < 2 {
                return Err(InferenceError::TooFew { given, least: 2 });
            }
        }
        let mut seen: BTreeMap<usize, Vec<usize>> = BTreeMap::new();
        let k = occasions.len();
        // Normal equations of occasions once subjects have taken their share.
        let mut cross = DMatrix::<f64>::zeros(k, k);
        let mut shift = DMatrix::<f64>::zeros(k, 3);
        for look in &looks {
            let at = occasions[&look.occasion];
            seen.entry(look.subject).or_default().push(at);
            cross[(at, at)] += 1.0;
            for (part, value) in look.value.iter().enumerate() {
                shift[(at, part)] += value;
            }
        }
        for places in seen.values() {
            for &a in places {
                for &b in places {
                    cross[(a, b)] -= 1.0 / places.len() as f64;
                }
            }
        }
        let (occasions_square, occasions_df) = explained(cross, &shift);
        let total: Matrix3<f64> = looks
            .iter()
            .map(|look| look.value * look.value.transpose())
            .sum();
        let rest_df = (looks.len() - subjects.len()).saturating_sub(occasions_df);
        if occasions_df == 0 || rest_df == 0 {
            return Err(InferenceError::TooFew { given: 1, least: 2 });
        }
        Ok(Self {
            rest: total - occasions_square,
            rest_df,
            occasions: occasions_square,
            occasions_df,
            copies: (looks.len() - subjects.len()) as f64,
        })
    }
}

/// Looks less their subject's mean; subjects seen once left out.
fn centred(looks: &[Look]) -> Vec<Look> {
    let mut sums: BTreeMap<usize, (Vector3<f64>, f64)> = BTreeMap::new();
    for look in looks {
        let (sum, count) = sums.entry(look.subject).or_default();
        *sum += look.value;
        *count += 1.0;
    }
    looks
        .iter()
        .filter(|look| sums[&look.subject].1 > 1.0)
        .map(|look| {
            let (sum, count) = sums[&look.subject];
            Look {
                value: look.value - sum / count,
                ..*look
            }
        })
        .collect()
}

/// Numbers from 0 for whatever numbers there are.
fn numbered(of: impl Iterator<Item = usize>) -> BTreeMap<usize, usize> {
    let mut places: BTreeMap<usize, usize> = of.map(|name| (name, 0)).collect();
    for (i, place) in places.values_mut().enumerate() {
        *place = i;
    }
    places
}

/// The sum of squares that the equations explain, and their rank.
fn explained(cross: DMatrix<f64>, shift: &DMatrix<f64>) -> (Matrix3<f64>, usize) {
    let eigen = SymmetricEigen::new(cross);
    let least = NOTHING * eigen.eigenvalues.max();
    let mut square = Matrix3::zeros();
    let mut rank = 0;
    for (value, vector) in eigen
        .eigenvalues
        .iter()
        .zip(eigen.eigenvectors.column_iter())
    {
        if *value > least {
            rank += 1;
            let along = shift.tr_mul(&vector);
            let along = Vector3::new(along[0], along[1], along[2]);
            square += along * along.transpose() / *value;
        }
    }
    (square, rank)
}
