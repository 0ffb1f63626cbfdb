//! What goes into baths beside dye: what it is, how dense it lies, what it can do to people.
//!
//! The table is `data/materials.toml`, which says where its figures come from.

use crate::known;
use crate::text;
use std::sync::LazyLock;

use serde::{Deserialize, Serialize};

use crate::{Mass, Volume, caution::Hazard, error::DyeingError};

/// What a material does in a bath.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Role {
    /// Drives dye onto the fibre, or holds it back.
    Salt,
    /// Makes the bath alkaline.
    Alkali,
    /// Makes the bath acid.
    Acid,
    /// Takes oxygen out, for vats and clearing.
    Reducer,
    /// Binds a natural dye to the fibre.
    Mordant,
    /// An after-treatment that binds dye.
    Fixative,
    /// Anything else: wetting, softening, water treatment.
    Other,
}

/// How dense a powder lies, loosely filled; grams in a millilitre.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Density {
    /// The loosest that is met.
    pub low_g_per_ml: f64,
    /// The middle.
    pub typical_g_per_ml: f64,
    /// The densest that is met.
    pub high_g_per_ml: f64,
}

/// A material that does another's work, weight for weight at another share.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct CountsAs {
    /// The key of the other.
    pub material: String,
    /// How many grams of the other one gram of it is.
    pub share: f64,
}

/// A material.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Material {
    /// The word that recipes use, whatever the language.
    pub key: String,
    /// Other words that recipes may use.
    #[serde(default)]
    pub also: Vec<String>,
    /// What it does.
    pub role: Role,
    /// How dense it lies; none for liquids and for what has no usual density.
    pub density: Option<Density>,
    /// Whether it is poured.
    #[serde(default)]
    pub liquid: bool,
    /// What it can do to people and places.
    #[serde(default)]
    pub hazards: Vec<Hazard>,
    /// Whose work it does.
    pub counts_as: Option<CountsAs>,
    /// Where its figures come from.
    pub source: String,
}

#[derive(Deserialize)]
struct Table {
    material: Vec<Material>,
}

static TABLE: LazyLock<Vec<Material>> = LazyLock::new(|| {
    toml::from_str::<Table>(include_str!("../data/materials.toml"))
        .expect("the table comes with the program, and a test reads it")
        .material
});

/// Every material of the table.
pub fn all() -> &'static [Material] {
    &TABLE
}

/// The material of that name, whatever the capitals.
///
/// # Errors
/// Names the materials there are.
pub fn find(name: &str) -> Result<&'static Material, DyeingError> {
    let wanted = name.trim().to_lowercase();
    let is = |m: &&Material| m.key == wanted || m.also.contains(&wanted);
    all().iter().find(is).ok_or_else(|| DyeingError::Unknown {
        what: text::material::material(),
        name: name.to_owned(),
        known: all()
            .iter()
            .map(|m| m.key.as_str())
            .collect::<Vec<_>>()
            .join(", "),
    })
}

impl Density {
    /// What a volume of the powder weighs: least, typical, most.
    ///
    /// # Errors
    /// Refuses what overflows.
    pub fn weighs(self, volume: Volume) -> Result<[Mass; 3], DyeingError> {
        let of = |density: f64| Mass::from_grams(volume.millilitres() * density);
        Ok([
            of(self.low_g_per_ml)?,
            of(self.typical_g_per_ml)?,
            of(self.high_g_per_ml)?,
        ])
    }
}

impl Role {
    /// Its word in the tables.
    pub(crate) fn key(self) -> &'static str {
        match self {
            Self::Salt => "salt",
            Self::Alkali => "alkali",
            Self::Acid => "acid",
            Self::Reducer => "reducer",
            Self::Mordant => "mordant",
            Self::Fixative => "fixative",
            Self::Other => "other",
        }
    }
}

impl Material {
    /// Its name.
    pub fn name(&self) -> &'static str {
        known::known(text::known_materials::said, &self.key, "")
    }

    /// How many grams of its base material a mass of it is: soda ash in washing soda.
    pub fn as_base_g(&self, mass: Mass) -> f64 {
        mass.grams() * self.counts_as.as_ref().map_or(1.0, |c| c.share)
    }
}

#[cfg(test)]
mod tests {
    use super::{all, find};
    use crate::known::{hold, name};
    use crate::text::known_materials;

    #[test]
    fn each_material_has_its_name_and_there_are_no_others() {
        let asked = all().iter().map(|material| (name(&material.key, ""), true));
        hold(known_materials::said, &known_materials::NAMES, asked);
    }

    #[test]
    fn the_table_holds_together() {
        for material in all() {
            if let Some(d) = material.density {
                assert!(d.low_g_per_ml > 0.0 && d.low_g_per_ml <= d.typical_g_per_ml);
                assert!(d.typical_g_per_ml <= d.high_g_per_ml, "{}", material.key);
            }
            if let Some(base) = &material.counts_as {
                assert!(find(&base.material).is_ok() && base.share > 0.0);
            }
            assert!(!material.source.is_empty());
            let names = all().iter().flat_map(|m| m.also.iter().chain([&m.key]));
            assert_eq!(names.filter(|n| **n == material.key).count(), 1);
        }
    }
}
