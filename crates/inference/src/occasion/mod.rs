//! What looking again adds: scatter within occasions and between them.
//!
//! The same subjects are looked at on several occasions, each time all of them
//! or most. A value is its subject's mean, plus what the occasion shifts alike
//! for every subject, plus a rest. The two covariances come from the analysis of
//! variance: subjects and occasions are fitted by least squares, what remains is
//! the rest, and what occasions explain beyond subjects is compared with what it
//! would be on average. Where all subjects are there on all occasions, and
//! occasions do shift, this is also the restricted maximum likelihood estimate.

mod fit;
mod part;

pub use part::Part;

use crate::InferenceError;
use nalgebra::{Matrix3, SymmetricEigen, Vector3};

/// One look at a subject on an occasion.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Look {
    /// Which occasion, any number.
    pub occasion: usize,
    /// Which subject, any number.
    pub subject: usize,
    /// What was seen; a single number is a vector with two parts 0.
    pub value: Vector3<f64>,
}

/// Scatter within occasions and between them.
#[derive(Debug, Clone, PartialEq)]
pub struct Occasions {
    /// Mean square of the rest: its covariance.
    within: Matrix3<f64>,
    /// Its degrees of freedom.
    within_df: usize,
    /// Mean square of occasions beyond subjects.
    between_square: Matrix3<f64>,
    /// Its degrees of freedom.
    between_df: usize,
    /// How many times the covariance between occasions is in that mean square.
    copies: f64,
}

impl Occasions {
    /// Separates the scatter of looks. A subject seen once says nothing of either
    /// and is passed over.
    ///
    /// # Errors
    /// A value that isn't finite; fewer than two occasions or two subjects that are
    /// linked by being seen together; nothing left to show the rest.
    ///
    /// # Source
    /// C. R. Henderson, Biometrics 9 (1953) 226-252, method 3, for each part of
    /// the vector and each pair of parts.
    pub fn of(looks: &[Look]) -> Result<Self, InferenceError> {
        let fit = fit::Fit::of(looks)?;
        let within = fit.rest / fit.rest_df as f64;
        Ok(Self {
            within,
            within_df: fit.rest_df,
            between_square: fit.occasions / fit.occasions_df as f64,
            between_df: fit.occasions_df,
            copies: fit.copies / fit.occasions_df as f64,
        })
    }

    /// Covariance of one look about its subject's mean on the same occasion.
    pub fn within(&self) -> Matrix3<f64> {
        self.within
    }

    /// Covariance of the shift of an occasion: the nearest to the estimate that is
    /// a covariance, 0 where occasions shift no more than the rest explains.
    pub fn between(&self) -> Matrix3<f64> {
        let raw = self.raw_between();
        let eigen = SymmetricEigen::new((raw + raw.transpose()) / 2.0);
        let kept = Matrix3::from_diagonal(&eigen.eigenvalues.map(|v| v.max(0.0)));
        eigen.eigenvectors * kept * eigen.eigenvectors.transpose()
    }

    /// The estimate of the covariance between occasions, by which alone a figure
    /// is free of bias; it may fall below 0 in some direction.
    fn raw_between(&self) -> Matrix3<f64> {
        (self.between_square - self.within) / self.copies
    }

    /// Degrees of freedom of each part of the scatter within occasions.
    pub fn within_df(&self) -> usize {
        self.within_df
    }

    /// Degrees of freedom of each part of the scatter between occasions.
    pub fn between_df(&self) -> usize {
        self.between_df
    }

    /// Looks by which an occasion's shift is judged: the number of subjects where
    /// all are there each time.
    pub fn copies(&self) -> f64 {
        self.copies
    }

    /// The mean squared length of the rest, lengths by `metric` (the length of v
    /// is the root of v' metric v).
    pub fn within_part(&self, metric: &Matrix3<f64>) -> Part {
        Part::within(self, metric)
    }

    /// The mean squared length of an occasion's shift, lengths by `metric`.
    pub fn between_part(&self, metric: &Matrix3<f64>) -> Part {
        Part::between(self, metric)
    }
}

#[cfg(test)]
mod tests;
