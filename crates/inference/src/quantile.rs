//! Quantiles and tails of the usual distributions.

use crate::Interval;
use statrs::distribution::{ChiSquared, ContinuousCDF, FisherSnedecor, Normal, StudentsT};

/// Degrees of freedom above which Student's t is the normal for all purposes.
const NORMAL_ABOVE_DF: f64 = 1e7;

/// The value below which a standard normal falls with probability `p`, 0 < p < 1.
///
/// ```
/// assert_eq!(format!("{:.4}", inference::quantile::normal(0.975)), "1.9600");
/// ```
pub fn normal(p: f64) -> f64 {
    Normal::standard().inverse_cdf(p)
}

/// The probability that a standard normal lies above `value`.
pub fn normal_above(value: f64) -> f64 {
    Normal::standard().sf(value)
}

/// The value below which Student's t with `df` (> 0) falls with probability `p`.
///
/// ```
/// assert_eq!(format!("{:.4}", inference::quantile::student(0.975, 4.0)), "2.7764");
/// ```
pub fn student(p: f64, df: f64) -> f64 {
    match t(df) {
        Some(t) => t.inverse_cdf(p),
        None => normal(p),
    }
}

/// The probability that Student's t with `df` (> 0) lies above `value`.
pub fn student_above(value: f64, df: f64) -> f64 {
    match t(df) {
        Some(t) => t.sf(value),
        None => Normal::standard().sf(value),
    }
}

/// The value below which chi-square with `df` (> 0) falls with probability `p`.
///
/// ```
/// assert_eq!(format!("{:.4}", inference::quantile::chi_square(0.95, 3.0)), "7.8147");
/// ```
pub fn chi_square(p: f64, df: f64) -> f64 {
    ChiSquared::new(df).map_or(f64::NAN, |chi_square| chi_square.inverse_cdf(p))
}

/// The probability that chi-square with `df` (> 0) lies above `value`.
pub fn chi_square_above(value: f64, df: f64) -> f64 {
    ChiSquared::new(df).map_or(f64::NAN, |chi_square| chi_square.sf(value))
}

/// The value below which F with `above` and `below` degrees of freedom (> 0)
/// falls with probability `p`.
///
/// ```
/// assert_eq!(format!("{:.4}", inference::quantile::fisher(0.95, 3.0, 10.0)), "3.7083");
/// ```
pub fn fisher(p: f64, above: f64, below: f64) -> f64 {
    if below > NORMAL_ABOVE_DF {
        return chi_square(p, above) / above;
    }
    FisherSnedecor::new(above, below).map_or(f64::NAN, |f| f.inverse_cdf(p))
}

/// The probability that F with `above` and `below` degrees of freedom (> 0) lies
/// above `value`.
pub fn fisher_above(value: f64, above: f64, below: f64) -> f64 {
    if below > NORMAL_ABOVE_DF {
        return chi_square_above(value * above, above);
    }
    FisherSnedecor::new(above, below).map_or(f64::NAN, |f| f.sf(value))
}

/// The middle share `level` of drawn values (one at least), whose order changes on the way.
///
/// ```
/// let mut drawn: Vec<f64> = (0..=100).rev().map(f64::from).collect();
/// let middle = inference::quantile::middle(&mut drawn, 0.9);
/// assert_eq!((middle.low, middle.high), (5.0, 95.0));
/// ```
///
/// # Panics
/// No value at all.
pub fn middle(values: &mut [f64], level: f64) -> Interval {
    let last = values.len() - 1;
    let at = |share: f64| ((share * last as f64).round() as usize).min(last);
    let (low, high) = (at((1.0 - level) / 2.0), at((1.0 + level) / 2.0));
    let mut nth = |n: usize| *values.select_nth_unstable_by(n, f64::total_cmp).1;
    Interval {
        low: nth(low),
        high: nth(high),
    }
}

fn t(df: f64) -> Option<StudentsT> {
    if df > NORMAL_ABOVE_DF {
        return None;
    }
    StudentsT::new(0.0, 1.0, df).ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn quantile_and_tail_undo_each_other() {
        for df in [1.0, 2.5, 9.0, 400.0, 1e9] {
            for p in [0.005, 0.025, 0.5, 0.95] {
                assert!((student_above(student(p, df), df) - (1.0 - p)).abs() < 1e-7);
            }
        }
    }
}
