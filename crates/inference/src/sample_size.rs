//! How many pieces two arms need.
//!
//! Both arms have as many pieces, and pieces of either arm scatter alike.
//! Differences and margins are in standard deviations of one piece, levels and
//! powers are shares between 0 and 1.

use crate::text;
use crate::{InferenceError, power::Test};

/// Pieces above which no arm is looked for.
const MOST_PER_ARM: f64 = 1e6;
/// Steps of halving; a number of pieces then holds to 1e-9 of itself.
const HALVINGS: usize = 52;

/// Pieces that each of two arms needs.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PerArm {
    /// Where the power is just reached, if parts of a piece counted; 2 at least.
    pub exact: f64,
    /// The whole number at or above it.
    pub whole: u32,
}

/// How often a difference is shown by Student's two-sided test at `tail` with
/// `per_arm` pieces in each arm (above 1, not whole if need be).
///
/// # Errors
/// A number out of its range.
///
/// # Source
/// The noncentral t, by [`Test::power`].
pub fn power(difference_sd: f64, per_arm: f64, tail: f64) -> Result<f64, InferenceError> {
    InferenceError::unless(
        difference_sd.is_finite(),
        text::error::difference(),
        difference_sd,
        text::error::a_finite_number(),
    )?;
    let test = two_arms(per_arm, tail)?;
    Ok(test.power(difference_sd.abs() * (per_arm / 2.0).sqrt()))
}

/// Pieces per arm with which a difference of that size is shown with that power by
/// Student's two-sided test at `tail`.
///
/// # Errors
/// A number out of its range, or more than a million pieces per arm.
///
/// ```
/// let needed = inference::sample_size::for_difference(1.2, 0.8, 0.05)?;
/// assert_eq!(needed.whole, 12);
/// # Ok::<(), inference::InferenceError>(())
/// ```
pub fn for_difference(
    difference_sd: f64,
    wanted: f64,
    tail: f64,
) -> Result<PerArm, InferenceError> {
    InferenceError::unless(
        difference_sd.is_finite() && difference_sd != 0.0,
        text::error::difference(),
        difference_sd,
        text::error::a_finite_number_other_than_0(),
    )?;
    check_wanted(wanted, tail)?;
    least(wanted, |per_arm| power(difference_sd, per_arm, tail))
}

/// How often two arms are shown to differ by less than `margin_sd` (above 0) by two
/// one-sided tests, each at `tail`, if they truly differ by `truly_sd`.
///
/// # Errors
/// A number out of its range.
///
/// # Source
/// Exact integration, by [`Test::equivalence`].
pub fn equivalence_power(
    margin_sd: f64,
    truly_sd: f64,
    per_arm: f64,
    tail: f64,
) -> Result<f64, InferenceError> {
    if !(margin_sd > 0.0 && margin_sd.is_finite()) {
        return Err(InferenceError::Margin(margin_sd));
    }
    InferenceError::unless(
        truly_sd.is_finite(),
        text::error::true_difference(),
        truly_sd,
        text::error::a_finite_number(),
    )?;
    let test = two_arms(per_arm, tail)?;
    let errors = (per_arm / 2.0).sqrt();
    Ok(test.equivalence(margin_sd * errors, truly_sd * errors))
}

/// Pieces per arm with which two arms that truly differ by `truly_sd` are shown with
/// that power to differ by less than `margin_sd`, each one-sided test at `tail`.
///
/// # Errors
/// A number out of its range, a true difference not within the margin, or more than
/// a million pieces per arm.
pub fn for_equivalence(
    margin_sd: f64,
    truly_sd: f64,
    wanted: f64,
    tail: f64,
) -> Result<PerArm, InferenceError> {
    if !(margin_sd > 0.0 && margin_sd.is_finite()) {
        return Err(InferenceError::Margin(margin_sd));
    }
    InferenceError::unless(
        truly_sd.abs() < margin_sd,
        text::error::true_difference(),
        truly_sd,
        text::error::a_number_within_the_margin(),
    )?;
    check_wanted(wanted, tail)?;
    least(wanted, |per_arm| {
        equivalence_power(margin_sd, truly_sd, per_arm, tail)
    })
}

