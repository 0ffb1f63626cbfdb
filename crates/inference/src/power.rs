//! How often a difference of a given size is shown, and which size is shown
//! often enough.
//!
//! The difference is a vector of one or more parts, each with the same error,
//! which is estimated with some degrees of freedom. It counts as shown when it
//! is longer than chance alone makes it once in 1 / `tail`. Along one part that
//! is Student's two-sided test, and its power the noncentral t's.

use crate::quantile;
use statrs::function::beta::beta_reg;

/// Steps of halving; a size then holds to 1e-12 of itself.
const HALVINGS: usize = 60;
/// Standard deviations of the Poisson weights that are summed to either side.
const REACH: f64 = 12.0;

/// What is tested: how many parts, how well the error is known, how rare chance
/// has to be.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Test {
    /// Parts of the vector: 1 along a direction named beforehand, 3 for a colour.
    pub parts: usize,
    /// Degrees of freedom of the error, above 0.
    pub df: f64,
    /// How often chance alone may show a difference, between 0 and 1.
    pub tail: f64,
}

impl Test {
    /// How often a difference of that length is shown; `length` in standard
    /// errors of one part, 0 upward.
    ///
    /// # Source
    /// The noncentral F distribution as a Poisson mixture of beta distributions,
    /// common practice.
    ///
    /// ```
    /// let test = inference::power::Test { parts: 1, df: 8.0, tail: 0.05 };
    /// // Two arms of 5 that differ by 2 standard deviations of a piece.
    /// let power = test.power(2.0 * (5.0_f64 / 2.0).sqrt());
    /// assert_eq!(format!("{power:.3}"), "0.791");
    /// ```
    pub fn power(&self, length: f64) -> f64 {
        let limit = quantile::fisher(1.0 - self.tail, self.parts as f64, self.df);
        let reached = self.parts as f64 * limit;
        let part = reached / (reached + self.df);
        let mean = length * length / 2.0;
        let half = self.parts as f64 / 2.0;
        let reach = REACH * (mean.sqrt() + 1.0);
        let first = (mean - reach).max(0.0).floor();
        let within: f64 = (0..)
            .map(|step| first + f64::from(step))
            .take_while(|count| *count <= mean + reach)
            .map(|count| poisson(count, mean) * beta_reg(half + count, self.df / 2.0, part))
            .sum();
        (1.0 - within).clamp(0.0, 1.0)
    }

    /// The length that is shown with that frequency (`tail` < `power` < 1), in
    /// standard errors of one part.
    pub fn smallest(&self, power: f64) -> f64 {
        let mut high = 1.0;
        while self.power(high) < power {
            high *= 2.0;
        }
        let mut low = 0.0;
        for _ in 0..HALVINGS {
            let middle = 0.5 * (low + high);
            if self.power(middle) < power {
                low = middle;
            } else {
                high = middle;
            }
        }
        0.5 * (low + high)
    }
}

fn poisson(count: f64, mean: f64) -> f64 {
    if mean == 0.0 {
        return f64::from(count == 0.0);
    }
    libm::exp(count * libm::log(mean) - mean - libm::lgamma(count + 1.0))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn without_a_difference_chance_alone_shows_one() {
        for parts in [1, 3] {
            for df in [1.0, 4.5, 60.0, 1e9] {
                let test = Test {
                    parts,
                    df,
                    tail: 0.05,
                };
                let power = test.power(0.0);
                assert!((power - 0.05).abs() < 1e-6, "{parts} {df}: {power}");
            }
        }
    }

    #[test]
    fn power_and_smallest_undo_each_other() {
        for df in [2.0, 8.0, 22.0, 1e9] {
            for parts in [1, 3] {
                let test = Test {
                    parts,
                    df,
                    tail: 0.025,
                };
                for power in [0.3, 0.8, 0.95] {
                    let found = test.power(test.smallest(power));
                    assert!((found - power).abs() < 1e-9, "{df} {parts}: {found}");
                }
            }
        }
    }
}
