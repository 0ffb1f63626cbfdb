//! What is known of the readings beforehand.

use crate::setup::SetupCheck;
use inference::scatter::Error;
use nalgebra::Matrix3;

/// How well one reading repeats, from a set-up check: covariances in CIELAB.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Repeatability {
    /// Of a piece laid anew, about what its photo shifts alike for all pieces.
    pub within: [[f64; 3]; 3],
    /// Degrees of freedom of that.
    pub within_df: f64,
    /// Of what a photo shifts alike for all pieces.
    pub between: [[f64; 3]; 3],
    /// Degrees of freedom of that.
    pub between_df: f64,
}

impl From<&SetupCheck> for Repeatability {
    fn from(check: &SetupCheck) -> Self {
        Self {
            within: check.within_cov,
            within_df: check.within_df,
            between: check.between_cov,
            between_df: check.between_df,
        }
    }
}

impl Repeatability {
    /// The error of what is read so often, in each photo by itself.
    pub(super) fn of_readings(&self, times: f64) -> Error {
        Error {
            covariance: Matrix3::from(self.within) * times,
            df: self.within_df.max(1.0),
        }
    }

    /// The error of what lies on so many photos.
    pub(super) fn of_photos(&self, times: f64) -> Error {
        Error {
            covariance: Matrix3::from(self.between) * times,
            df: self.between_df.max(1.0),
        }
    }
}
