//! Time.

use crate::text;
use std::{fmt, str::FromStr};

use serde::{Deserialize, Serialize};

use crate::{
    error::DyeingError,
    quantity::{figure, term},
};

/// A length of time, not below 0; minutes inside and in JSON.
///
/// ```
/// let hold: dyeing::Minutes = "1 h 30 min".parse()?;
/// assert_eq!((hold.minutes(), hold.to_string()), (90.0, "1 h 30 min".to_owned()));
/// # Ok::<(), dyeing::DyeingError>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd, Default, Serialize, Deserialize)]
#[serde(try_from = "f64", into = "f64")]
pub struct Minutes(f64);

impl Minutes {
    /// That many minutes.
    ///
    /// # Errors
    /// Refuses what is below 0 or not finite.
    pub fn new(minutes: f64) -> Result<Self, DyeingError> {
        DyeingError::unless(
            minutes >= 0.0,
            text::quantity::time(),
            minutes,
            "min",
            text::quantity::n_0_or_more(),
        )
        .map(Self)
    }

    /// In minutes.
    pub fn minutes(self) -> f64 {
        self.0
    }
}

impl fmt::Display for Minutes {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.0 < 100.0 && self.0 != 60.0 && self.0 != 90.0 {
            return write!(f, "{} min", figure(self.0));
        }
        let whole = libm::round(self.0);
        let hours = libm::floor(whole / 60.0);
        match whole - hours * 60.0 {
            0.0 => write!(f, "{hours} h"),
            rest => write!(f, "{hours} h {rest} min"),
        }
    }
}

impl FromStr for Minutes {
    type Err = DyeingError;

    /// Reads `20 min`, `1 h 30 min`, `45 s`; faults point at a character.
    fn from_str(text: &str) -> Result<Self, DyeingError> {
        term::minutes(text)
    }
}

impl TryFrom<f64> for Minutes {
    type Error = DyeingError;

    fn try_from(minutes: f64) -> Result<Self, DyeingError> {
        Self::new(minutes)
    }
}

impl From<Minutes> for f64 {
    fn from(time: Minutes) -> f64 {
        time.0
    }
}
