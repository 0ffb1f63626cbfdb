//! A reading as it is typed, and what is made of it.

use crate::form::{Problems, Signed};
use crate::text;
use dyeing::{
    DyeingError, Entry,
    balance::{Absorbances, WrittenReading},
};

/// The fields of a reading; those of a correction end in the number of what they correct.
#[derive(Clone, Default)]
pub(crate) struct Draft {
    /// `bath` or `rinse`.
    pub(crate) water: String,
    pub(crate) volume: String,
    pub(crate) volume_spread: String,
    pub(crate) looks_like: String,
    pub(crate) absorbance: String,
    pub(crate) concentration: String,
    pub(crate) dilution: String,
    pub(crate) spread: String,
}

impl Draft {
    pub(crate) fn typed(form: &Signed) -> Self {
        Self {
            water: form.text("water"),
            volume: form.text("volume"),
            volume_spread: form.text("volume_spread"),
            looks_like: form.text("looks_like"),
            absorbance: form.text("absorbance"),
            concentration: form.text("concentration"),
            dilution: form.text("dilution"),
            spread: form.text("spread"),
        }
    }

    pub(crate) fn of(water: &str, reading: &WrittenReading) -> Self {
        let text = |entry: &Option<String>| entry.clone().unwrap_or_default();
        let absorbances = reading
            .absorbance
            .as_ref()
            .map_or(&[][..], Absorbances::all);
        let absorbances: Vec<String> = absorbances.iter().map(f64::to_string).collect();
        Self {
            water: water.to_owned(),
            volume: reading.volume.clone(),
            volume_spread: text(&reading.volume_spread),
            looks_like: text(&reading.looks_like),
            absorbance: absorbances.join("; "),
            concentration: text(&reading.concentration),
            dilution: text(&reading.dilution),
            spread: text(&reading.spread),
        }
    }

    /// Whether more than the fields that are always shown is filled in.
    pub(crate) fn has_more(&self) -> bool {
        let more = [&self.volume_spread, &self.dilution, &self.spread];
        more.iter().any(|text| !text.is_empty())
    }

    /// The reading, or what is wrong with the absorbances.
    pub(crate) fn reading(&self) -> Result<WrittenReading, String> {
        let entry = |text: &String| (!text.is_empty()).then(|| text.clone());
        Ok(WrittenReading {
            volume: self.volume.clone(),
            volume_spread: entry(&self.volume_spread),
            looks_like: entry(&self.looks_like),
            absorbance: absorbances(&self.absorbance)?,
            concentration: entry(&self.concentration),
            dilution: entry(&self.dilution),
            spread: entry(&self.spread),
        })
    }
}

/// Numbers apart by spaces or semicolons; none in an empty field.
fn absorbances(typed: &str) -> Result<Option<Absorbances>, String> {
    let words = typed.split(|c: char| c == ';' || c.is_whitespace());
    let mut numbers = Vec::new();
    for word in words.filter(|word| !word.is_empty()) {
        let number = word.replace(',', ".").parse::<f64>().ok();
        numbers.push(
            number
                .filter(|n| n.is_finite())
                .ok_or_else(|| text::rinse::is_no_absorbance_give_numbers_such(word))?,
        );
    }
    Ok(match numbers.as_slice() {
        [] => None,
        [one] => Some(Absorbances::One(*one)),
        _ => Some(Absorbances::Several(numbers)),
    })
}

/// The field that a fault of a balance is about.
pub(crate) fn problems(error: &DyeingError, suffix: &str) -> Problems {
    let mut problems = Problems::default();
    let field = match error.place().and_then(|place| place.entry) {
        Some(
            entry @ (Entry::Volume
            | Entry::VolumeSpread
            | Entry::Absorbance
            | Entry::Concentration
            | Entry::Dilution
            | Entry::Spread),
        ) => entry.key(),
        _ => Entry::LooksLike.key(),
    };
    problems.add(
        format!("{field}{suffix}"),
        crate::pages::recipe::places::sentence(&error.at_its_place()),
    );
    problems
}
