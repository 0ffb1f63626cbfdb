//! From scene light to tristimulus values: the mean of models of growing freedom.

use colour::{Lab, Xyz, difference};
use nalgebra::{DMatrix, DVector};

use crate::matrix::{Matrix3, jacobian};

/// A family of colour models.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Family {
    /// A 3 x 3 matrix.
    Linear,
    /// Root polynomial of the third degree.
    Root3,
}

impl Family {
    const fn terms(self) -> usize {
        match self {
            Self::Linear => 3,
            Self::Root3 => 13,
        }
    }

    /// Each term grows in step with exposure, so a shadow doesn't turn the hue.
    ///
    /// # Source
    /// Finlayson, Mackiewicz and Hurlbert, IEEE Trans. Image Processing 24 (2015).
    fn features(self, [r, g, b]: [f64; 3]) -> [f64; 13] {
        let mut f = [0.0; 13];
        f[..3].copy_from_slice(&[r, g, b]);
        if self == Self::Linear {
            return f;
        }
        let root = |v: f64| v.max(0.0).sqrt();
        f[3..6].copy_from_slice(&[root(r * g), root(g * b), root(r * b)]);
        let terms = [
            r * g * g,
            g * b * b,
            r * b * b,
            g * r * r,
            b * g * g,
            b * r * r,
            r * g * b,
        ];
        for (slot, term) in f[6..].iter_mut().zip(terms) {
            *slot = term.max(0.0).cbrt();
        }
        f
    }
}

/// A patch's true colour and how sharply the eye tells errors there.
#[derive(Debug, Clone)]
pub(crate) struct Target {
    /// True tristimulus values.
    pub xyz: Xyz,
    /// The same in CIELAB.
    pub lab: Lab,
    /// M'M, where M turns an error of XYZ into CIEDE2000 units.
    weight: Matrix3,
    /// Turns an error of Lab into CIEDE2000 units.
    to_de00: Matrix3,
}

impl Target {
    pub fn new(xyz: Xyz, white: Xyz) -> Self {
        let lab = xyz.to_lab(white);
        let to_lab = |v: [f64; 3]| Xyz::from(v).to_lab(white).to_array();
        let j = jacobian(to_lab, xyz.to_array(), 1e-4);
        let g = difference::ciede2000_metric(lab);
        let transposed = [0, 1, 2].map(|r| [0, 1, 2].map(|c| j[c][r]));
        Self {
            xyz,
            lab,
            weight: crate::matrix::carry(&transposed, &g),
            to_de00: upper_root(&g),
        }
    }

    /// The matrix U for which the length of U d is the CIEDE2000 of a small
    /// error d of Lab.
    pub fn to_de00(&self) -> Matrix3 {
        self.to_de00
    }
}

/// U with U'U = g (Cholesky).
fn upper_root(g: &Matrix3) -> Matrix3 {
    let m = nalgebra::Matrix3::from_fn(|r, c| g[r][c]);
    match m.cholesky() {
        Some(root) => {
            let u = root.l().transpose();
            [0, 1, 2].map(|r| [0, 1, 2].map(|c| u[(r, c)]))
        }
        None => [[1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, 1.0]],
    }
}

/// One patch: the scene light it sent and what it truly is.
pub(crate) struct Pair<'a> {
    pub light: [f64; 3],
    pub target: &'a Target,
}

/// A fitted colour model.
#[derive(Debug, Clone)]
pub(crate) struct Model {
    /// Weights of the terms for X, Y and Z; 0 for terms that its family lacks.
    weights: [[f64; 13]; 3],
}

/// The models that are averaged, each with its ridge.
const MEMBERS: [(Family, f64); 2] = [(Family::Linear, 0.0), (Family::Root3, 1e-4)];

impl Model {
    /// The mean of the members. Each errs in its own way on colours that the
    /// chart lacks: on rendered photos their mean errs less than the one that
    /// foretells left-out patches best.
    pub fn mean(pairs: &[Pair<'_>]) -> Option<Self> {
        let mut weights = [[0.0; 13]; 3];
        for (family, ridge) in MEMBERS {
            let model = Self::fit(family, ridge, pairs)?;
            for (row, from) in weights.iter_mut().zip(&model.weights) {
                for (sum, weight) in row.iter_mut().zip(from) {
                    *sum += weight / MEMBERS.len() as f64;
                }
            }
        }
        Some(Self { weights })
    }

    /// The model that misses the pairs least, in CIEDE2000 units near them;
    /// `ridge` (a share of the normal matrix's mean) holds the root terms back.
    fn fit(family: Family, ridge: f64, pairs: &[Pair<'_>]) -> Option<Self> {
        let k = family.terms();
        let mut normal = DMatrix::<f64>::zeros(3 * k, 3 * k);
        let mut right = DVector::<f64>::zeros(3 * k);
        let mut share = 0.0;
        for pair in pairs {
            let f = family.features(pair.light);
            let w = &pair.target.weight;
            let t = pair.target.xyz.to_array();
            for p in 0..3 {
                let pull: f64 = (0..3).map(|q| w[p][q] * t[q]).sum();
                for i in 0..k {
                    right[p * k + i] += f[i] * pull;
                    for q in 0..3 {
                        for j in 0..k {
                            normal[(p * k + i, q * k + j)] += f[i] * f[j] * w[p][q];
                        }
                    }
                }
            }
            share += (w[0][0] + w[1][1] + w[2][2]) / 3.0 * pair.light[1] * pair.light[1];
        }
        for p in 0..3 {
            for i in 0..k {
                // The straight terms are held only against rounding.
                let hold = if i < 3 { 1e-9 } else { ridge };
                normal[(p * k + i, p * k + i)] += hold * share;
            }
        }
        let solved = normal.cholesky()?.solve(&right);
        let mut weights = [[0.0; 13]; 3];
        for p in 0..3 {
            for i in 0..k {
                weights[p][i] = solved[p * k + i];
            }
        }
        Some(Self { weights })
    }

    /// Tristimulus values of scene light.
    pub fn xyz(&self, light: [f64; 3]) -> Xyz {
        let f = Family::Root3.features(light);
        let sum = |row: &[f64; 13]| -> f64 { row.iter().zip(&f).map(|(w, v)| w * v).sum() };
        let [x, y, z] = [0, 1, 2].map(|p| sum(&self.weights[p]).max(1e-4));
        Xyz::new(x, y, z)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ChartReference;
    use colour::View;

    #[test]
    fn a_camera_that_is_a_matrix_is_undone_exactly() {
        let white = View::D65_10.white();
        let targets: Vec<Target> = ChartReference::published()
            .xyz(View::D65_10)
            .into_iter()
            .map(|xyz| Target::new(xyz, white))
            .collect();
        let camera = [
            [0.021, -0.008, -0.002],
            [-0.006, 0.018, 0.0005],
            [0.0003, -0.002, 0.011],
        ];
        let pairs: Vec<Pair<'_>> = targets
            .iter()
            .map(|target| Pair {
                light: crate::matrix::apply(&camera, target.xyz.to_array()),
                target,
            })
            .collect();
        let model = Model::mean(&pairs).unwrap();
        for pair in &pairs {
            let lab = model.xyz(pair.light).to_lab(white);
            let miss = difference::ciede2000(lab, pair.target.lab);
            assert!(miss < 0.02, "missed by {miss}");
        }
    }
}
