//! Volume, in litres and in the measures of three kitchens.

use crate::text;
use std::{fmt, iter::Sum, ops::Add, str::FromStr};

use locale::Measures;
use serde::{Deserialize, Serialize};

use crate::{
    error::DyeingError,
    quantity::{figure, term},
};

/// A volume, not below 0; millilitres inside and in JSON.
///
/// ```
/// let salt: dyeing::Volume = "1/3 cup".parse()?;
/// assert_eq!(salt.metric(), "78.9 ml");
/// # Ok::<(), dyeing::DyeingError>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd, Default, Serialize, Deserialize)]
#[serde(try_from = "f64", into = "f64")]
pub struct Volume(f64);

/// A unit of volume.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum VolumeUnit {
    /// A thousandth of a litre.
    Millilitre,
    /// Ten millilitres.
    Centilitre,
    /// A hundred millilitres.
    Decilitre,
    /// A cubic decimetre.
    Litre,
    /// US customary: a 768th of a US gallon.
    UsTeaspoon,
    /// US customary: three teaspoons.
    UsTablespoon,
    /// US customary: two tablespoons.
    UsFluidOunce,
    /// US customary: a sixteenth of a US gallon.
    UsCup,
    /// The cup of US nutrition labels.
    UsLegalCup,
    /// US liquid pint: two cups.
    UsPint,
    /// US liquid quart: four cups.
    UsQuart,
    /// US gallon: 231 cubic inches.
    UsGallon,
    /// Metric kitchens, and British spoons of today.
    MetricTeaspoon,
    /// Metric kitchens, and British spoons of today; Australia's is larger.
    MetricTablespoon,
    /// Metric kitchens: a quarter of a litre.
    MetricCup,
    /// Australia's tablespoon: four teaspoons.
    AustralianTablespoon,
    /// Imperial: a 160th of an imperial gallon.
    ImperialFluidOunce,
    /// Imperial: half a pint.
    ImperialCup,
    /// Imperial: an eighth of an imperial gallon.
    ImperialPint,
    /// Imperial: two pints.
    ImperialQuart,
    /// Imperial gallon.
    ImperialGallon,
}

impl VolumeUnit {
    /// The unit in millilitres, exact by definition.
    pub fn millilitres(self) -> f64 {
        match self {
            Self::Millilitre => 1.0,
            Self::Centilitre => 10.0,
            Self::Decilitre => 100.0,
            Self::Litre => 1000.0,
            Self::UsTeaspoon => 4.928_921_593_75,
            Self::UsTablespoon => 14.786_764_781_25,
            Self::UsFluidOunce => 29.573_529_562_5,
            Self::UsCup => 236.588_236_5,
            Self::UsLegalCup => 240.0,
            Self::UsPint => 473.176_473,
            Self::UsQuart => 946.352_946,
            Self::UsGallon => 3_785.411_784,
            Self::MetricTeaspoon => 5.0,
            Self::MetricTablespoon => 15.0,
            Self::MetricCup => 250.0,
            Self::AustralianTablespoon => 20.0,
            Self::ImperialFluidOunce => 28.413_062_5,
            Self::ImperialCup => 284.130_625,
            Self::ImperialPint => 568.261_25,
            Self::ImperialQuart => 1_136.522_5,
            Self::ImperialGallon => 4_546.09,
        }
    }
}

impl Volume {
    /// No volume at all.
    pub const ZERO: Self = Self(0.0);

    /// That many millilitres.
    ///
    /// # Errors
    /// Refuses what is below 0 or not finite.
    pub fn from_millilitres(ml: f64) -> Result<Self, DyeingError> {
        DyeingError::unless(
            ml >= 0.0,
            text::quantity::volume(),
            ml,
            "ml",
            text::quantity::n_0_or_more(),
        )
        .map(Self)
    }

    /// That many of a unit.
    ///
    /// # Errors
    /// As [`Volume::from_millilitres`].
    pub fn new(value: f64, unit: VolumeUnit) -> Result<Self, DyeingError> {
        Self::from_millilitres(value * unit.millilitres())
    }

    /// In millilitres.
    pub fn millilitres(self) -> f64 {
        self.0
    }

    /// In litres.
    pub fn litres(self) -> f64 {
        self.0 / 1000.0
    }

    /// In another unit.
    pub fn in_unit(self, unit: VolumeUnit) -> f64 {
        self.0 / unit.millilitres()
    }

    /// That many times as much.
    ///
    /// # Errors
    /// Refuses a factor below 0 or not finite.
    pub fn times(self, factor: f64) -> Result<Self, DyeingError> {
        Self::from_millilitres(self.0 * factor)
    }

    /// In metric units, to four digits: `78.9 ml`, `4.675 L`.
    pub fn metric(self) -> String {
        if self.0 >= 1000.0 {
            format!("{} L", figure(self.0 / 1000.0))
        } else {
            format!("{} ml", figure(self.0))
        }
    }
}

impl Volume {
    /// In US customary units, to three digits: `1.32 US gal`, `6.76 US fl oz`, `1.01 US tsp`.
    pub fn us_customary(self) -> String {
        let (unit, name) = match self.in_unit(VolumeUnit::UsFluidOunce) {
            // From half a gallon and from half an ounce on.
            ounces if ounces >= 64.0 => (VolumeUnit::UsGallon, text::quantity::us_gal()),
            ounces if ounces >= 0.5 => (VolumeUnit::UsFluidOunce, text::quantity::us_fl_oz()),
            _ => (VolumeUnit::UsTeaspoon, text::quantity::us_tsp()),
        };
        format!("{} {name}", figure(self.in_unit(unit)))
    }

    /// As the locale has it: `5 L`, or `1.32 US gal (5 L)`.
    pub fn shown(self) -> String {
        match locale::current().measures {
            Measures::Metric => self.metric(),
            Measures::UsCustomary => locale::beside(&self.metric(), &self.us_customary()),
        }
    }
}

impl fmt::Display for Volume {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.shown())
    }
}

impl FromStr for Volume {
    type Err = DyeingError;

    /// Reads `1.5 L`, `1/3 cup`, `2 imperial pints`, `1 cup + 2 tbsp`; a measure without the name
    /// of a kitchen is US customary. Faults point at a character.
    fn from_str(text: &str) -> Result<Self, DyeingError> {
        term::volume(text, crate::Kitchen::Us)
    }
}

impl Add for Volume {
    type Output = Self;

    fn add(self, other: Self) -> Self {
        Self(self.0 + other.0)
    }
}

impl Sum for Volume {
    fn sum<I: Iterator<Item = Self>>(all: I) -> Self {
        all.fold(Self::ZERO, Add::add)
    }
}

impl TryFrom<f64> for Volume {
    type Error = DyeingError;

    fn try_from(ml: f64) -> Result<Self, DyeingError> {
        Self::from_millilitres(ml)
    }
}

impl From<Volume> for f64 {
    fn from(volume: Volume) -> f64 {
        volume.0
    }
}
