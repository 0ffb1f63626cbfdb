//! Where the dye went: put in, left in the bath, washed out, fixed; from readings of the waters.
//!
//! Everything is counted in shares of the dye that was put in, so that a jar compared by eye with
//! a dilution ladder of the bath does as well as a photometer. Of a water, the share is its strength
//! against the bath's at the start times its volume against the bath's. What is fixed is what is
//! missing from all waters. Bounds are at 95 %, as if readings erred apart from each other; a
//! ladder that was mixed wrongly errs in all of them alike and doesn't show.

mod estimate;
mod event;
mod onward;
mod strength;
mod words;
mod written;

use crate::text;
use serde::Serialize;

pub use estimate::Estimate;
pub use event::{StandingWater, WaterEvent, WaterNote, standing, waters};
pub use onward::{Onward, Stop};
pub use strength::Reading;
pub use written::{Absorbances, WrittenCalibration, WrittenReading, WrittenWaters};

use crate::{
    Kitchen, Mass, Part, Place, Plan, Recipe, Volume,
    check::Check,
    error::DyeingError,
    recipe::{Dye, DyeForm},
};

/// Waters of one dyeing, at most.
const MOST_WATERS: usize = 40;

/// The bath as it began, and what is usual for its class.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Start {
    /// Liquor of all baths together.
    pub liquor: Volume,
    /// Dye in it, what an earlier bath left included; nothing if one has an unknown strength.
    pub dye: Option<Mass>,
    /// Share that is usually taken up at this liquor ratio, percent.
    pub usual_exhaustion_percent: [f64; 2],
    /// Share that usually stays for good at this liquor ratio, percent.
    pub usual_fixation_percent: [f64; 2],
    /// Name of the class of dye.
    pub class: String,
    /// Whose cups and spoons volumes are in.
    #[serde(skip)]
    pub kitchen: Kitchen,
}

/// One water of the balance.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct WaterShare {
    /// What it is, as `spent bath` or `rinse 2`.
    pub name: String,
    /// What was read.
    #[serde(flatten)]
    pub reading: Reading,
    /// Dye in it, as a share of that put in.
    pub share: Estimate,
    /// The same in grams.
    pub grams: Option<Estimate>,
}

/// Where the dye went, in shares of what was put in.
///
/// ```
/// use dyeing::{Plan, Recipe, balance::{DyeBalance, Start, WrittenWaters}};
/// let recipe = Recipe::read(&std::fs::read_to_string("../../docs/recipes/napkins.toml")?)?;
/// let start = Start::of(&recipe, &Plan::of(&recipe)?);
/// let waters = WrittenWaters::from_toml(r#"
///     bath = { volume = "4.5 L", looks_like = "1:5" }
///     rinse = [
///         { volume = "5 L", looks_like = "1:20" },
///         { volume = "5 L", looks_like = "1:80" },
///     ]
/// "#)?;
/// let balance = DyeBalance::of(&start, &waters, 0.001)?;
/// assert_eq!(balance.exhaustion.unwrap().percent(), "82 % (74 to 87 %)");
/// assert_eq!(balance.fixed.unwrap().percent(), "76 % (68 to 81 %)");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct DyeBalance {
    /// The bath as it began.
    pub start: Start,
    /// Every water: the spent bath, if it was read, then rinses as they came.
    pub waters: Vec<WaterShare>,
    /// Left in the spent bath.
    pub in_bath: Option<Estimate>,
    /// Washed out in all rinses.
    pub washed_out: Estimate,
    /// On the goods, by difference; nothing without a reading of the bath.
    pub fixed: Option<Estimate>,
    /// Share that left the bath.
    pub exhaustion: Option<Estimate>,
    /// Of what left the bath, the share that stayed.
    pub fixed_of_exhausted: Option<Estimate>,
    /// What more rinses would do, where two readings allow it.
    pub onward: Option<Onward>,
    /// What doesn't fit, what matters most first.
    pub checks: Vec<Check>,
    /// What it says, in words.
    pub sentences: Vec<String>,
}

