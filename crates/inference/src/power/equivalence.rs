//! How often two one-sided tests show a difference to lie within a margin.

use super::Test;
use crate::quantile;

/// Standard deviations of the error's own scatter that are integrated to either side.
const REACH: f64 = 10.0;
/// Standard errors below which a true difference is none.
const NEAR_NOTHING: f64 = 1e-4;
/// Equal parts into which the range is cut, each with [`NODES`].
const CUTS: usize = 40;
/// Nodes and weights of the Gauss-Legendre rule with 6 points on -1 to 1.
const NODES: [(f64, f64); 6] = [
    (-0.932_469_514_203_152, 0.171_324_492_379_170_3),
    (-0.661_209_386_466_264_5, 0.360_761_573_048_138_6),
    (-0.238_619_186_083_196_9, 0.467_913_934_572_691),
    (0.238_619_186_083_196_9, 0.467_913_934_572_691),
    (0.661_209_386_466_264_5, 0.360_761_573_048_138_6),
    (0.932_469_514_203_152, 0.171_324_492_379_170_3),
];

impl Test {
    /// How often two one-sided tests, each at `tail`, show the difference to lie
    /// between `-margin` and `margin`, if it truly is `truly`; both in standard
    /// errors, `margin` above 0. Of the test `df`, `tail` and `parts`, 1 or 3, count;
    /// with 3 parts of equal error the length of the difference is to lie below the
    /// margin by Student's bound.
    ///
    /// # Source
    /// Schuirmann, Journal of Pharmacokinetics and Biopharmaceutics 15 (1987)
    /// 657-680; the power by integrating over the scatter of the standard error. Three
    /// parts by the noncentral chi distribution, which is elementary for 3.
    ///
    /// ```
    /// let test = inference::power::Test { parts: 1.0, df: 16.0, tail: 0.05 };
    /// // Two arms of 9 that are alike, a margin of 1.5 standard deviations of a piece.
    /// let power = test.equivalence(1.5 * (9.0_f64 / 2.0).sqrt(), 0.0);
    /// assert_eq!(format!("{power:.3}"), "0.838");
    /// ```
    pub fn equivalence(&self, margin: f64, truly: f64) -> f64 {
        let df = self.df.min(super::NORMAL_ABOVE_DF);
        let limit = quantile::student(1.0 - self.tail, df);
        over_error(df, margin / limit, |error| {
            let half = margin - limit * error;
            let along = normal_below(half - truly) - normal_below(-half - truly);
            if self.parts < 2.0 {
                along
            } else {
                along - beyond_in_three(half, truly.abs())
            }
        })
    }
}

/// The mean of `of` over an estimated standard error with those degrees of freedom,
/// its true value being 1; above `most` nothing is counted.
pub(crate) fn over_error(df: f64, most: f64, of: impl Fn(f64) -> f64) -> f64 {
    let spread = REACH / (2.0 * df).sqrt();
    let low = (1.0 - spread).max(0.0);
    let high = (1.0 + spread).min(most);
    if high <= low {
        return 0.0;
    }
    let half_df = df / 2.0;
    let scale = core::f64::consts::LN_2 + half_df * libm::log(half_df) - libm::lgamma(half_df);
    nodes(low, high, CUTS)
        .map(|(error, weight)| {
            let density = scale + (df - 1.0) * libm::log(error) - half_df * error * error;
            weight * libm::exp(density) * of(error)
        })
        .sum()
}

/// Points between `low` and `high`, cut into that many parts, with their weights.
pub(crate) fn nodes(low: f64, high: f64, cuts: usize) -> impl Iterator<Item = (f64, f64)> {
    let half = (high - low) / (2 * cuts) as f64;
    (0..cuts).flat_map(move |cut| {
        let middle = low + half * (2 * cut + 1) as f64;
        NODES.map(|(at, weight)| (middle + half * at, half * weight))
    })
}

/// How often a standard normal falls below that.
pub(crate) fn normal_below(value: f64) -> f64 {
    0.5 * libm::erfc(-value / core::f64::consts::SQRT_2)
}

/// What is further than `half` away in three directions though not in one of them.
fn beyond_in_three(half: f64, truly: f64) -> f64 {
    let density = |value: f64| libm::exp(-0.5 * value * value) / core::f64::consts::TAU.sqrt();
    if truly < NEAR_NOTHING {
        2.0 * half * density(half)
    } else {
        (density(half - truly) - density(half + truly)) / truly
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Chi-square with 3 degrees of freedom lies below 7.814728 with probability .95 and
    /// noncentral chi-square (noncentrality 4) below 10 with .7759219957, SciPy
    /// `ncx2.cdf(10, 3, 4)`.
    #[test]
    fn three_parts_are_a_chi_distribution() {
        let inside = |half: f64, truly: f64| {
            normal_below(half - truly) - normal_below(-half - truly) - beyond_in_three(half, truly)
        };
        assert!((inside(7.814_728_f64.sqrt(), 0.0) - 0.95).abs() < 1e-6);
        assert!((inside(10.0_f64.sqrt(), 2.0) - 0.775_921_995_7).abs() < 1e-6);
    }

    fn test(df: f64) -> Test {
        Test {
            parts: 1.0,
            df,
            tail: 0.05,
        }
    }

    #[test]
    fn at_the_margin_itself_it_is_shown_no_more_often_than_the_tail() {
        for df in [2.0, 8.0, 60.0, 1e9] {
            for margin in [1.0, 3.0, 8.0] {
                let power = test(df).equivalence(margin, margin);
                assert!(power < 0.05 + 1e-5, "{df} {margin}: {power}");
            }
            let far = test(df).equivalence(60.0, 60.0);
            assert!((far - 0.05).abs() < 1e-5, "{df}: {far}");
        }
    }

    #[test]
    fn the_error_always_has_some_value() {
        for df in [1.0, 2.0, 5.5, 40.0, 1e5] {
            assert!(
                (over_error(df, f64::MAX, |_| 1.0) - 1.0).abs() < 1e-7,
                "{df}"
            );
            let square = over_error(df, f64::MAX, |error| error * error);
            assert!((square - 1.0).abs() < 1e-7, "{df}: {square}");
        }
    }
}
