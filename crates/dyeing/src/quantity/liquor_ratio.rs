//! Liquor ratio: how much water the goods swim in.

use crate::text;
use std::{fmt, str::FromStr};

use serde::{Deserialize, Serialize};

use crate::{
    error::DyeingError,
    quantity::{Cursor, Mass, Volume, figure, number},
};

/// Litres of liquor for each kilogram of dry goods, 1 to 1000; written `20:1` or `1:20`.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(try_from = "f64", into = "f64")]
pub struct LiquorRatio(f64);

impl LiquorRatio {
    /// That many litres for each kilogram.
    ///
    /// # Errors
    /// Refuses what is below 1 or above 1000.
    pub fn new(litres_per_kilogram: f64) -> Result<Self, DyeingError> {
        let fine = (1.0..=1000.0).contains(&litres_per_kilogram);
        let range = text::quantity::n_1_to_1000_and_is_usually_10();
        DyeingError::unless(
            fine,
            text::quantity::liquor_ratio(),
            litres_per_kilogram,
            "L/kg",
            range,
        )
        .map(Self)
    }

    /// The ratio that a volume of liquor and a dry mass make.
    ///
    /// # Errors
    /// As [`LiquorRatio::new`]; 0 g of goods has no ratio.
    pub fn of(liquor: Volume, goods: Mass) -> Result<Self, DyeingError> {
        Self::new(liquor.millilitres() / goods.grams())
    }

    /// In litres for each kilogram.
    pub fn litres_per_kilogram(self) -> f64 {
        self.0
    }

    /// The liquor for a dry mass: ratio times mass.
    ///
    /// # Errors
    /// Refuses what overflows.
    pub fn liquor(self, goods: Mass) -> Result<Volume, DyeingError> {
        Volume::from_millilitres(self.0 * goods.grams())
    }
}

impl fmt::Display for LiquorRatio {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}:1", figure(self.0))
    }
}

impl FromStr for LiquorRatio {
    type Err = DyeingError;

    /// Reads `20:1`, `1:20` (both are litres to a kilogram) or `20`; faults point at a character.
    fn from_str(text: &str) -> Result<Self, DyeingError> {
        let mut cursor = Cursor::new(text);
        let first = number::read(&mut cursor)?;
        cursor.skip_space();
        let mut value = first;
        if cursor.eat(':') {
            cursor.skip_space();
            let at = cursor.at;
            let second = number::read(&mut cursor)?;
            value = match (first == 1.0, second == 1.0) {
                (_, true) => first,
                (true, false) => second,
                (false, false) => {
                    let why = text::quantity::one_side_of_a_liquor_ratio();
                    return Err(cursor.fault(at, why));
                }
            };
        }
        cursor.finish()?;
        Self::new(value).map_err(|e| cursor.fault(0, e.to_string()))
    }
}

impl TryFrom<f64> for LiquorRatio {
    type Error = DyeingError;

    fn try_from(value: f64) -> Result<Self, DyeingError> {
        Self::new(value)
    }
}

impl From<LiquorRatio> for f64 {
    fn from(ratio: LiquorRatio) -> f64 {
        ratio.0
    }
}
