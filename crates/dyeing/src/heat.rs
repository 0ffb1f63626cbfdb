//! How long a pot takes to get hot.

use crate::text;
use crate::{Celsius, Minutes, Volume, error::DyeingError};

/// Heat that warms a litre of water by a degree, kJ.
const WATER_KJ_PER_L_C: f64 = 4.186;
/// Share of a stove's heat that gets into the pot; common practice, no source.
const INTO_THE_POT: f64 = 0.6;

/// How fast a pot gets hotter at most, °C a minute.
pub fn fastest_c_per_min(liquor: Volume, heater_kw: f64) -> f64 {
    heater_kw * 60.0 * INTO_THE_POT / (WATER_KJ_PER_L_C * liquor.litres())
}

/// How long heating takes, if six tenths of the heat get into the pot.
///
/// # Errors
/// Refuses a heater without power.
pub fn minutes_to_heat(
    liquor: Volume,
    from: Celsius,
    to: Celsius,
    heater_kw: f64,
) -> Result<Minutes, DyeingError> {
    DyeingError::unless(
        heater_kw > 0.0,
        text::heat::power_of_the_heater(),
        heater_kw,
        "kW",
        text::heat::above_0(),
    )?;
    let degrees = (to.celsius() - from.celsius()).max(0.0);
    Minutes::new(degrees / fastest_c_per_min(liquor, heater_kw))
}

#[cfg(test)]
mod tests {
    use super::minutes_to_heat;

    /// By the heat capacity of water: 10 L by 60 degrees with 2 kW, six tenths of it used.
    #[test]
    fn a_big_pot_is_slow() {
        let [from, to] = ["20 C", "80 C"].map(|t| t.parse().unwrap());
        let found = minutes_to_heat("10 L".parse().unwrap(), from, to, 2.0).unwrap();
        assert!((found.minutes() - 34.88).abs() < 0.01);
    }
}
