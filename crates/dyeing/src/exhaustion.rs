//! How dye shares itself between cloth and water, and what is left over.

use crate::text;
use serde::{Deserialize, Serialize};

use crate::{LiquorRatio, Volume, error::DyeingError};

/// The share of dye taken up by the linear partition model.
///
/// Dye on the fibre (g/kg) is K times dye in the liquor (g/L) when the bath has settled, so that the
/// share on the fibre is K / (K + liquor ratio). It holds at pale to medium depth; near
/// saturation cloth takes up less.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Partition {
    /// K, in litres for each kilogram.
    k_l_per_kg: f64,
}

/// What a change of pot does to the depth of shade.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct PotChange {
    /// Share taken up before, 0 to 1.
    pub before: f64,
    /// Share taken up after, 0 to 1.
    pub after: f64,
    /// Depth on the cloth after, as a share of that before.
    pub depth_ratio: f64,
}

impl Partition {
    /// With that K.
    ///
    /// # Errors
    /// Refuses what is not above 0.
    pub fn new(k_l_per_kg: f64) -> Result<Self, DyeingError> {
        let range = text::exhaustion::above_0();
        DyeingError::unless(
            k_l_per_kg > 0.0,
            text::exhaustion::partition(),
            k_l_per_kg,
            "L/kg",
            range,
        )
        .map(|k_l_per_kg| Self { k_l_per_kg })
    }

    /// From a share that was taken up at a liquor ratio.
    ///
    /// # Errors
    /// Refuses shares of 0 and 1, which tell no K.
    pub fn from_share(share: f64, ratio: LiquorRatio) -> Result<Self, DyeingError> {
        let fine = share > 0.0 && share < 1.0;
        let range = text::exhaustion::above_0_and_below_1();
        DyeingError::unless(
            fine,
            text::exhaustion::share_taken_up(),
            share,
            text::exhaustion::of_the_dye(),
            range,
        )?;
        Self::new(share / (1.0 - share) * ratio.litres_per_kilogram())
    }

    /// K, in litres for each kilogram.
    pub fn k_l_per_kg(self) -> f64 {
        self.k_l_per_kg
    }

    /// The share taken up, 0 to 1.
    ///
    /// ```
    /// let partition = dyeing::exhaustion::Partition::new(40.0)?;
    /// assert_eq!(partition.share("10:1".parse()?), 0.8);
    /// # Ok::<(), dyeing::DyeingError>(())
    /// ```
    pub fn share(self, ratio: LiquorRatio) -> f64 {
        self.k_l_per_kg / (self.k_l_per_kg + ratio.litres_per_kilogram())
    }

    /// What another liquor ratio does to depth with the same weight of dye.
    pub fn change_of_pot(self, before: LiquorRatio, after: LiquorRatio) -> PotChange {
        let (before, after) = (self.share(before), self.share(after));
        PotChange {
            before,
            after,
            depth_ratio: after / before,
        }
    }
}

impl PotChange {
    /// What the change does, and what to do about it.
    pub fn sentence(self) -> String {
        let percent = (self.depth_ratio - 1.0) * 100.0;
        let shares = text::exhaustion::the_cloth_takes_up_about(
            format_args!("{:.0}", self.after * 100.0),
            format_args!("{:.0}", self.before * 100.0),
        );
        if percent.abs() < 2.0 {
            text::exhaustion::the_depth_stays_the_same_within_2(&shares)
        } else {
            let way = if percent < 0.0 {
                text::exhaustion::paler()
            } else {
                text::exhaustion::deeper()
            };
            text::exhaustion::the_shade_comes_out_about(
                &shares,
                format_args!("{:.0}", percent.abs()),
                way,
                format_args!("{:.2}", 1.0 / self.depth_ratio),
            )
        }
    }
}

/// The share exhausted, from the liquor's concentration before and after: 1 - end volume x end
/// concentration / (start volume x start concentration).
///
/// Concentrations may be in any one unit, absorbances times their dilution too.
///
/// # Errors
/// Refuses an empty start, values below 0, and more dye at the end than at the start.
pub fn exhausted_share(
    start_concentration: f64,
    start: Volume,
    end_concentration: f64,
    end: Volume,
) -> Result<f64, DyeingError> {
    let before = start_concentration * start.millilitres();
    let after = end_concentration * end.millilitres();
    DyeingError::unless(
        before > 0.0,
        text::exhaustion::dye_at_the_start(),
        before,
        "",
        text::exhaustion::above_0(),
    )?;
    let fine = after >= 0.0 && after <= before;
    let range = text::exhaustion::n_0_or_more_and_not_above();
    DyeingError::unless(fine, text::exhaustion::dye_at_the_end(), after, "", range)?;
    Ok(1.0 - after / before)
}

/// The share of the applied dye that is fixed: share exhausted times share of that fixed.
pub fn total_fixation(exhausted: f64, fixed_of_exhausted: f64) -> f64 {
    exhausted * fixed_of_exhausted
}
