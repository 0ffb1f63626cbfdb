//! How a photo sees: from code values to CIELAB.

use colour::{Lab, Xyz};

use super::{
    family::{self, MOST_TERMS, Weights},
    nearby::Nearby,
};
use crate::{light::Light, matrix::Matrix3};

/// How a photo sees, ready to read areas with.
pub(crate) struct Sight {
    /// Scene light of each code value, the tone undone.
    pub linear: [[f64; 256]; 3],
    /// The light field.
    pub light: Light,
    pub(super) weights: Weights,
    pub(super) nearby: Nearby,
    pub(super) white: Xyz,
}

impl Sight {
    /// By a matrix from scene light to XYZ alone.
    pub fn by_matrix(linear: [[f64; 256]; 3], light: Light, to_xyz: &Matrix3, white: Xyz) -> Self {
        let mut weights = [[0.0; MOST_TERMS]; 3];
        for (row, from) in weights.iter_mut().zip(to_xyz) {
            row[..3].copy_from_slice(from);
        }
        Self {
            linear,
            light,
            weights,
            nearby: Nearby::default(),
            white,
        }
    }

    /// CIELAB of scene light, the light field taken off already.
    pub fn lab(&self, scene: [f64; 3]) -> Lab {
        self.nearby
            .corrected(family::xyz(&self.weights, scene).to_lab(self.white))
    }
}
