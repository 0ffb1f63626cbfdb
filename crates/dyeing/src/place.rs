//! Where in a recipe, or in the readings of its waters, something is wrong.

use crate::{DyeingError, text};
use std::fmt;

/// Where something is wrong. Written as recipes name it: `dye "yellow", amount`, `water, volume`.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Place {
    /// Which part.
    pub part: Part,
    /// Which entry of it; none where the part as a whole is wrong.
    pub entry: Option<Entry>,
}

/// A part of a recipe or of readings.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Part {
    /// What stands at its head.
    Recipe,
    /// The goods.
    Goods,
    /// An arm of a trial, by name.
    Arm(String),
    /// The water.
    Water,
    /// The pot.
    Pot,
    /// What departs from the usual programme.
    Process,
    /// Something that is added.
    Added {
        /// Its kind.
        kind: Added,
        /// Which of its kind, counted from 0.
        row: usize,
        /// Its name.
        name: String,
    },
    /// A reading, of which water isn't said.
    Reading,
    /// The reading of the spent bath.
    SpentBath,
    /// The reading of a rinse, counted from 1.
    Rinse(usize),
    /// The standards of an absorbance, all of them.
    Calibration,
    /// One of the standards, counted from 1.
    Standard(usize),
}

/// The kinds of what is added.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Added {
    /// A dye.
    Dye,
    /// Something beside dye in the dye bath.
    Auxiliary,
    /// What is done after it.
    AfterTreatment,
}

/// An entry of a part.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Entry {
    /// Of the recipe or of what is added: its name.
    Name,
    /// Of the recipe: the dyes' class.
    Class,
    /// Of the recipe: what the goods are made of.
    Fibre,
    /// Of the goods: what they weigh.
    Weight,
    /// Of the goods: what they are, where they weren't weighed.
    Typical,
    /// Of the goods or an arm: how many pieces.
    Pieces,
    /// Of the water: litres to a kilogram of goods.
    LiquorRatio,
    /// Of the water or a reading: the volume.
    Volume,
    /// Of the pot: what it holds.
    Capacity,
    /// Of the pot: what stays free.
    Headroom,
    /// Of the pot: power of the stove.
    Heater,
    /// Of the process: the soak before it.
    Presoak,
    /// Of the process: the temperature that is held.
    Hold,
    /// Of the process or an after-treatment: how long.
    Time,
    /// Of the process: the pH.
    Ph,
    /// Of what is added: how much.
    Amount,
    /// Of a dye: the strength of a stock solution.
    Stock,
    /// Of a dye: the strength of a liquid from a bottle.
    Liquid,
    /// Of a dye in powder, or of a water: how strong it is.
    Strength,
    /// Of what is added beside dye: what it is.
    Material,
    /// Of what is added beside dye: how much the label asks for.
    Label,
    /// Of what is added: what a bottle holds.
    Bottle,
    /// Of what is added: its price.
    Price,
    /// Of what is added: what an earlier bath left of it.
    InBath,
    /// Of an after-treatment: its water.
    Water,
    /// Of an after-treatment: its temperature.
    Temperature,
    /// Of an after-treatment: the arms that get it.
    Arms,
    /// Of a reading: how far the volume may be off.
    VolumeSpread,
    /// Of a reading: the step of the ladder that it looks like.
    LooksLike,
    /// Of a reading: its absorbance.
    Absorbance,
    /// Of a reading: its concentration.
    Concentration,
    /// Of a reading: how far the sample was diluted.
    Dilution,
    /// Of a reading: how far it may be off.
    Spread,
}

impl Place {
    /// A fault here, in a sentence that says where.
    pub(crate) fn says(self, sentence: impl Into<String>) -> DyeingError {
        DyeingError::Said {
            place: self,
            sentence: sentence.into(),
        }
    }
}

impl Part {
    /// The part as a whole.
    pub const fn whole(self) -> Place {
        Place {
            part: self,
            entry: None,
        }
    }

    /// An entry of the part.
    pub const fn at(self, entry: Entry) -> Place {
        Place {
            part: self,
            entry: Some(entry),
        }
    }

    /// Something that is added, `row` counted from 0.
    pub fn added(kind: Added, row: usize, name: &str) -> Self {
        Self::Added {
            kind,
            row,
            name: name.to_owned(),
        }
    }

    fn is_of_readings(&self) -> bool {
        matches!(self, Self::Reading | Self::SpentBath | Self::Rinse(_))
    }
}

