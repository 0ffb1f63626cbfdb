//! What more rinses would do, as the last two went on.

use crate::text;
use serde::Serialize;

use crate::{
    balance::{Estimate, WaterShare},
    error::DyeingError,
    rinse,
};

/// What more rinses would do, if each takes out the same share of the last as that did of the one
/// before. The cloth lets go of dye more and more slowly, so that it is a least number.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Onward {
    /// Dye in the last rinse, against that in the one before.
    pub ratio: Estimate,
    /// The share of the dye put in below which a rinse counts as clear.
    pub below: f64,
    /// When a rinse would be below it.
    pub stop: Stop,
    /// What all rinses to come would take out, as a share of the dye put in; nothing if they don't
    /// get weaker.
    pub still_to_come: Option<f64>,
}

/// When a rinse would be clear.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case", tag = "stop")]
pub enum Stop {
    /// The last one is.
    Now,
    /// After so many more; by the readings' spread from `least` to `most`, if that ends.
    After {
        /// The likeliest number.
        more: u32,
        /// The fewest.
        least: u32,
        /// The most; nothing if by the spread they may not get weaker.
        most: Option<u32>,
    },
    /// They don't get weaker.
    Never,
}

impl Onward {
    /// By the last two rinses; nothing if there are fewer, or one of them is clear.
    ///
    /// # Errors
    /// Refuses a share that is not between 0 and 1.
    pub(super) fn of(rinses: &[WaterShare], below: f64) -> Result<Option<Self>, DyeingError> {
        let fine = below > 0.0 && below < 1.0;
        DyeingError::unless(
            fine,
            text::balance::share_below_which_a_rinse_counts(),
            below,
            "",
            text::balance::above_0_and_below_1(),
        )?;
        let [.., before, last] = rinses else {
            return Ok(None);
        };
        let (before, last) = (before.share, last.share);
        if before.low <= 0.0 || last.middle <= 0.0 {
            return Ok(None);
        }
        let ratio = last.times(before.inverse());
        let weaker = ratio.middle < 1.0;
        let count = |from: f64, ratio: f64| -> Result<Option<u32>, DyeingError> {
            if from <= below {
                return Ok(Some(0));
            }
            if ratio >= 1.0 {
                return Ok(None);
            }
            if ratio <= 0.0 {
                return Ok(Some(1));
            }
            rinse::rinses_to(below / from, ratio).map(Some)
        };
        let stop = match count(last.middle, ratio.middle)? {
            Some(0) => Stop::Now,
            Some(more) => Stop::After {
                more,
                least: count(last.middle, ratio.low)?.unwrap_or(more),
                most: count(last.middle, ratio.high)?,
            },
            None => Stop::Never,
        };
        Ok(Some(Self {
            ratio,
            below,
            stop,
            still_to_come: weaker.then(|| last.middle * ratio.middle / (1.0 - ratio.middle)),
        }))
    }
}
