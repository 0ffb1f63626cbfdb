//! Arms and loads as additive parts, by least squares.

use super::Layout;
use crate::InferenceError;
use crate::text;
use nalgebra::{DMatrix, DVector};
use std::collections::BTreeMap;

/// Arms and loads that are fitted together at most.
const MOST_COLUMNS: usize = 400;
/// Part of the greatest eigenvalue below which one counts as 0.
const NOTHING: f64 = 1e-9;

/// What is worked out once of a least-squares fit to some pieces.
pub(super) struct Fit {
    /// Each piece that is fitted.
    pieces: Vec<usize>,
    /// Columns in which each of them stands, `per_piece` for each: its arm, then its loads.
    columns: Vec<usize>,
    per_piece: usize,
    /// Column of each arm that is fitted.
    arms: BTreeMap<usize, usize>,
    /// The inverse of the normal equations, pseudo where they leave something open.
    inverse: DMatrix<f64>,
    /// What the normal equations determine: projects onto it.
    determined: DMatrix<f64>,
    /// Degrees of freedom of the rest, 0 if there is none.
    pub df: usize,
}

/// A difference of two arms as a weighted sum.
pub(super) struct Weights {
    /// Weight of each column's sum.
    of_sums: Vec<f64>,
    /// Its variance, in variances of a piece.
    pub share: f64,
}

/// What a fit leaves of some values.
pub(super) struct Rest {
    sums: Vec<f64>,
    /// Sum of squares.
    pub squares: f64,
}

impl Fit {
    /// Fits those arms, and the loads of those kinds.
    pub(super) fn of(
        layout: &Layout,
        arms: &[usize],
        kinds: &[usize],
    ) -> Result<Self, InferenceError> {
        let arms: BTreeMap<usize, usize> = arms
            .iter()
            .enumerate()
            .map(|(column, arm)| (*arm, column))
            .collect();
        let mut loads = BTreeMap::new();
        let (mut pieces, mut columns) = (Vec::new(), Vec::new());
        for (at, piece) in layout.pieces.iter().enumerate() {
            let Some(&arm) = arms.get(&piece.arm) else {
                continue;
            };
            pieces.push(at);
            columns.push(arm);
            for &kind in kinds {
                let next = arms.len() + loads.len();
                columns.push(*loads.entry((kind, piece.loads[kind])).or_insert(next));
            }
        }
        let count = arms.len() + loads.len();
        let fine = count <= MOST_COLUMNS;
        let what = text::error::number_of_loads_and_arms();
        InferenceError::unless(fine, what, count as f64, text::error::at_most_400())?;
        let per_piece = 1 + kinds.len();
        let mut normal = DMatrix::<f64>::zeros(count, count);
        for own in columns.chunks(per_piece) {
            for &i in own {
                for &j in own {
                    normal[(i, j)] += 1.0;
                }
            }
        }
        let eigen = normal.symmetric_eigen();
        let least = NOTHING * eigen.eigenvalues.max();
        let kept = eigen
            .eigenvalues
            .map(|value| if value > least { 1.0 } else { 0.0 });
        let inverse = eigen
            .eigenvalues
            .map(|value| if value > least { 1.0 / value } else { 0.0 });
        let with = |diagonal: &DVector<f64>| {
            &eigen.eigenvectors * DMatrix::from_diagonal(diagonal) * eigen.eigenvectors.transpose()
        };
        Ok(Self {
            df: pieces.len().saturating_sub(kept.sum() as usize),
            inverse: with(&inverse),
            determined: with(&kept),
            pieces,
            columns,
            per_piece,
            arms,
        })
    }

    /// Arms and loads that are fitted.
    pub(super) fn count(&self) -> usize {
        self.inverse.nrows()
    }

    /// The second arm less the first; none if loads and arms can't be told apart.
    pub(super) fn difference(&self, first: usize, second: usize) -> Option<Weights> {
        let contrast = self.contrast(first, second)?;
        if (&self.determined * &contrast - &contrast).amax() > 1e-6 {
            return None;
        }
        let of_sums = &self.inverse * &contrast;
        Some(Weights {
            share: contrast.dot(&of_sums),
            of_sums: of_sums.iter().copied().collect(),
        })
    }

    /// Covariance of two differences, in variances of a piece.
    pub(super) fn shared(&self, weights: &Weights, first: usize, second: usize) -> f64 {
        self.contrast(first, second).map_or(0.0, |contrast| {
            contrast
                .iter()
                .zip(&weights.of_sums)
                .map(|(c, w)| c * w)
                .sum()
        })
    }

    fn contrast(&self, first: usize, second: usize) -> Option<DVector<f64>> {
        let mut contrast = DVector::zeros(self.inverse.nrows());
        contrast[*self.arms.get(&first)?] = -1.0;
        contrast[*self.arms.get(&second)?] = 1.0;
        Some(contrast)
    }

    /// A place for what a fit leaves.
    pub(super) fn nothing(&self) -> Rest {
        Rest {
            sums: vec![0.0; self.count()],
            squares: 0.0,
        }
    }

    /// Fits the values, one for each piece of the layout.
    pub(super) fn rest(&self, values: &[f64], rest: &mut Rest) {
        let sums = &mut rest.sums;
        sums.fill(0.0);
        let mut all = 0.0;
        for (&piece, own) in self.pieces.iter().zip(self.columns.chunks(self.per_piece)) {
            let value = values[piece];
            all += value * value;
            for &column in own {
                sums[column] += value;
            }
        }
        // Of a symmetric matrix one half does.
        let rows = self.inverse.as_slice().chunks(sums.len()).enumerate();
        let fitted = rows.map(|(at, row)| {
            let before: f64 = row.iter().zip(&sums[..at]).map(|(a, b)| a * b).sum();
            sums[at] * (2.0 * before + row[at] * sums[at])
        });
        rest.squares = (all - fitted.sum::<f64>()).max(0.0);
    }
}

impl Rest {
    /// The difference with those weights.
    pub(super) fn difference(&self, weights: &Weights) -> f64 {
        self.sums
            .iter()
            .zip(&weights.of_sums)
            .map(|(sum, weight)| sum * weight)
            .sum()
    }
}
