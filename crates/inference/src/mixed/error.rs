//! What the parts of the scatter do to the errors of fixed effects.

use super::{criterion::At, sums::Sums};
use nalgebra::DMatrix;

/// For weighted sums of fixed effects, in units of the residual variance.
///
/// F is the way from the values to the fixed effects, V_k the covariance of a part.
#[derive(Debug, Clone)]
pub(super) struct Held {
    /// F' V_k F: how much of each part's share a variance holds.
    pub growth: Vec<DMatrix<f64>>,
    /// F' V_k P V_l F: what not knowing the shares adds to a covariance.
    added: Vec<Vec<DMatrix<f64>>>,
}

impl Held {
    pub(super) fn of(sums: &Sums, at: &At) -> Self {
        let (first, fitted, columns) = (&at.first, &at.fitted, sums.columns());
        let onto = |m: &DMatrix<f64>| m.view((0, 0), (columns, columns)) * first;
        let (all, once) = (onto(&at.weighted.all), onto(&at.weighted.once));
        let of_pieces = once.transpose() * fitted * &once;
        let pieces = first.transpose() * onto(&at.weighted.twice) - of_pieces;
        let rows = |kind: usize, of: &DMatrix<f64>| {
            let range = &sums.kinds[kind];
            of.rows(range.start, range.len())
                .columns(0, of.ncols().min(columns))
                .into_owned()
        };
        let kinds = sums.kinds.len();
        let scores: Vec<DMatrix<f64>> = (0..kinds).map(|k| rows(k, &all)).collect();
        let used: Vec<DMatrix<f64>> = (0..kinds)
            .map(|k| rows(k, &at.weighted.all) * fitted)
            .collect();
        let crossed: Vec<DMatrix<f64>> = (0..kinds)
            .map(|k| scores[k].transpose() * (rows(k, &once) - &used[k] * &once))
            .collect();
        let between = |k: usize, l: usize| {
            let (one, other) = (&sums.kinds[k], &sums.kinds[l]);
            let place = ((one.start, other.start), (one.len(), other.len()));
            let square = at.weighted.all.view(place.0, place.1)
                - &used[k] * rows(l, &at.weighted.all).transpose();
            scores[k].transpose() * square * &scores[l]
        };
        let mut growth = vec![first.transpose() * &once];
        growth.extend(scores.iter().map(|rows| rows.transpose() * rows));
        let mut added = vec![vec![pieces]];
        added[0].extend(crossed.iter().map(DMatrix::transpose));
        for (k, crossed) in crossed.iter().enumerate() {
            let mut row = vec![crossed.clone()];
            row.extend((0..kinds).map(|l| between(k, l)));
            added.push(row);
        }
        Self { growth, added }
    }

    /// The covariance of the fixed effects with what not knowing the shares adds to it:
    /// `known` is the covariance of the residual variance and of the shares `above`.
    ///
    /// # Source
    /// M. G. Kenward and J. H. Roger, Biometrics 53 (1997) 983-997, for variances that
    /// enter linearly; from memory.
    pub(super) fn with_doubt(
        &self,
        covariance: &DMatrix<f64>,
        above: &[usize],
        known: &DMatrix<f64>,
    ) -> DMatrix<f64> {
        let mut sum = covariance.clone();
        for (i, &k) in above.iter().enumerate() {
            for (j, &l) in above.iter().enumerate() {
                sum += &self.added[k][l] * (2.0 * known[(i + 1, j + 1)]);
            }
        }
        (&sum + sum.transpose()) * 0.5
    }
}
