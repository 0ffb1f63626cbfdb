//! How much dye a rinse leaves, and how many rinses it takes.

use crate::error::DyeingError;
use crate::text;

/// The share of loose dye that one rinse leaves: (K + held) / (K + held + fresh).
///
/// `held` is liquor that cloth keeps, `fresh` the water that is added, both in litres for each
/// kilogram of dry goods; `affinity_l_per_kg` is K of dye that also clings to the cloth, 0 for
/// mere dilution. Real rinses clear more slowly than dilution does.
///
/// # Errors
/// Refuses values below 0 and a rinse without fresh water.
pub fn left_by_one(
    held_l_per_kg: f64,
    fresh_l_per_kg: f64,
    affinity_l_per_kg: f64,
) -> Result<f64, DyeingError> {
    let (unit, more) = ("L/kg", text::rinse::n_0_or_more());
    DyeingError::unless(
        held_l_per_kg >= 0.0,
        text::rinse::liquor_that_the_cloth_holds(),
        held_l_per_kg,
        unit,
        more,
    )?;
    DyeingError::unless(
        affinity_l_per_kg >= 0.0,
        text::rinse::affinity(),
        affinity_l_per_kg,
        unit,
        more,
    )?;
    DyeingError::unless(
        fresh_l_per_kg > 0.0,
        text::rinse::fresh_water(),
        fresh_l_per_kg,
        unit,
        text::rinse::above_0(),
    )?;
    let kept = affinity_l_per_kg + held_l_per_kg;
    Ok(kept / (kept + fresh_l_per_kg))
}

/// How many like rinses bring loose dye down to a share of it.
///
/// # Errors
/// Refuses shares that are not between 0 and 1.
pub fn rinses_to(share: f64, left_by_one: f64) -> Result<u32, DyeingError> {
    let (unit, range) = (
        text::rinse::of_the_dye(),
        text::rinse::above_0_and_below_1(),
    );
    DyeingError::unless(
        share > 0.0 && share < 1.0,
        text::rinse::share_to_be_left(),
        share,
        unit,
        range,
    )?;
    let fine = left_by_one > 0.0 && left_by_one < 1.0;
    DyeingError::unless(
        fine,
        text::rinse::share_left_by_a_rinse(),
        left_by_one,
        unit,
        range,
    )?;
    // Three rinses of a tenth leave a thousandth; the logarithms alone would say four.
    let rinses = libm::log(share) / libm::log(left_by_one);
    Ok(libm::ceil(rinses - 1e-9).max(1.0) as u32)
}

/// The share left when water runs through a full vessel that stays mixed: exp(-through / held).
///
/// # Errors
/// Refuses an empty vessel and a flow below 0.
pub fn left_by_overflow(through_l: f64, held_l: f64) -> Result<f64, DyeingError> {
    DyeingError::unless(
        through_l >= 0.0,
        text::rinse::water_run_through(),
        through_l,
        "L",
        text::rinse::n_0_or_more(),
    )?;
    DyeingError::unless(
        held_l > 0.0,
        text::rinse::water_in_the_vessel(),
        held_l,
        "L",
        text::rinse::above_0(),
    )?;
    Ok(libm::exp(-through_l / held_l))
}
