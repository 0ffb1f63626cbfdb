//! Mass.

use crate::text;
use std::{fmt, iter::Sum, ops::Add, str::FromStr};

use locale::Measures;
use serde::{Deserialize, Serialize};

use crate::{
    error::DyeingError,
    quantity::{figure, term},
};

/// A mass, not below 0; grams inside and in JSON.
///
/// ```
/// let goods: dyeing::Mass = "1 lb 4 oz".parse()?;
/// assert_eq!(goods.to_string(), "567 g (1 lb 4 oz)");
/// # Ok::<(), dyeing::DyeingError>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd, Default, Serialize, Deserialize)]
#[serde(try_from = "f64", into = "f64")]
pub struct Mass(f64);

/// A unit of mass. Ounce, pound and grain are avoirdupois.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum MassUnit {
    /// A thousandth of a gram.
    Milligram,
    /// The gram.
    Gram,
    /// A thousand grams.
    Kilogram,
    /// A seven thousandth of a pound.
    Grain,
    /// A sixteenth of a pound.
    Ounce,
    /// 453.59237 g, by the international agreement of 1959.
    Pound,
}

impl MassUnit {
    /// The unit in grams, exact by definition.
    pub fn grams(self) -> f64 {
        match self {
            Self::Milligram => 0.001,
            Self::Gram => 1.0,
            Self::Kilogram => 1000.0,
            Self::Grain => 0.064_798_91,
            Self::Ounce => 28.349_523_125,
            Self::Pound => 453.592_37,
        }
    }
}

impl Mass {
    /// No mass at all.
    pub const ZERO: Self = Self(0.0);

    /// That many grams.
    ///
    /// # Errors
    /// Refuses what is below 0 or not finite.
    pub fn from_grams(grams: f64) -> Result<Self, DyeingError> {
        DyeingError::unless(
            grams >= 0.0,
            text::quantity::mass(),
            grams,
            "g",
            text::quantity::n_0_or_more(),
        )
        .map(Self)
    }

    /// That many of a unit.
    ///
    /// # Errors
    /// As [`Mass::from_grams`].
    pub fn new(value: f64, unit: MassUnit) -> Result<Self, DyeingError> {
        Self::from_grams(value * unit.grams())
    }

    /// In grams.
    pub fn grams(self) -> f64 {
        self.0
    }

    /// In another unit.
    pub fn in_unit(self, unit: MassUnit) -> f64 {
        self.0 / unit.grams()
    }

    /// That many times as much.
    ///
    /// # Errors
    /// Refuses a factor below 0 or not finite.
    pub fn times(self, factor: f64) -> Result<Self, DyeingError> {
        Self::from_grams(self.0 * factor)
    }

    /// In metric units, to four digits: `6.25 g`, `1.5 kg`.
    pub fn metric(self) -> String {
        if self.0 >= 1000.0 {
            format!("{} kg", figure(self.0 / 1000.0))
        } else if self.0 > 0.0 && self.0 < 0.1 {
            format!("{} mg", figure(self.0 * 1000.0))
        } else {
            format!("{} g", figure(self.0))
        }
    }

    /// As the locale has it: `250 g`, or `8.82 oz (250 g)`.
    pub fn shown(self) -> String {
        match locale::current().measures {
            Measures::Metric => self.metric(),
            Measures::UsCustomary => self.to_string(),
        }
    }

    /// In pounds and ounces, to a hundredth of an ounce: `1 lb 4 oz`.
    pub fn avoirdupois(self) -> String {
        // To the tenth of an ounce where there are pounds, else to the hundredth.
        let all = self.in_unit(MassUnit::Ounce);
        let step = if all < 16.0 { 0.01 } else { 0.1 };
        let rounded = libm::round(all / step) * step;
        let pounds = libm::floor(rounded / 16.0 + 1e-9);
        let ounces = libm::round((rounded - pounds * 16.0) / step) * step;
        match (pounds > 0.0, ounces > 0.0) {
            (true, true) => text::quantity::lb_oz(pounds, figure(ounces)),
            (true, false) => format!("{pounds} lb"),
            (false, true) => format!("{} oz", figure(ounces)),
            (false, false) if self.0 > 0.0 => text::quantity::under_0_01_oz().into(),
            (false, false) => "0 oz".into(),
        }
    }
}

impl fmt::Display for Mass {
    /// In both systems, the locale's first.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&locale::beside(&self.metric(), &self.avoirdupois()))
    }
}

impl FromStr for Mass {
    type Err = DyeingError;

    /// Reads `250 g`, `1/2 lb`, `1 lb 4 oz`; faults point at a character.
    fn from_str(text: &str) -> Result<Self, DyeingError> {
        term::mass(text)
    }
}

impl Add for Mass {
    type Output = Self;

    fn add(self, other: Self) -> Self {
        Self(self.0 + other.0)
    }
}

impl Sum for Mass {
    fn sum<I: Iterator<Item = Self>>(all: I) -> Self {
        all.fold(Self::ZERO, Add::add)
    }
}

impl TryFrom<f64> for Mass {
    type Error = DyeingError;

    fn try_from(grams: f64) -> Result<Self, DyeingError> {
        Self::from_grams(grams)
    }
}

impl From<Mass> for f64 {
    fn from(mass: Mass) -> f64 {
        mass.0
    }
}
