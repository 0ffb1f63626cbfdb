//! The nine grades of a grey scale.

use crate::ColourError;
use std::{fmt, str::FromStr};

/// A grade of the nine-step grey scale: 5 (no change), 4-5, 4, ... 1-2, 1.
///
/// Ordered: a better grade is greater. Prints as the trade writes it, `4-5`.
///
/// ```
/// use colour::grade::Grade;
/// assert_eq!(Grade::from_half_steps(9).to_string(), "4-5");
/// assert_eq!(Grade::from_half_steps(9).value(), 4.5);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Grade(u8);

impl Grade {
    /// The grade of that many half-steps: 2 is grade 1, 9 is 4-5, 10 is 5.
    /// Numbers beyond the scale become its ends.
    pub const fn from_half_steps(half_steps: u8) -> Self {
        if half_steps < 2 {
            Self(2)
        } else if half_steps > 10 {
            Self(10)
        } else {
            Self(half_steps)
        }
    }

    /// The grade as a number, 1.0 to 5.0 by 0.5.
    pub fn value(self) -> f64 {
        f64::from(self.0) / 2.0
    }
}

impl fmt::Display for Grade {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let whole = self.0 / 2;
        if self.0.is_multiple_of(2) {
            write!(f, "{whole}")
        } else {
            write!(f, "{whole}-{}", whole + 1)
        }
    }
}

impl FromStr for Grade {
    type Err = ColourError;

    /// Reads `4-5` as the trade writes it, also `4/5` and `4.5`.
    fn from_str(text: &str) -> Result<Self, ColourError> {
        let unknown = || ColourError::Grade { text: text.into() };
        let plain = text
            .trim()
            .replace(['/', '\u{2013}'], "-")
            .replace(',', ".");
        let half_steps = match plain.split_once('-') {
            Some((low, high)) => {
                let low: u8 = low.trim().parse().map_err(|_| unknown())?;
                let high: u8 = high.trim().parse().map_err(|_| unknown())?;
                if low.checked_add(1) != Some(high) || high > 5 {
                    return Err(unknown());
                }
                low * 2 + 1
            }
            None => {
                let twice = plain.parse::<f64>().map_err(|_| unknown())? * 2.0;
                if !(2.0..=10.0).contains(&twice) || twice.fract() != 0.0 {
                    return Err(unknown());
                }
                // A whole number from 2 to 10, by the line above.
                twice as u8
            }
        };
        if half_steps < 2 {
            return Err(unknown());
        }
        Ok(Self(half_steps))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn grades_come_back_and_others_are_refused() {
        for half_steps in 2..=10 {
            let grade = Grade::from_half_steps(half_steps);
            assert_eq!(grade.to_string().parse::<Grade>().unwrap(), grade);
        }
        for text in ["4/5", "4.5", " 4 - 5 ", "4,5", "4\u{2013}5"] {
            assert_eq!(text.parse::<Grade>().unwrap().to_string(), "4-5", "{text}");
        }
        for text in [
            "", "0", "6", "5-6", "0-1", "4-6", "4.25", "-1", "good", "255-0", "nan",
        ] {
            assert!(text.parse::<Grade>().is_err(), "{text}");
        }
    }
}
