//! Several comparisons within one mixed model.

use super::{Contrast, Fit};
use crate::{InferenceError, Interval, dunnett::Dunnett, holm};

/// Correlations below which contrasts don't share a control.
const NOTHING: f64 = 1e-9;

/// Contrasts with one control, judged together.
#[derive(Debug, Clone, PartialEq)]
pub struct Judged {
    /// The contrasts, in the order given.
    pub contrasts: Vec<Contrast>,
    together: Dunnett,
    /// The fewest that any of them has.
    df: f64,
}

impl Fit {
    /// Contrasts with their probabilities as they count beside each other, by Holm's
    /// rule, in the order given.
    ///
    /// # Errors
    /// As for [`Fit::contrast`].
    pub fn by_holm(&self, weights: &[Vec<f64>]) -> Result<Vec<(Contrast, f64)>, InferenceError> {
        let found = self.all(weights)?;
        let p: Vec<f64> = found.iter().map(Contrast::p).collect();
        Ok(found.into_iter().zip(holm::adjusted(&p)?).collect())
    }

    /// Contrasts with one control, whose errors go together, by Dunnett's limit.
    ///
    /// Degrees of freedom are the fewest of any contrast. Where correlations aren't
    /// those of a shared control, as in unbalanced designs, slightly smaller ones are
    /// taken, so that limits err to the wide side.
    ///
    /// # Errors
    /// As for [`Fit::contrast`]; no contrast; two that aren't correlated as contrasts
    /// with one control are ([`InferenceError::NoControl`]).
    pub fn by_dunnett(&self, weights: &[Vec<f64>]) -> Result<Judged, InferenceError> {
        let contrasts = self.all(weights)?;
        let count = contrasts.len();
        let correlation = |i: usize, j: usize| {
            let errors = contrasts[i].standard_error * contrasts[j].standard_error;
            self.covariance(&weights[i], &weights[j]) / errors
        };
        let row = |i| (0..count).map(|j| correlation(i, j)).collect();
        let correlations: Vec<Vec<f64>> = (0..count).map(row).collect();
        if correlations.iter().flatten().any(|found| *found < NOTHING) {
            return Err(InferenceError::NoControl);
        }
        let together = Dunnett::sharing(&shares(&correlations))?;
        let df = contrasts.iter().map(|c| c.df).fold(f64::MAX, f64::min);
        Ok(Judged {
            contrasts,
            together,
            df,
        })
    }

    fn all(&self, weights: &[Vec<f64>]) -> Result<Vec<Contrast>, InferenceError> {
        weights.iter().map(|w| self.contrast(w)).collect()
    }
}

/// Shares whose products' roots are at most the correlations, and equal to them where
/// they are those of one shared control.
fn shares(correlations: &[Vec<f64>]) -> Vec<f64> {
    let count = correlations.len();
    let of_one = |i: usize| {
        let others = (0..count).filter(|j| *j != i);
        let pairs = others
            .clone()
            .flat_map(|j| others.clone().filter(move |l| *l < j).map(move |l| (j, l)));
        let least = pairs
            .map(|(j, l)| correlations[i][j] * correlations[i][l] / correlations[j][l])
            .fold(f64::MAX, f64::min);
        // With two contrasts there is no third to tell: both share alike.
        if count == 2 {
            correlations[0][1]
        } else {
            least.min(1.0)
        }
    };
    let found: Vec<f64> = (0..count).map(of_one).collect();
    let pairs = (0..count).flat_map(|i| (0..i).map(move |j| (i, j)));
    let over = pairs
        .map(|(i, j)| (found[i] * found[j]).sqrt() / correlations[i][j])
        .fold(1.0, f64::max);
    found.iter().map(|share| share / over).collect()
}

impl Judged {
    /// How often the farthest of all contrasts gets as far from 0 as the one at that
    /// place (counted from 0) by chance alone.
    pub fn p(&self, at: usize) -> Option<f64> {
        let contrast = self.contrasts.get(at)?;
        Some(self.together.p(contrast.t(), self.df))
    }

    /// Intervals that hold all true sums together at that level, such as 0.95.
    pub fn intervals(&self, level: f64) -> Vec<Interval> {
        let limit = self.together.limit(1.0 - level, self.df);
        self.contrasts.iter().map(|c| c.within(limit)).collect()
    }
}
