//! Mean and scatter of single numbers.

use crate::InferenceError;

/// Count, mean and standard deviation of some numbers.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Summary {
    /// How many there are, 2 at least.
    pub count: usize,
    /// Their mean.
    pub mean: f64,
    /// Their variance, by count less 1.
    pub variance: f64,
}

impl Summary {
    /// Summarises two numbers or more.
    ///
    /// # Errors
    /// Fewer than two, or one that is not finite.
    pub fn of(values: &[f64]) -> Result<Self, InferenceError> {
        if values.len() < 2 {
            return Err(InferenceError::TooFew {
                given: values.len(),
                least: 2,
            });
        }
        if values.iter().any(|v| !v.is_finite()) {
            return Err(InferenceError::NotFinite);
        }
        let count = values.len();
        let mean = values.iter().sum::<f64>() / count as f64;
        let squares: f64 = values.iter().map(|v| (v - mean) * (v - mean)).sum();
        Ok(Self {
            count,
            mean,
            variance: squares / (count - 1) as f64,
        })
    }

    /// Standard deviation.
    pub fn sd(&self) -> f64 {
        self.variance.sqrt()
    }

    /// Variance of the mean.
    pub fn mean_variance(&self) -> f64 {
        self.variance / self.count as f64
    }
}
