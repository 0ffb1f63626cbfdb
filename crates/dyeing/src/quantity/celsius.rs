//! Temperature.

use std::{fmt, str::FromStr};

use serde::{Deserialize, Serialize};

use crate::{
    error::DyeingError,
    quantity::{Cursor, number, unit},
};

/// A temperature of a bath, 0 to 140 °C; degrees Celsius inside and in JSON.
///
/// ```
/// let warm: dyeing::Celsius = "140 °F".parse()?;
/// assert_eq!(warm.to_string(), "60 °C (140 °F)");
/// # Ok::<(), dyeing::DyeingError>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(try_from = "f64", into = "f64")]
pub struct Celsius(f64);

impl Celsius {
    /// That many degrees Celsius.
    ///
    /// # Errors
    /// Refuses what no bath has: below 0 or above 140 °C.
    pub fn new(degrees: f64) -> Result<Self, DyeingError> {
        let fine = (0.0..=140.0).contains(&degrees);
        DyeingError::unless(fine, "temperature", degrees, "°C", "0 to 140 °C").map(Self)
    }

    /// That many degrees Fahrenheit.
    ///
    /// # Errors
    /// As [`Celsius::new`].
    pub fn from_fahrenheit(degrees: f64) -> Result<Self, DyeingError> {
        Self::new((degrees - 32.0) / 1.8)
    }

    /// In degrees Celsius.
    pub fn celsius(self) -> f64 {
        self.0
    }

    /// In degrees Fahrenheit.
    pub fn fahrenheit(self) -> f64 {
        self.0 * 1.8 + 32.0
    }
}

impl fmt::Display for Celsius {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:.0} °C ({:.0} °F)", self.0, self.fahrenheit())
    }
}

impl FromStr for Celsius {
    type Err = DyeingError;

    /// Reads `60 °C`, `60 C`, `140 F`; faults point at a character.
    fn from_str(text: &str) -> Result<Self, DyeingError> {
        let mut cursor = Cursor::new(text);
        let value = number::read(&mut cursor)?;
        let at = cursor.at;
        let scale = unit::temperature(&mut cursor)?;
        cursor.finish()?;
        let read = match scale {
            unit::Scale::Celsius => Self::new(value),
            unit::Scale::Fahrenheit => Self::from_fahrenheit(value),
        };
        read.map_err(|e| cursor.fault(at.saturating_sub(1), e.to_string()))
    }
}

impl TryFrom<f64> for Celsius {
    type Error = DyeingError;

    fn try_from(degrees: f64) -> Result<Self, DyeingError> {
        Self::new(degrees)
    }
}

impl From<Celsius> for f64 {
    fn from(temperature: Celsius) -> f64 {
        temperature.0
    }
}
