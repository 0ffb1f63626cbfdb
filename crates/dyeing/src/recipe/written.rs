//! A recipe as a person writes it: every entry as text, nothing worked out yet.

use crate::text;
use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use super::{Recipe, read};
use crate::{Kitchen, entries, error::DyeingError};

/// A recipe as it is written in TOML or typed into a form; `docs/recipes.md` describes the entries.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Written {
    /// What the person calls it.
    pub name: String,
    /// Key of the class of dye.
    pub class: String,
    /// A fibre or a blend.
    pub fibre: String,
    /// Whose cups and spoons.
    #[serde(default)]
    pub kitchen: Kitchen,
    /// What prices are in.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub currency: String,
    /// The goods.
    pub goods: WrittenGoods,
    /// Pieces of each arm.
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    pub arms: BTreeMap<String, u32>,
    /// How much water.
    #[serde(default, skip_serializing_if = "WrittenWater::is_empty")]
    pub water: WrittenWater,
    /// The pot.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pot: Option<WrittenPot>,
    /// Dyes.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub dye: Vec<WrittenDye>,
    /// What else goes into the dye bath.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub auxiliary: Vec<WrittenAuxiliary>,
    /// What is done after it.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub after: Vec<WrittenAfter>,
    /// Where it departs from the class's usual programme.
    #[serde(default, skip_serializing_if = "WrittenProcess::is_empty")]
    pub process: WrittenProcess,
}

/// The goods.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct WrittenGoods {
    /// Dry weight of them all.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub weight: Option<String>,
    /// A kind of piece whose usual weight is taken.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub typical: Option<String>,
    /// How many pieces.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pieces: Option<u32>,
}

/// How much water; with neither entry, the pot is filled.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct WrittenWater {
    /// By weight of goods.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub liquor_ratio: Option<String>,
    /// As a volume.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub volume: Option<String>,
}

/// The pot.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct WrittenPot {
    /// What it holds to the brim.
    pub capacity: String,
    /// What stays free, percent of it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub headroom_percent: Option<f64>,
    /// Power of the stove, kW.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub heater_kw: Option<f64>,
}

/// A dye.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct WrittenDye {
    /// Its name.
    pub name: String,
    /// How much.
    pub amount: String,
    /// Strength of a powder against the one the recipe was made with, percent.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub strength_percent: Option<f64>,
    /// Strength of a solution that the person made.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub stock: Option<String>,
    /// Strength of a liquid from a bottle, or `unknown`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub liquid: Option<String>,
    /// What a bottle holds.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub bottle: Option<String>,
    /// What it costs.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub price: Option<String>,
    /// What an earlier bath left in the water.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub in_bath: Option<String>,
}

/// Something beside dye.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct WrittenAuxiliary {
    /// Its name.
    pub name: String,
    /// What it is, where the name doesn't say it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub material: Option<String>,
    /// How much.
    pub amount: String,
    /// How much the label asks for.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub label: Option<String>,
    /// What a bottle holds.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub bottle: Option<String>,
    /// What it costs.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub price: Option<String>,
    /// What an earlier bath left in the water.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub in_bath: Option<String>,
}

/// An after-treatment.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct WrittenAfter {
    /// Its name.
    pub name: String,
    /// What it is, where the name doesn't say it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub material: Option<String>,
    /// How much.
    pub amount: String,
    /// How much the label asks for.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub label: Option<String>,
    /// What a bottle holds.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub bottle: Option<String>,
    /// What it costs.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub price: Option<String>,
    /// Its water; the dye bath's ratio if left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub water: Option<String>,
    /// How warm.
    pub temperature: String,
    /// How long.
    pub time: String,
    /// The arms that get it; all if left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub arms: Option<Vec<String>>,
}

/// Where it departs from the class's usual programme.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct WrittenProcess {
    /// How long the goods soak first.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub presoak: Option<String>,
    /// The hottest of the bath.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub hold: Option<String>,
    /// How long the last stage takes.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub time: Option<String>,
    /// Acidity.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub ph: Option<f64>,
}

impl WrittenWater {
    fn is_empty(&self) -> bool {
        *self == Self::default()
    }
}

impl WrittenProcess {
    fn is_empty(&self) -> bool {
        *self == Self::default()
    }
}

impl Written {
    /// Reads the entries from TOML, without a look at what they mean.
    ///
    /// # Errors
    /// Names the line that isn't TOML, or the entry that is missing or unknown.
    pub fn from_toml(text: &str) -> Result<Self, DyeingError> {
        Ok(entries::read(text, text::recipe::the_recipe())?)
    }

    /// The entries as TOML; reading it again gives the same.
    ///
    /// # Errors
    /// None for entries that were read or typed.
    pub fn to_toml(&self) -> Result<String, DyeingError> {
        toml::to_string(self)
            .map_err(|e| DyeingError::Recipe(text::recipe::the_recipe_cant_be_written_as_toml(&e)))
    }

    /// What the entries mean.
    ///
    /// # Errors
    /// Says at which entry and character something is wrong, and what would do.
    pub fn recipe(&self) -> Result<Recipe, DyeingError> {
        read::read(self.clone())
    }
}
