//! Recipes: what a person wants to dye, with what, in how much water.

mod read;
mod written;

use crate::text;
pub use written::{
    Written, WrittenAfter, WrittenAuxiliary, WrittenDye, WrittenGoods, WrittenPot, WrittenProcess,
    WrittenWater,
};

use serde::Serialize;

use crate::{
    Amount, Celsius, Dose, Kitchen, LiquorRatio, Mass, Minutes, PercentWv, Price, Volume,
    class::DyeClass, error::DyeingError, fibre::FibreShare, material::Material,
};

/// A recipe. Read it from text with [`Recipe::read`].
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Recipe {
    /// What the person calls it.
    pub name: String,
    /// Class of the dyes.
    pub class: DyeClass,
    /// What the goods are made of.
    pub fibres: Vec<FibreShare>,
    /// Whose cups and spoons.
    pub kitchen: Kitchen,
    /// What prices are in, as `EUR`.
    pub currency: String,
    /// The goods.
    pub goods: Goods,
    /// Arms of a trial with their pieces; one arm if nothing was said.
    pub arms: Vec<Arm>,
    /// How much water.
    pub water: Water,
    /// The pot.
    pub pot: Option<Pot>,
    /// Dyes.
    pub dyes: Vec<Dye>,
    /// What else goes into the dye bath.
    pub auxiliaries: Vec<Auxiliary>,
    /// What is done after it.
    pub after: Vec<AfterTreatment>,
    /// What departs from the class's usual programme.
    pub process: Process,
}

/// The goods.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Goods {
    /// Dry weight of them all.
    pub mass: Mass,
    /// The lightest that they may be.
    pub least: Mass,
    /// The heaviest that they may be.
    pub most: Mass,
    /// How many pieces.
    pub pieces: u32,
    /// What a typical weight was taken of; nothing if they were weighed.
    pub typical: Option<String>,
}

/// An arm of a trial.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Arm {
    /// Its name.
    pub name: String,
    /// How many pieces it has.
    pub pieces: u32,
}

/// How much water.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Water {
    /// By weight of goods.
    Ratio(LiquorRatio),
    /// A volume.
    Volume(Volume),
    /// As much as the pot takes.
    FillPot,
}

/// The pot or basin.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Pot {
    /// What it holds to the brim.
    pub capacity: Volume,
    /// What stays free above liquor and goods, percent of the capacity.
    pub headroom_percent: f64,
    /// Power of the stove below it, kW.
    pub heater_kw: Option<f64>,
}

/// What a dye is measured out as.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum DyeForm {
    /// Powder of a strength, 100 % being the recipe's standard.
    Powder {
        /// Its strength, percent.
        strength_percent: f64,
    },
    /// A solution that the person made.
    Stock(PercentWv),
    /// A liquid from a bottle; its strength may be unknown.
    Liquid(Option<PercentWv>),
}

/// A rule for an amount, with the text it came from.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Rule {
    /// As it was written.
    pub text: String,
    /// What it means.
    pub dose: Dose,
}

/// A dye.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Dye {
    /// Its name.
    pub name: String,
    /// How much.
    pub rule: Rule,
    /// What it is measured out as.
    pub form: DyeForm,
    /// What a bottle of it holds.
    pub bottle: Option<Volume>,
    /// What it costs.
    pub price: Option<Price>,
    /// What an earlier bath left in the water.
    pub in_bath: Option<Amount>,
}

/// Something beside dye.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Auxiliary {
    /// Its name.
    pub name: String,
    /// What it is.
    pub material: Option<Material>,
    /// How much.
    pub rule: Rule,
    /// How much the label asks for, where that differs.
    pub label: Option<Rule>,
    /// What a bottle of it holds.
    pub bottle: Option<Volume>,
    /// What it costs.
    pub price: Option<Price>,
    /// What an earlier bath left in the water.
    pub in_bath: Option<Amount>,
}

/// An after-treatment, for some arms or all.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct AfterTreatment {
    /// What goes into its bath.
    pub agent: Auxiliary,
    /// Its water; the dye bath's liquor ratio if nothing was said.
    pub water: Option<Volume>,
    /// How warm.
    pub temperature: Celsius,
    /// How long.
    pub time: Minutes,
    /// The arms that get it.
    pub arms: Vec<String>,
    /// Their share of the goods, above 0 to 1; a lot of another weight keeps it.
    pub share: f64,
}

/// What departs from the class's usual programme.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize)]
pub struct Process {
    /// How long the goods soak first.
    pub presoak: Option<Minutes>,
    /// The hottest of the bath.
    pub hold: Option<Celsius>,
    /// How long it stays there in the last stage.
    pub time: Option<Minutes>,
    /// Acidity that was measured or is meant.
    pub ph: Option<f64>,
}

impl Recipe {
    /// Reads a recipe from TOML; `docs/recipes.md` describes the file.
    ///
    /// # Errors
    /// Says in which line or at which entry and character something is wrong, and what would do.
    pub fn read(text: &str) -> Result<Self, DyeingError> {
        Written::from_toml(text)?.recipe()
    }

    /// The same recipe for another weight of goods: every amount goes along.
    ///
    /// Rules by weight and by litre stay as they are; amounts and volumes that were fixed grow or
    /// shrink with the goods. What an earlier bath left is not there for another lot.
    ///
    /// # Errors
    /// Refuses 0 g of goods.
    pub fn scaled_to(&self, goods: Mass) -> Result<Self, DyeingError> {
        no_goods(goods)?;
        let k = goods.grams() / self.goods.mass.grams();
        let mut lot = self.clone();
        lot.goods.mass = goods;
        lot.goods.least = self.goods.least.times(k)?;
        lot.goods.most = self.goods.most.times(k)?;
        let count = |n: u32| libm::round(f64::from(n) * k).clamp(1.0, 1e6) as u32;
        for arm in &mut lot.arms {
            arm.pieces = count(arm.pieces);
        }
        lot.goods.pieces = lot.arms.iter().map(|a| a.pieces).sum();
        if let Water::Volume(volume) = self.water {
            lot.water = Water::Volume(volume.times(k)?);
        }
        for dye in &mut lot.dyes {
            dye.rule.dose = scaled(dye.rule.dose, k)?;
            dye.in_bath = None;
        }
        for auxiliary in &mut lot.auxiliaries {
            auxiliary.rule.dose = scaled(auxiliary.rule.dose, k)?;
            auxiliary.in_bath = None;
        }
        for after in &mut lot.after {
            after.agent.rule.dose = scaled(after.agent.rule.dose, k)?;
            after.water = after.water.map(|w| w.times(k)).transpose()?;
        }
        Ok(lot)
    }

    /// Pieces of those arms.
    pub fn pieces_of(&self, arms: &[String]) -> u32 {
        let of = self.arms.iter().filter(|a| arms.contains(&a.name));
        of.map(|a| a.pieces).sum()
    }
}

fn scaled(dose: Dose, k: f64) -> Result<Dose, DyeingError> {
    Ok(match dose {
        Dose::Fixed(amount) => Dose::Fixed(amount.times(k)?),
        rule => rule,
    })
}

/// Fails for goods that weigh nothing.
fn no_goods(goods: Mass) -> Result<(), DyeingError> {
    if goods.grams() > 0.0 {
        return Ok(());
    }
    Err(DyeingError::Recipe(
        text::recipe::the_goods_weigh_0_g().into(),
    ))
}
