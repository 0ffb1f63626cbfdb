//! What a patch truly is, and how sharply the eye tells errors there.

use colour::{Lab, Xyz, difference};

use crate::matrix::{Matrix3, jacobian};

/// A patch's true colour with the eye's ruler laid to it.
#[derive(Debug, Clone)]
pub(crate) struct Target {
    /// True tristimulus values.
    pub xyz: Xyz,
    /// The same in CIELAB.
    pub lab: Lab,
    /// U, for which the length of U d is the CIEDE2000 of a small error d of Lab.
    pub to_de00: Matrix3,
    /// The same for a small error of XYZ.
    pub xyz_to_de00: Matrix3,
}

impl Target {
    pub fn new(xyz: Xyz, white: Xyz) -> Self {
        let lab = xyz.to_lab(white);
        let to_lab = |v: [f64; 3]| Xyz::from(v).to_lab(white).to_array();
        let slope = jacobian(to_lab, xyz.to_array(), 1e-4);
        let to_de00 = upper_root(&difference::ciede2000_metric(lab));
        Self {
            xyz,
            lab,
            to_de00,
            xyz_to_de00: crate::matrix::times(&to_de00, &slope),
        }
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
        None => crate::matrix::ONE,
    }
}
