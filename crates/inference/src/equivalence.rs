//! Whether a difference is shown to lie within a margin.

use crate::{InferenceError, mean_difference::MeanDifference, quantile};

/// Two one-sided tests of a difference against a margin on either side.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Equivalence {
    /// t of "the difference lies above minus the margin".
    pub t_lower: f64,
    /// Its one-sided probability by chance.
    pub p_lower: f64,
    /// t of "the difference lies below the margin".
    pub t_upper: f64,
    /// Its one-sided probability by chance.
    pub p_upper: f64,
}

/// Tests a difference against `-margin` and `+margin` (`margin` > 0, its unit).
///
/// # Errors
/// A margin that is not above 0.
///
/// # Source
/// Schuirmann, Journal of Pharmacokinetics and Biopharmaceutics 15 (1987) 657-680.
pub fn two_one_sided(found: &MeanDifference, margin: f64) -> Result<Equivalence, InferenceError> {
    if !(margin > 0.0 && margin.is_finite()) {
        return Err(InferenceError::Margin(margin));
    }
    let t_lower = (found.difference + margin) / found.standard_error;
    let t_upper = (found.difference - margin) / found.standard_error;
    Ok(Equivalence {
        t_lower,
        p_lower: quantile::student_above(t_lower, found.df),
        t_upper,
        p_upper: quantile::student_above(-t_upper, found.df),
    })
}

impl Equivalence {
    /// The probability that counts: the greater of the two.
    pub fn p(&self) -> f64 {
        self.p_lower.max(self.p_upper)
    }
}
