//! A comparison within a mixed model.

use crate::{Interval, quantile};

/// A weighted sum of fixed effects with its error.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Contrast {
    /// The sum, in the values' unit times that of the weights.
    pub estimate: f64,
    /// Its standard error, above 0.
    pub standard_error: f64,
    /// Degrees of freedom of the standard error, above 0.
    pub df: f64,
}

impl Contrast {
    /// Student's t of a sum of 0.
    pub fn t(&self) -> f64 {
        self.estimate / self.standard_error
    }

    /// Two-sided probability of a sum as far from 0 by chance alone.
    pub fn p(&self) -> f64 {
        2.0 * quantile::student_above(self.t().abs(), self.df)
    }

    /// Two-sided interval that holds the true sum at that level, such as 0.95.
    pub fn interval(&self, level: f64) -> Interval {
        self.within(quantile::student(0.5 + level / 2.0, self.df))
    }

    /// So many standard errors to either side.
    pub(super) fn within(&self, limit: f64) -> Interval {
        let half = limit * self.standard_error;
        Interval {
            low: self.estimate - half,
            high: self.estimate + half,
        }
    }
}
