//! Percent of two kinds that must not be mixed up.

use crate::text;
use std::fmt;

use serde::{Deserialize, Serialize};

use crate::{
    error::DyeingError,
    quantity::{LiquorRatio, Mass, Volume, figure},
};

/// Percent on weight of fibre (% owf): grams for each 100 g of dry goods.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(try_from = "f64", into = "f64")]
pub struct PercentOwf(f64);

/// Percent weight by volume (% w/v): grams in each 100 ml of solution.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(try_from = "f64", into = "f64")]
pub struct PercentWv(f64);

impl PercentOwf {
    /// That many percent on weight of fibre.
    ///
    /// # Errors
    /// Refuses what is below 0 or not finite; what is too much depends on what it is of.
    pub fn new(percent: f64) -> Result<Self, DyeingError> {
        DyeingError::unless(
            percent >= 0.0,
            text::quantity::share(),
            percent,
            "% owf",
            text::quantity::n_0_or_more(),
        )
        .map(Self)
    }

    /// In percent.
    pub fn percent(self) -> f64 {
        self.0
    }

    /// The mass for dry goods: goods times percent / 100.
    ///
    /// ```
    /// let dye = dyeing::PercentOwf::new(2.5)?.of("250 g".parse()?)?;
    /// assert_eq!(dye.grams(), 6.25);
    /// # Ok::<(), dyeing::DyeingError>(())
    /// ```
    ///
    /// # Errors
    /// Refuses what overflows.
    pub fn of(self, goods: Mass) -> Result<Mass, DyeingError> {
        goods.times(self.0 / 100.0)
    }

    /// The same amount by litre of liquor, g/L = 10 % owf / liquor ratio.
    pub fn grams_per_litre(self, ratio: LiquorRatio) -> f64 {
        10.0 * self.0 / ratio.litres_per_kilogram()
    }
}

impl PercentWv {
    /// That many grams in each 100 ml.
    ///
    /// # Errors
    /// Refuses 0 and less, and more than 100.
    pub fn new(percent: f64) -> Result<Self, DyeingError> {
        let fine = percent > 0.0 && percent <= 100.0;
        let range = text::quantity::above_0_and_at_most_100();
        DyeingError::unless(
            fine,
            text::quantity::strength_of_the_solution(),
            percent,
            "% w/v",
            range,
        )
        .map(Self)
    }

    /// In percent.
    pub fn percent(self) -> f64 {
        self.0
    }

    /// The volume of solution that holds a mass: mass / (percent / 100).
    ///
    /// # Errors
    /// Refuses what overflows.
    pub fn holding(self, solid: Mass) -> Result<Volume, DyeingError> {
        Volume::from_millilitres(solid.grams() / (self.0 / 100.0))
    }

    /// The mass that a volume of solution holds.
    ///
    /// # Errors
    /// Refuses what overflows.
    pub fn within(self, solution: Volume) -> Result<Mass, DyeingError> {
        Mass::from_grams(solution.millilitres() * self.0 / 100.0)
    }
}

impl fmt::Display for PercentOwf {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} % owf", figure(self.0))
    }
}

impl fmt::Display for PercentWv {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} % w/v", figure(self.0))
    }
}

impl TryFrom<f64> for PercentOwf {
    type Error = DyeingError;

    fn try_from(percent: f64) -> Result<Self, DyeingError> {
        Self::new(percent)
    }
}

impl From<PercentOwf> for f64 {
    fn from(share: PercentOwf) -> f64 {
        share.0
    }
}

impl TryFrom<f64> for PercentWv {
    type Error = DyeingError;

    fn try_from(percent: f64) -> Result<Self, DyeingError> {
        Self::new(percent)
    }
}

impl From<PercentWv> for f64 {
    fn from(share: PercentWv) -> f64 {
        share.0
    }
}
