//! One family's least squares over the patches, whole and with a patch left out.

use nalgebra::{DMatrix, Matrix3, Vector3};

use super::{
    family::{Family, MOST_TERMS, Weights, terms},
    target::Target,
};

/// One patch: the scene light it sent and what it truly is.
pub(super) struct Pair<'a> {
    pub target: &'a Target,
    pub terms: [f64; MOST_TERMS],
}

impl<'a> Pair<'a> {
    pub fn new(light: [f64; 3], target: &'a Target) -> Self {
        Self {
            target,
            terms: terms(light),
        }
    }
}

/// The model of a family that misses the pairs least, in CIEDE2000 units near them.
pub(super) struct Fit {
    family: Family,
    pub weights: Weights,
    /// The normal matrix turned over.
    inverse: DMatrix<f64>,
}

impl Fit {
    /// None where the pairs don't hold the family's terms.
    pub fn new(family: Family, pairs: &[Pair<'_>]) -> Option<Self> {
        let k = family.terms();
        let mut normal = DMatrix::<f64>::zeros(3 * k, 3 * k);
        let mut right = DMatrix::<f64>::zeros(3 * k, 1);
        let mut share = 0.0;
        for pair in pairs {
            let m = &pair.target.xyz_to_de00;
            let w = [0, 1, 2]
                .map(|p| [0, 1, 2].map(|q| (0..3).map(|row| m[row][p] * m[row][q]).sum::<f64>()));
            let truth = pair.target.xyz.to_array();
            for p in 0..3 {
                let pull: f64 = (0..3).map(|q| w[p][q] * truth[q]).sum();
                for i in 0..k {
                    right[p * k + i] += pair.terms[i] * pull;
                    // The lower half is enough.
                    for q in 0..=p {
                        for j in 0..k {
                            normal[(p * k + i, q * k + j)] +=
                                pair.terms[i] * pair.terms[j] * w[p][q];
                        }
                    }
                }
            }
            share += (w[0][0] + w[1][1] + w[2][2]) / 3.0 * pair.terms[1] * pair.terms[1];
        }
        for p in 0..3 {
            for i in 0..k {
                normal[(p * k + i, p * k + i)] += Family::ridge(i) * share;
            }
        }
        let inverse = normal.cholesky()?.inverse();
        let solved = &inverse * right;
        let mut weights = [[0.0; MOST_TERMS]; 3];
        for (p, row) in weights.iter_mut().enumerate() {
            row[..k].copy_from_slice(&solved.as_slice()[p * k..(p + 1) * k]);
        }
        Some(Self {
            family,
            weights,
            inverse,
        })
    }

    /// The weights had one of the pairs not been there.
    ///
    /// Least squares without a block of rows X with misses e are
    /// w - A X' (1 - X A X')^-1 e, A being the normal matrix turned over: the
    /// usual shortcut for leaving out, exact as long as the other pairs stay.
    pub fn without(&self, pair: &Pair<'_>) -> Option<Weights> {
        let k = self.family.terms();
        let m = &pair.target.xyz_to_de00;
        let rows = DMatrix::from_fn(3, 3 * k, |row, column| {
            m[row][column / k] * pair.terms[column % k]
        });
        let truth = pair.target.xyz.to_array();
        let missed = Vector3::from_fn(|row, _| {
            (0..3)
                .map(|p| {
                    let model: f64 = (0..k).map(|i| self.weights[p][i] * pair.terms[i]).sum();
                    m[row][p] * (truth[p] - model)
                })
                .sum::<f64>()
        });
        let gain = &self.inverse * rows.transpose();
        let hat = &rows * &gain;
        let own = Matrix3::identity() - Matrix3::from_fn(|r, c| hat[(r, c)]);
        let pushed = own.try_inverse()? * missed;
        let mut weights = self.weights;
        for (p, row) in weights.iter_mut().enumerate() {
            for (i, weight) in row[..k].iter_mut().enumerate() {
                let at = p * k + i;
                *weight -= (0..3).map(|c| gain[(at, c)] * pushed[c]).sum::<f64>();
            }
        }
        Some(weights)
    }
}