impl Added {
    /// Its kind in a word.
    pub fn in_words(self) -> &'static str {
        match self {
            Self::Dye => text::place::dye(),
            Self::Auxiliary => text::place::auxiliary(),
            Self::AfterTreatment => text::place::after_treatment(),
        }
    }
}

impl Entry {
    /// Its key in the files of recipes and waters.
    pub const fn key(self) -> &'static str {
        match self {
            Self::Name => "name",
            Self::Class => "class",
            Self::Fibre => "fibre",
            Self::Weight => "weight",
            Self::Typical => "typical",
            Self::Pieces => "pieces",
            Self::LiquorRatio => "liquor_ratio",
            Self::Volume => "volume",
            Self::Capacity => "capacity",
            Self::Headroom => "headroom_percent",
            Self::Heater => "heater_kw",
            Self::Presoak => "presoak",
            Self::Hold => "hold",
            Self::Time => "time",
            Self::Ph => "ph",
            Self::Amount => "amount",
            Self::Stock => "stock",
            Self::Liquid => "liquid",
            Self::Strength => "strength_percent",
            Self::Material => "material",
            Self::Label => "label",
            Self::Bottle => "bottle",
            Self::Price => "price",
            Self::InBath => "in_bath",
            Self::Water => "water",
            Self::Temperature => "temperature",
            Self::Arms => "arms",
            Self::VolumeSpread => "volume_spread",
            Self::LooksLike => "looks_like",
            Self::Absorbance => "absorbance",
            Self::Concentration => "concentration",
            Self::Dilution => "dilution",
            Self::Spread => "spread",
        }
    }

    /// What a reading's entry is called.
    fn in_words(self) -> &'static str {
        match self {
            Self::Volume => text::place::volume(),
            Self::Strength => text::place::strength(),
            Self::VolumeSpread => text::place::volume_spread(),
            Self::LooksLike => text::place::looks_like(),
            Self::Absorbance => text::place::absorbance(),
            Self::Concentration => text::place::concentration(),
            Self::Dilution => text::place::dilution(),
            Self::Spread => text::place::spread(),
            other => other.key(),
        }
    }
}

impl fmt::Display for Part {
    /// The part, as far as it has a name of its own: parts of a recipe as its file names them.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Recipe | Self::Reading => Ok(()),
            Self::Goods => f.write_str("goods"),
            Self::Arm(name) => f.write_str(&text::place::named(text::place::arm(), name)),
            Self::Water => f.write_str("water"),
            Self::Pot => f.write_str("pot"),
            Self::Process => f.write_str("process"),
            Self::Added { kind, name, .. } => {
                f.write_str(&text::place::named(kind.in_words(), name))
            }
            Self::SpentBath => f.write_str(text::place::spent_bath()),
            Self::Rinse(number) => f.write_str(&text::place::rinse(number)),
            Self::Calibration => f.write_str(text::place::calibration()),
            Self::Standard(number) => f.write_str(&text::place::standard(number)),
        }
    }
}

impl fmt::Display for Place {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let part = self.part.to_string();
        f.write_str(&part)?;
        let Some(entry) = self.entry else {
            return Ok(());
        };
        if !part.is_empty() {
            f.write_str(", ")?;
        }
        f.write_str(match self.part.is_of_readings() {
            true => entry.in_words(),
            false => entry.key(),
        })
    }
}

#[cfg(test)]
mod tests {
    use super::{Added, Entry, Part};

    #[test]
    fn places_are_written_as_recipes_and_readings_name_them() {
        let yellow = Part::added(Added::Dye, 0, "yellow");
        for (place, written) in [
            (Part::Recipe.at(Entry::Class), "class"),
            (Part::Goods.at(Entry::Weight), "goods, weight"),
            (Part::Water.whole(), "water"),
            (Part::Water.at(Entry::LiquorRatio), "water, liquor_ratio"),
            (yellow.clone().at(Entry::Amount), "dye \"yellow\", amount"),
            (yellow.whole(), "dye \"yellow\""),
            (Part::Reading.at(Entry::LooksLike), "looks like"),
            (
                Part::Rinse(2).at(Entry::VolumeSpread),
                "rinse 2, volume spread",
            ),
            (Part::Rinse(1).at(Entry::Strength), "rinse 1, strength"),
            (Part::Standard(3).whole(), "standard 3"),
        ] {
            assert_eq!(place.to_string(), written);
        }
    }
}
