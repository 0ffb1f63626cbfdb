//! Salts with and without crystal water, regain, and acids of other strength.

use crate::text;
use crate::{Mass, error::DyeingError};

/// A salt that is sold with crystal water too.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Hydrate {
    /// Glauber's salt crystals, with ten waters.
    GlauberDecahydrate,
    /// Washing soda, with ten waters.
    SodaDecahydrate,
    /// Soda with one water.
    SodaMonohydrate,
}

impl Hydrate {
    /// How many grams of it do the work of one gram without crystal water, by molar masses.
    pub fn grams_for_one(self) -> f64 {
        match self {
            Self::GlauberDecahydrate => 322.19 / 142.04,
            Self::SodaDecahydrate => 286.14 / 105.99,
            Self::SodaMonohydrate => 124.00 / 105.99,
        }
    }
}

/// The mass to weigh of a dye whose batch has another strength than the recipe's, in percent.
///
/// # Errors
/// Refuses a strength that is not above 0, or above 500 %.
pub fn at_strength(mass: Mass, strength_percent: f64) -> Result<Mass, DyeingError> {
    let fine = strength_percent > 0.0 && strength_percent <= 500.0;
    let range = text::hydrate::above_0_and_at_most_500_100();
    DyeingError::unless(
        fine,
        text::hydrate::strength(),
        strength_percent,
        "%",
        range,
    )?;
    mass.times(100.0 / strength_percent)
}

/// The air-dry mass of goods from their oven-dry mass and the fibre's regain in percent.
///
/// # Errors
/// Refuses a regain below 0 or above 50 %.
pub fn conditioned(oven_dry: Mass, regain_percent: f64) -> Result<Mass, DyeingError> {
    let fine = (0.0..=50.0).contains(&regain_percent);
    DyeingError::unless(
        fine,
        text::hydrate::regain(),
        regain_percent,
        "%",
        text::hydrate::n_0_to_50(),
    )?;
    oven_dry.times(1.0 + regain_percent / 100.0)
}

/// Moisture as percent of the moist mass, from regain as percent of the dry mass.
pub fn moisture_content_percent(regain_percent: f64) -> f64 {
    100.0 * regain_percent / (100.0 + regain_percent)
}

/// How many millilitres of a solution of `g_per_ml` acid do the work of 1 ml of a stronger acid.
///
/// The stronger acid is given as percent by weight with its density in g/ml.
pub fn vinegar_for_acid(acid_percent_ww: f64, density_g_per_ml: f64, g_per_ml: f64) -> f64 {
    density_g_per_ml * acid_percent_ww / 100.0 / g_per_ml
}
