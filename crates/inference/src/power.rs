//! How often a difference of a given size is shown, and which size is shown
//! often enough.
//!
//! The difference is a vector of one or more parts, each with the same error,
//! which is estimated with some degrees of freedom. It counts as shown when it
//! is longer than chance alone makes it once in 1 / `tail`. Along one part that
//! is Student's two-sided test, and its power the noncentral t's.

pub(crate) mod equivalence;

use crate::quantile;
use statrs::function::beta::beta_reg;

/// Steps of halving; a size then holds to 1e-12 of itself.
const HALVINGS: usize = 42;
/// Standard deviations of the Poisson weights that are summed to either side.
const REACH: f64 = 8.0;
/// Degrees of freedom above which the error counts as known.
const NORMAL_ABOVE_DF: f64 = 1e5;

/// What is tested: how many parts, how well the error is known, how rare chance
/// has to be.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Test {
    /// Parts of the vector, 1 at least: 1 along a direction named beforehand, 3 for a
    /// colour with even error. Not whole where the error isn't even: the sum of
    /// its variances over the greatest of them.
    pub parts: f64,
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
    /// let test = inference::power::Test { parts: 1.0, df: 8.0, tail: 0.05 };
    /// // Two arms of 5 that differ by 2 standard deviations of a piece.
    /// let power = test.power(2.0 * (5.0_f64 / 2.0).sqrt());
    /// assert_eq!(format!("{power:.3}"), "0.791");
    /// ```
    pub fn power(&self, length: f64) -> f64 {
        self.limit().exceeded(length)
    }

    /// The length that is shown with that frequency (`tail` < `power` < 1), in
    /// standard errors of one part.
    pub fn smallest(&self, power: f64) -> f64 {
        let limit = self.limit();
        let mut high = 1.0;
        while limit.exceeded(high) < power {
            high *= 2.0;
        }
        let mut low = 0.0;
        for _ in 0..HALVINGS {
            let middle = 0.5 * (low + high);
            if limit.exceeded(middle) < power {
                low = middle;
            } else {
                high = middle;
            }
        }
        0.5 * (low + high)
    }

    fn limit(&self) -> Limit {
        let parts = self.parts;
        let df = self.df.min(NORMAL_ABOVE_DF);
        let reached = parts * quantile::fisher(1.0 - self.tail, parts, df);
        Limit {
            half_parts: parts / 2.0,
            half_df: df / 2.0,
            share: reached / (reached + df),
        }
    }
}

/// How often an F with those degrees of freedom exceeds `f`, its numerator being the
/// square of a vector of that true length in standard errors of one part.
pub(crate) fn exceeded(parts: f64, df: f64, f: f64, length: f64) -> f64 {
    let reached = parts * f;
    let limit = Limit {
        half_parts: parts / 2.0,
        half_df: df / 2.0,
        share: reached / (reached + df),
    };
    if f > 0.0 { limit.exceeded(length) } else { 1.0 }
}

/// What chance seldom exceeds.
#[derive(Clone, Copy)]
struct Limit {
    half_parts: f64,
    half_df: f64,
    /// The squared length's share of itself and the error's sum of squares.
    share: f64,
}

impl Limit {
    /// How often a vector of that true length exceeds it: a sum of beta
    /// distributions with Poisson weights, each got from the one before.
    fn exceeded(&self, length: f64) -> f64 {
        let (x, b) = (self.share, self.half_df);
        let mean = length * length / 2.0;
        let reach = REACH * (mean.sqrt() + 1.0);
        let first = (mean - reach).max(0.0).floor();
        let mut a = self.half_parts + first;
        let mut below = beta_reg(a, b, x);
        let mut step = libm::exp(
            a * libm::log(x) + b * libm::log1p(-x) + libm::lgamma(a + b)
                - libm::lgamma(a + 1.0)
                - libm::lgamma(b),
        );
        let mut weight = poisson(first, mean);
        let mut count = first;
        let mut within = 0.0;
        while count <= mean + reach {
            within += weight * below;
            below = (below - step).max(0.0);
            step *= x * (a + b) / (a + 1.0);
            a += 1.0;
            count += 1.0;
            weight *= mean / count;
        }
        (1.0 - within).clamp(0.0, 1.0)
    }
}

fn poisson(count: f64, mean: f64) -> f64 {
    if count == 0.0 {
        return libm::exp(-mean);
    }
    libm::exp(count * libm::log(mean) - mean - libm::lgamma(count + 1.0))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn without_a_difference_chance_alone_shows_one() {
        for parts in [1.0, 1.7, 3.0] {
            for df in [1.0, 4.5, 60.0, 1e9] {
                let test = Test {
                    parts,
                    df,
                    tail: 0.05,
                };
                let power = test.power(0.0);
                assert!((power - 0.05).abs() < 5e-5, "{parts} {df}: {power}");
            }
        }
    }

    #[test]
    fn power_and_smallest_undo_each_other() {
        for df in [2.0, 8.0, 22.0, 1e9] {
            for parts in [1.0, 1.7, 3.0] {
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
