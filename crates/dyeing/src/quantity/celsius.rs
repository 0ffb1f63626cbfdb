//! Temperature.

use crate::text;
use std::{fmt, str::FromStr};

use locale::Measures;
use serde::{Deserialize, Serialize};

use crate::{
    error::DyeingError,
    quantity::{Cursor, figure, number, unit},
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
        DyeingError::unless(
            fine,
            text::quantity::temperature(),
            degrees,
            "°C",
            text::quantity::n_0_to_140_c(),
        )
        .map(Self)
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

impl Celsius {
    /// A bare number on the locale's scale: `60` is 60 °C, or with US customary measures 60 °F.
    ///
    /// # Errors
    /// As [`Celsius::new`].
    pub fn on_local_scale(degrees: f64) -> Result<Self, DyeingError> {
        Self::new(Self::local_to_celsius(degrees))
    }

    /// A number on the locale's scale in degrees Celsius, whether a bath can have it or not.
    pub fn local_to_celsius(degrees: f64) -> f64 {
        match locale::current().measures {
            Measures::Metric => degrees,
            Measures::UsCustomary => (degrees - 32.0) / 1.8,
        }
    }

    /// A difference of temperatures on the locale's scale: `5 °C`, or `9 °F`.
    pub fn difference_shown(kelvins: f64) -> String {
        let degrees = match locale::current().measures {
            Measures::Metric => kelvins,
            Measures::UsCustomary => kelvins * 1.8,
        };
        format!("{} {}", figure(degrees), Self::local_scale())
    }

    /// The number on the locale's scale.
    pub fn local_degrees(self) -> f64 {
        match locale::current().measures {
            Measures::Metric => self.0,
            Measures::UsCustomary => self.fahrenheit(),
        }
    }

    /// The locale's scale: `°C` or `°F`.
    pub fn local_scale() -> &'static str {
        match locale::current().measures {
            Measures::Metric => "°C",
            Measures::UsCustomary => "°F",
        }
    }

    /// On the locale's scale alone, to three digits: `61.5 °C`, or `143 °F`.
    pub fn shown(self) -> String {
        format!("{} {}", figure(self.local_degrees()), Self::local_scale())
    }
}

impl fmt::Display for Celsius {
    /// To the degree on both scales, the locale's first.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let [celsius, fahrenheit] = [self.0, self.fahrenheit()];
        f.write_str(&locale::beside(
            &format!("{celsius:.0} °C"),
            &format!("{fahrenheit:.0} °F"),
        ))
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
