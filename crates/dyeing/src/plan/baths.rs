//! How much liquor, and whether the pot takes it.

use crate::text;
use serde::Serialize;

use crate::{
    Entry, LiquorRatio, Mass, Part, Volume,
    error::DyeingError,
    kitchen,
    recipe::{Recipe, Water},
};

/// The liquor, and in how many baths.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Baths {
    /// All of the liquor.
    pub liquor: Volume,
    /// The same in metric units.
    pub metric: String,
    /// The same in the kitchen's measures.
    pub kitchen: String,
    /// Litres for each kilogram of goods.
    pub ratio: LiquorRatio,
    /// How many baths it takes.
    pub count: u32,
    /// Liquor of each.
    pub each_liquor: Volume,
    /// Dry goods in each.
    pub each_goods: Mass,
    /// What the pot takes with its headroom.
    pub usable: Option<Volume>,
    /// Why there are several, and what to do.
    pub sentence: Option<String>,
}

impl Baths {
    /// For a recipe.
    ///
    /// # Errors
    /// Refuses a liquor ratio below 1 or above 1000, and pots that would need more than 10 000 baths.
    pub fn of(recipe: &Recipe) -> Result<Self, DyeingError> {
        let goods = recipe.goods.mass;
        let usable = match recipe.pot {
            Some(pot) => Some(pot.capacity.times(1.0 - pot.headroom_percent / 100.0)?),
            None => None,
        };
        let liquor = match (recipe.water, usable) {
            (Water::Ratio(ratio), _) => ratio.liquor(goods)?,
            (Water::Volume(volume), _) => volume,
            (Water::FillPot, Some(usable)) => usable,
            (Water::FillPot, None) => {
                let sentence = text::plan::there_is_neither_water_nor_a_pot();
                return Err(Part::Water.whole().says(sentence));
            }
        };
        let ratio = LiquorRatio::of(liquor, goods).map_err(|e| e.at(Part::Water.whole()))?;
        let count = match usable {
            Some(usable) => libm::ceil(liquor.millilitres() / usable.millilitres() - 1e-9).max(1.0),
            None => 1.0,
        };
        DyeingError::unless(
            count <= 10_000.0,
            text::plan::number_of_baths(),
            count,
            "",
            text::plan::at_most_10_000_take_a_larger(),
        )
        .map_err(|e| e.at(Part::Pot.at(Entry::Capacity)))?;
        let mut baths = Self {
            liquor,
            metric: liquor.metric(),
            kitchen: kitchen::measure(liquor, recipe.kitchen)?.text,
            ratio,
            count: count as u32,
            each_liquor: liquor.times(1.0 / count)?,
            each_goods: goods.times(1.0 / count)?,
            usable,
            sentence: None,
        };
        baths.sentence = baths.why_several(recipe)?;
        Ok(baths)
    }

    fn why_several(&self, recipe: &Recipe) -> Result<Option<String>, DyeingError> {
        let (Some(pot), Some(usable)) = (recipe.pot, self.usable) else {
            return Ok(None);
        };
        if self.count == 1 {
            return Ok(None);
        }
        let enough = self
            .liquor
            .times(1.0 / (1.0 - pot.headroom_percent / 100.0))?;
        let mut sentence = text::plan::of_liquor_doesnt_fit_into_a_pot_2(
            self.liquor.shown(),
            pot.capacity.shown(),
            usable.shown(),
            pot.headroom_percent,
            self.count,
            self.each_liquor.shown(),
            self.each_goods.shown(),
            enough.shown(),
        );
        if self.count > recipe.goods.pieces {
            sentence.push_str(&text::plan::that_is_more_baths(recipe.goods.pieces));
        } else {
            sentence.push_str(text::plan::pieces_of_different_baths_differ_by_more());
        }
        Ok(Some(sentence))
    }
}
