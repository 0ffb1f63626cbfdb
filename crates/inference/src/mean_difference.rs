//! The difference of two means.

use crate::{InferenceError, Interval, quantile, summary::Summary};

/// A difference of means with its standard error.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MeanDifference {
    /// First mean less second mean.
    pub difference: f64,
    /// Its standard error, above 0.
    pub standard_error: f64,
    /// Degrees of freedom of the standard error.
    pub df: f64,
}

/// The difference of two means without taking their scatter to be equal.
///
/// # Errors
/// Fewer than two values in a group, a value that is not finite, no scatter.
///
/// # Source
/// Welch, Biometrika 34 (1947) 28-35; degrees of freedom by Satterthwaite.
pub fn welch(a: &[f64], b: &[f64]) -> Result<MeanDifference, InferenceError> {
    let (a, b) = (Summary::of(a)?, Summary::of(b)?);
    let (va, vb) = (a.mean_variance(), b.mean_variance());
    let variance = va + vb;
    let spread = va * va / (a.count - 1) as f64 + vb * vb / (b.count - 1) as f64;
    difference(a.mean - b.mean, variance, variance * variance / spread)
}

/// The difference of two means whose scatter is taken to be equal.
///
/// # Errors
/// As for [`welch`].
///
/// # Source
/// Student's two-sample t, common practice.
pub fn pooled(a: &[f64], b: &[f64]) -> Result<MeanDifference, InferenceError> {
    let (a, b) = (Summary::of(a)?, Summary::of(b)?);
    let df = (a.count + b.count - 2) as f64;
    let squares = a.variance * (a.count - 1) as f64 + b.variance * (b.count - 1) as f64;
    let variance = squares / df * (1.0 / a.count as f64 + 1.0 / b.count as f64);
    difference(a.mean - b.mean, variance, df)
}

fn difference(difference: f64, variance: f64, df: f64) -> Result<MeanDifference, InferenceError> {
    if variance > 0.0 {
        Ok(MeanDifference {
            difference,
            standard_error: variance.sqrt(),
            df,
        })
    } else {
        Err(InferenceError::NoScatter)
    }
}

impl MeanDifference {
    /// Student's t of no difference.
    pub fn t(&self) -> f64 {
        self.difference / self.standard_error
    }

    /// Two-sided probability of a difference as large by chance alone.
    pub fn p_two_sided(&self) -> f64 {
        2.0 * quantile::student_above(self.t().abs(), self.df)
    }

    /// Two-sided interval that holds the true difference at that level, such as 0.95.
    pub fn interval(&self, level: f64) -> Interval {
        let half = quantile::student(0.5 + level / 2.0, self.df) * self.standard_error;
        Interval {
            low: self.difference - half,
            high: self.difference + half,
        }
    }
}
