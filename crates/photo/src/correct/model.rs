//! A family's model by two rulers: the eye's and that of light itself.

use nalgebra::{DMatrix, DVector};

use super::{
    family::{Family, MOST_TERMS, Weights},
    fit::{Fit, Pair},
};

/// Two least-squares fits of one family, of which the mean is used.
///
/// The eye's ruler (CIEDE2000) lets dark and pale patches decide most, that of
/// light (tristimulus values) the bright ones. Cameras that no model of the family
/// describes wholly are missed by the two at different colours and in different
/// directions, so that their mean misses dyed cloth less than either; computed for
/// drawn cameras under many lamps, no source.
pub(super) struct Model {
    by_eye: Fit,
    by_light: LightFit,
}

impl Model {
    /// None where the pairs don't hold the family's terms.
    pub fn new(family: Family, pairs: &[Pair<'_>]) -> Option<Self> {
        Some(Self {
            by_eye: Fit::new(family, pairs)?,
            by_light: LightFit::new(family, pairs)?,
        })
    }

    /// The mean of both fits.
    pub fn weights(&self) -> Weights {
        mean(&self.by_eye.weights, &self.by_light.weights())
    }

    /// The same had one of the pairs not been there.
    pub fn without(&self, pair: &Pair<'_>) -> Option<Weights> {
        Some(mean(
            &self.by_eye.without(pair)?,
            &self.by_light.without(pair)?,
        ))
    }
}

fn mean(a: &Weights, b: &Weights) -> Weights {
    [0, 1, 2].map(|p| std::array::from_fn(|i| (a[p][i] + b[p][i]) / 2.0))
}

/// The model that misses the pairs' tristimulus values least.
struct LightFit {
    /// The normal matrix turned over; X, Y and Z share it.
    inverse: DMatrix<f64>,
    /// Weights by term, a column each for X, Y and Z.
    solved: DMatrix<f64>,
}

impl LightFit {
    fn new(family: Family, pairs: &[Pair<'_>]) -> Option<Self> {
        let k = family.terms();
        let terms = DMatrix::from_fn(pairs.len(), k, |row, i| pairs[row].terms[i]);
        let truths: Vec<[f64; 3]> = pairs.iter().map(|p| p.target.xyz.to_array()).collect();
        let truths = DMatrix::from_fn(pairs.len(), 3, |row, p| truths[row][p]);
        let mut normal = terms.tr_mul(&terms);
        let share = normal[(1, 1)];
        for i in 0..k {
            normal[(i, i)] += Family::ridge(i) * share;
        }
        let inverse = normal.cholesky()?.inverse();
        let solved = &inverse * terms.tr_mul(&truths);
        Some(Self { inverse, solved })
    }

    fn weights(&self) -> Weights {
        by_row(&self.solved)
    }

    /// As [`Fit::without`], with one row of terms for all three values.
    fn without(&self, pair: &Pair<'_>) -> Option<Weights> {
        let k = self.solved.nrows();
        let terms = DVector::from_fn(k, |i, _| pair.terms[i]);
        let gain = &self.inverse * &terms;
        let own = 1.0 - terms.dot(&gain);
        let truth = pair.target.xyz.to_array();
        let mut solved = self.solved.clone();
        for (p, mut column) in solved.column_iter_mut().enumerate() {
            let missed = truth[p] - terms.dot(&column);
            column.axpy(-missed / own, &gain, 1.0);
        }
        (own > 1e-9).then(|| by_row(&solved))
    }
}

fn by_row(solved: &DMatrix<f64>) -> Weights {
    let mut weights = [[0.0; MOST_TERMS]; 3];
    for (row, column) in weights.iter_mut().zip(solved.column_iter()) {
        for (weight, value) in row.iter_mut().zip(column.iter()) {
            *weight = *value;
        }
    }
    weights
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{
        ChartReference,
        correct::{family, target::Target},
    };
    use colour::{View, difference};

    fn targets() -> Vec<Target> {
        let white = View::D65_10.white();
        ChartReference::published()
            .xyz(View::D65_10)
            .into_iter()
            .map(|xyz| Target::new(xyz, white))
            .collect()
    }

    fn seen(target: &Target, bent: f64) -> [f64; 3] {
        let camera = [
            [0.021, -0.008, -0.002],
            [-0.006, 0.018, 0.0005],
            [0.0003, -0.002, 0.011],
        ];
        crate::matrix::apply(&camera, target.xyz.to_array())
            .map(|v| v + bent * (target.lab.a * 0.37).sin().abs() * v)
    }

    #[test]
    fn a_camera_that_is_a_matrix_is_undone_exactly() {
        let targets = targets();
        let white = View::D65_10.white();
        let pairs: Vec<Pair<'_>> = targets.iter().map(|t| Pair::new(seen(t, 0.0), t)).collect();
        for family in Family::ALL {
            let fit = Model::new(family, &pairs).unwrap();
            for target in &targets {
                let lab = family::xyz(&fit.weights(), seen(target, 0.0)).to_lab(white);
                let miss = difference::ciede2000(lab, target.lab);
                assert!(miss < 0.02, "{family:?} misses by {miss}");
            }
        }
    }

    /// The shortcut against the long way: fitting 23 pairs anew.
    #[test]
    fn leaving_out_is_as_fitting_anew() {
        let targets = targets();
        let pairs: Vec<Pair<'_>> = targets.iter().map(|t| Pair::new(seen(t, 0.1), t)).collect();
        let whole = Model::new(Family::Root2, &pairs).unwrap();
        for i in [0, 7, 18, 23] {
            let without = whole.without(&pairs[i]).unwrap();
            let others: Vec<Pair<'_>> = (0..24)
                .filter(|&k| k != i)
                .map(|k| Pair::new(seen(&targets[k], 0.1), &targets[k]))
                .collect();
            let anew = Model::new(Family::Root2, &others).unwrap();
            let light = seen(&targets[i], 0.1);
            let (a, b) = (
                family::xyz(&without, light).y,
                family::xyz(&anew.weights(), light).y,
            );
            // The ridge is a share of what is there, and so a little less without.
            assert!((a - b).abs() < 1e-3 * a.max(b), "{a} {b}");
        }
    }
}