impl Start {
    /// Of a recipe and what was worked out from it.
    pub fn of(recipe: &Recipe, plan: &Plan) -> Self {
        let dyes = recipe.dyes.iter().zip(&plan.lines);
        let grams: Option<f64> = dyes
            .map(|(dye, line)| {
                let pure_g = line.depth_owf? / 100.0 * plan.goods.mass.grams();
                Some(pure_g / purity(dye))
            })
            .sum();
        Self {
            liquor: plan.baths.liquor,
            dye: grams.and_then(|g| Mass::from_grams(g).ok()),
            usual_exhaustion_percent: plan.uptake.exhaustion_percent,
            usual_fixation_percent: plan.uptake.fixation_percent,
            class: plan.class.clone(),
            kitchen: recipe.kitchen,
        }
    }
}

/// Standards are made of the powder as it is, so grams are grams of it too.
fn purity(dye: &Dye) -> f64 {
    match dye.form {
        DyeForm::Powder { strength_percent } => strength_percent / 100.0,
        DyeForm::Stock(_) | DyeForm::Liquid(_) => 1.0,
    }
}

impl DyeBalance {
    /// Of readings, with what it takes till a rinse holds less than a share `below` of the dye.
    ///
    /// # Errors
    /// Says which reading can't be used and why: a unit that is missing, a volume below 0, an
    /// absorbance that no standard covers, a water stronger than the bath at its start, no water at
    /// all. What merely doesn't fit together is in [`DyeBalance::checks`].
    pub fn of(start: &Start, waters: &WrittenWaters, below: f64) -> Result<Self, DyeingError> {
        let calibration = waters.calibration.as_ref();
        let line = calibration
            .map(|c| strength::Line::of(c, start).map_err(|e| e.at(Part::Calibration.whole())))
            .transpose()?;
        let count = waters.rinse.len() + usize::from(waters.bath.is_some());
        if count == 0 || count > MOST_WATERS {
            return Err(DyeingError::Recipe(
                text::balance::there_are_readings_of_waters_1(count, MOST_WATERS),
            ));
        }
        let named = |part: Part, written: &WrittenReading| -> Result<WaterShare, DyeingError> {
            let name = part.to_string();
            let reading = Reading::of(written, start, line.as_ref()).map_err(|e| match e {
                DyeingError::At { place, why } => why.at(Place {
                    part,
                    entry: place.entry,
                }),
                other => other.at(part.whole()),
            })?;
            let bath_l = Estimate::exact(start.liquor.litres());
            let share = reading
                .strength
                .times(reading.litres)
                .times(bath_l.inverse());
            Ok(WaterShare {
                name,
                grams: strength::grams(share, start.dye),
                reading,
                share,
            })
        };
        let bath = waters.bath.as_ref();
        let bath = bath.map(|w| named(Part::SpentBath, w)).transpose()?;
        let rinses = waters.rinse.iter().enumerate();
        let rinses = rinses
            .map(|(k, w)| named(Part::Rinse(k + 1), w))
            .collect::<Result<Vec<_>, _>>()?;
        let in_bath = bath.as_ref().map(|b| b.share);
        let washed_out = Estimate::sum(rinses.iter().map(|r| r.share));
        let fixed = in_bath.map(|bath| Estimate::sum([bath, washed_out]).rest());
        let exhaustion = in_bath.map(Estimate::rest);
        let onward = Onward::of(&rinses, below)?;
        let mut balance = Self {
            start: start.clone(),
            waters: bath.into_iter().chain(rinses).collect(),
            in_bath,
            washed_out,
            fixed,
            exhaustion,
            fixed_of_exhausted: exhaustion.and_then(|e| stayed(e, washed_out)),
            onward,
            checks: Vec::new(),
            sentences: Vec::new(),
        };
        balance.checks = words::checks(&balance);
        balance.sentences = words::sentences(&balance);
        Ok(balance)
    }

    /// Waters of rinsing, as they came.
    pub fn rinses(&self) -> impl Iterator<Item = &WaterShare> {
        let bath = usize::from(self.in_bath.is_some());
        self.waters.iter().skip(bath)
    }
}

/// Of what left the bath, the share that no rinse took out again.
fn stayed(exhaustion: Estimate, washed_out: Estimate) -> Option<Estimate> {
    (exhaustion.low > 0.0).then(|| washed_out.times(exhaustion.inverse()).rest())
}
