//! Several arms against one control: how far the farthest of them gets by chance.

use crate::text;
use crate::{
    InferenceError,
    power::equivalence::{nodes, normal_below, over_error},
    quantile,
};

/// Standard errors of the control that are integrated.
const REACH: f64 = 8.0;
/// Parts into which that range is cut.
const CUTS: usize = 10;
/// Steps of the search for a limit; it holds to 1e-9 long before.
const STEPS: usize = 40;
/// Search ends when the probability is met to this.
const CLOSE: f64 = 1e-10;
/// Share of a contrast's variance that the control holds at most; beyond it, the
/// contrasts are one and the same.
const MOST_SHARED: f64 = 0.99;

/// Contrasts with one control whose errors go together because the control is in
/// all of them.
#[derive(Debug, Clone, PartialEq)]
pub struct Dunnett {
    /// What a contrast shares with the others, as a correlation with the control's
    /// error, and how many contrasts share as much.
    shared: Vec<(f64, u32)>,
}

impl Dunnett {
    /// Arms that have as many units as the control.
    ///
    /// # Errors
    /// No arm.
    pub fn equal(several: usize) -> Result<Self, InferenceError> {
        Self::of(1.0, &vec![1.0; several])
    }

    /// Arms with those numbers of units (pieces or loads), all above 0.
    ///
    /// # Errors
    /// No arm, or a number that is not above 0.
    pub fn of(control: f64, arms: &[f64]) -> Result<Self, InferenceError> {
        let shares = arms.iter().map(|arm| {
            for units in [control, *arm] {
                let fine = units > 0.0 && units.is_finite();
                InferenceError::unless(
                    fine,
                    text::error::number_of_units(),
                    units,
                    text::error::above_0(),
                )?;
            }
            Ok((1.0 / control) / (1.0 / control + 1.0 / arm))
        });
        Self::sharing(&shares.collect::<Result<Vec<_>, _>>()?)
    }

    /// Contrasts of whose variance the control has those shares, from 0 to 1: two
    /// contrasts' correlation is the root of the product of their shares.
    pub(crate) fn sharing(shares: &[f64]) -> Result<Self, InferenceError> {
        if shares.is_empty() {
            return Err(InferenceError::TooFew { given: 0, least: 1 });
        }
        let mut shared: Vec<(f64, u32)> = Vec::new();
        for share in shares {
            let root = share.clamp(0.0, MOST_SHARED).sqrt();
            match shared
                .iter_mut()
                .find(|(known, _)| (known - root).abs() < 1e-9)
            {
                Some((_, count)) => *count += 1,
                None => shared.push((root, 1)),
            }
        }
        Ok(Self { shared })
    }

    /// Student's t that the farthest contrast exceeds with probability `tail`
    /// (between 0 and 1) by chance, on either side, with those degrees of freedom
    /// (1 at least).
    ///
    /// # Source
    /// Dunnett, Journal of the American Statistical Association 50 (1955) 1096-1121,
    /// by integrating twice.
    ///
    /// ```
    /// let three = inference::dunnett::Dunnett::equal(3)?;
    /// assert_eq!(format!("{:.2}", three.limit(0.05, 10.0)), "2.76");
    /// # Ok::<(), inference::InferenceError>(())
    /// ```
    pub fn limit(&self, tail: f64, df: f64) -> f64 {
        let several: u32 = self.shared.iter().map(|(_, count)| count).sum();
        let off = |limit: f64| self.p(limit, df) - tail;
        // One test is less strict, and separate tests of each are stricter.
        let mut low = quantile::student(1.0 - tail / 2.0, df);
        let mut high = quantile::student(1.0 - tail / f64::from(2 * several), df);
        if several == 1 {
            return low;
        }
        let (mut off_low, mut off_high) = (off(low), off(high));
        let mut last = 0.0;
        for _ in 0..STEPS {
            let middle = (low * off_high - high * off_low) / (off_high - off_low);
            let found = off(middle);
            if found.abs() < CLOSE || high - low < 1e-10 * high {
                return middle;
            }
            // A bound that stays twice counts for half, so that both close in.
            if found > 0.0 {
                (low, off_low) = (middle, found);
                off_high *= if last > 0.0 { 0.5 } else { 1.0 };
            } else {
                (high, off_high) = (middle, found);
                off_low *= if last < 0.0 { 0.5 } else { 1.0 };
            }
            last = found;
        }
        0.5 * (low + high)
    }

    /// How often the farthest contrast gets as far as that t by chance, on either
    /// side: the adjusted probability of a contrast with that t.
    pub fn p(&self, t: f64, df: f64) -> f64 {
        let t = t.abs();
        // Both signs of the control's error give the same.
        let controls: Vec<(f64, f64)> = nodes(0.0, REACH, CUTS)
            .map(|(control, weight)| (control, 2.0 * weight * normal_density(control)))
            .collect();
        let within = over_error(df, f64::MAX, |error| {
            let end = t * error;
            let at = |control: f64| -> f64 {
                let one = |(root, count): &(f64, u32)| {
                    let own = (1.0 - root * root).sqrt();
                    let middle = root * control;
                    let below = normal_below((end - middle) / own);
                    (below - normal_below((-end - middle) / own)).powi(*count as i32)
                };
                self.shared.iter().map(one).product()
            };
            controls
                .iter()
                .map(|(control, weight)| weight * at(*control))
                .sum()
        });
        (1.0 - within).clamp(0.0, 1.0)
    }
}

fn normal_density(value: f64) -> f64 {
    libm::exp(-0.5 * value * value) / (2.0 * core::f64::consts::PI).sqrt()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Published: C. W. Dunnett, Biometrics 20 (1964) 482-491, two-sided 5 %, from memory.
    #[test]
    fn limits_agree_with_a_printed_table() {
        for (several, df, printed) in [
            (2, 5.0, "3.03"),
            (2, 10.0, "2.57"),
            (2, 20.0, "2.38"),
            (3, 5.0, "3.29"),
            (3, 10.0, "2.76"),
            (3, 20.0, "2.54"),
            (4, 10.0, "2.89"),
            (4, 20.0, "2.65"),
        ] {
            let limit = Dunnett::equal(several).unwrap().limit(0.05, df);
            assert_eq!(format!("{limit:.2}"), printed, "{several} {df}");
        }
    }

    #[test]
    fn contrasts_that_share_nothing_are_tests_of_their_own() {
        let apart = Dunnett::sharing(&[0.0, 0.0, 0.0]).unwrap();
        let limit = apart.limit(0.05, 1e9);
        let expected = quantile::normal(0.5 + 0.5 * libm::pow(0.95, 1.0 / 3.0));
        assert!((limit - expected).abs() < 1e-4, "{limit} {expected}");
    }

    #[test]
    fn a_greater_control_loosens_what_the_contrasts_share() {
        let large = Dunnett::of(40.0, &[4.0, 4.0, 4.0]).unwrap();
        let small = Dunnett::of(2.0, &[4.0, 4.0, 4.0]).unwrap();
        assert!(large.limit(0.05, 20.0) > small.limit(0.05, 20.0));
        assert!(Dunnett::equal(0).is_err());
        let none = Dunnett::of(0.0, &[4.0]).unwrap_err().to_string();
        assert_eq!(none, "the number of units is 0; it has to be above 0");
    }
}
