//! The nine grades of a grey scale.

use std::fmt;

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