fn two_arms(per_arm: f64, tail: f64) -> Result<Test, InferenceError> {
    InferenceError::unless(
        per_arm > 1.0 && per_arm <= MOST_PER_ARM,
        text::error::number_of_pieces_per_arm(),
        per_arm,
        text::error::above_1_and_at_most_a_million(),
    )?;
    InferenceError::unless_share(text::error::level(), tail)?;
    Ok(Test {
        parts: 1.0,
        df: 2.0 * (per_arm - 1.0),
        tail,
    })
}

fn check_wanted(wanted: f64, tail: f64) -> Result<(), InferenceError> {
    InferenceError::unless_share(text::error::level(), tail)?;
    InferenceError::unless(
        wanted > tail && wanted < 1.0,
        text::error::wanted_power(),
        wanted,
        text::error::above_the_level_and_below_1(),
    )
}

/// Halves the number of pieces until the power is just reached.
fn least(
    wanted: f64,
    power: impl Fn(f64) -> Result<f64, InferenceError>,
) -> Result<PerArm, InferenceError> {
    let mut low = 2.0;
    let mut high = 2.0;
    while power(high)? < wanted {
        if high == MOST_PER_ARM {
            return Err(InferenceError::OutOfReach {
                most: MOST_PER_ARM,
                reached: power(high)?,
                wanted,
            });
        }
        low = high;
        high = (2.0 * high).min(MOST_PER_ARM);
    }
    for _ in 0..HALVINGS {
        let middle = 0.5 * (low + high);
        if power(middle)? < wanted {
            low = middle;
        } else {
            high = middle;
        }
    }
    Ok(PerArm {
        exact: high,
        whole: high.ceil() as u32,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_whole_number_is_the_least_that_reaches_the_power() {
        for (margin, truly) in [(0.5, 0.0), (1.0, 0.3), (2.0, -0.5)] {
            let needed = for_equivalence(margin, truly, 0.8, 0.05).unwrap();
            let at = |n: u32| equivalence_power(margin, truly, f64::from(n), 0.05).unwrap();
            assert!(at(needed.whole) >= 0.8 && at(needed.whole - 1) < 0.8);
        }
    }

    #[test]
    fn a_vast_difference_needs_two() {
        let needed = for_difference(-40.0, 0.9, 0.05).unwrap();
        assert_eq!((needed.exact, needed.whole), (2.0, 2));
    }

    #[test]
    fn what_makes_no_sense_is_refused_in_words() {
        for (found, words) in [
            (
                for_difference(0.0, 0.8, 0.05),
                "the difference is 0; it has to be a finite number other than 0",
            ),
            (
                for_difference(f64::NAN, 0.8, 0.05),
                "the difference is NaN; it has to be a finite number other than 0",
            ),
            (
                for_difference(1.0, 1.0, 0.05),
                "the wanted power is 1; it has to be above the level and below 1",
            ),
            (
                for_difference(1.0, 0.8, 0.0),
                "the level is 0; it has to be above 0 and below 1",
            ),
            (
                for_equivalence(0.0, 0.0, 0.8, 0.05),
                "the margin 0 is not above 0",
            ),
            (
                for_equivalence(1.0, 1.0, 0.8, 0.05),
                "the true difference is 1; it has to be a number within the margin",
            ),
        ] {
            assert_eq!(found.unwrap_err().to_string(), words);
        }
        for per_arm in [0.0, 1.0, f64::INFINITY, f64::NAN, -3.0] {
            assert!(power(1.0, per_arm, 0.05).is_err());
        }
        let vast = for_difference(1e-6, 0.8, 0.05).unwrap_err().to_string();
        assert!(
            vast.starts_with("1000000 pieces per arm reach a power of 0.05"),
            "{vast}"
        );
    }
}
