//! Units as people write them.

use crate::text;
use serde::{Deserialize, Serialize};

use crate::{
    error::DyeingError,
    quantity::{Cursor, MassUnit, VolumeUnit},
};

/// Whose cups and spoons.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Kitchen {
    /// US customary.
    #[default]
    Us,
    /// Cups of 250 ml, spoons of 15 and 5 ml.
    Metric,
    /// Imperial pints and gallons with today's British spoons of 15 and 5 ml.
    Imperial,
}

impl Kitchen {
    /// Its short name, as recipes and forms write it.
    pub const fn key(self) -> &'static str {
        match self {
            Self::Us => "us",
            Self::Metric => "metric",
            Self::Imperial => "imperial",
        }
    }
}

/// A unit of an amount.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Unit {
    /// Of mass.
    Mass(MassUnit),
    /// Of volume.
    Volume(VolumeUnit),
    /// A bottle, of whatever size.
    Bottle,
    /// Of time, in minutes.
    Time(f64),
}

/// A scale of temperature.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Scale {
    /// °C.
    Celsius,
    /// °F.
    Fahrenheit,
}

/// Reads a scale of temperature.
pub fn temperature(cursor: &mut Cursor) -> Result<Scale, DyeingError> {
    cursor.skip_space();
    cursor.eat('°');
    let (at, word) = cursor.word();
    match word.as_str() {
        "c" | "celsius" => Ok(Scale::Celsius),
        "f" | "fahrenheit" => Ok(Scale::Fahrenheit),
        "deg" | "degrees" => temperature(cursor),
        _ => Err(cursor.fault(at, text::quantity::say_c_or_f())),
    }
}

/// Reads a unit; cups and spoons without the name of a kitchen are of the given one.
pub fn read(cursor: &mut Cursor, kitchen: Kitchen) -> Result<Unit, DyeingError> {
    let (mut at, mut word) = cursor.word();
    let mut named = None;
    if let Some(of) = kitchen_named(&word) {
        named = Some(of);
        cursor.eat('.');
        (at, word) = cursor.word();
    }
    if matches!(word.as_str(), "level" | "heaped") {
        let why = text::quantity::measures_are_meant_level_leave_the_word();
        return Err(cursor.fault(at, why));
    }
    if word == "fl" || word == "fluid" {
        cursor.eat('.');
        let (ounce_at, ounce) = cursor.word();
        if !matches!(ounce.as_str(), "oz" | "ounce" | "ounces") {
            return Err(cursor.fault(
                ounce_at,
                text::quantity::ounce_or_oz_is_wanted_after_fluid(),
            ));
        }
        word = "floz".into();
    }
    if let Some(unit) = plain(&word) {
        cursor.eat('.');
        return Ok(unit);
    }
    let measure = measure(cursor, at, &word, named, kitchen)?;
    cursor.eat('.');
    Ok(Unit::Volume(measure))
}

fn kitchen_named(word: &str) -> Option<Of> {
    match word {
        "us" | "american" => Some(Of::Us),
        "metric" => Some(Of::Metric),
        "imperial" | "imp" | "uk" | "british" => Some(Of::Imperial),
        "australian" | "aus" => Some(Of::Australian),
        "label" => Some(Of::Label),
        _ => None,
    }
}

/// Kitchens that a measure can name; two have one measure each.
#[derive(Clone, Copy, PartialEq)]
enum Of {
    Us,
    Metric,
    Imperial,
    Australian,
    Label,
}

fn plain(word: &str) -> Option<Unit> {
    use {MassUnit as M, VolumeUnit as V};
    Some(match word {
        "mg" | "milligram" | "milligrams" => Unit::Mass(M::Milligram),
        "g" | "gram" | "grams" | "gramme" | "grammes" => Unit::Mass(M::Gram),
        "kg" | "kilo" | "kilos" | "kilogram" | "kilograms" => Unit::Mass(M::Kilogram),
        "grain" | "grains" => Unit::Mass(M::Grain),
        "oz" | "ounce" | "ounces" => Unit::Mass(M::Ounce),
        "lb" | "lbs" | "pound" | "pounds" => Unit::Mass(M::Pound),
        "ml" | "millilitre" | "millilitres" | "milliliter" | "milliliters" | "cc" => {
            Unit::Volume(V::Millilitre)
        }
        "cl" | "centilitre" | "centilitres" | "centiliter" | "centiliters" => {
            Unit::Volume(V::Centilitre)
        }
        "dl" | "decilitre" | "decilitres" | "deciliter" | "deciliters" => {
            Unit::Volume(V::Decilitre)
        }
        "l" | "litre" | "litres" | "liter" | "liters" => Unit::Volume(V::Litre),
        "bottle" | "bottles" => Unit::Bottle,
        "s" | "sec" | "second" | "seconds" => Unit::Time(1.0 / 60.0),
        "min" | "mins" | "minute" | "minutes" => Unit::Time(1.0),
        "h" | "hr" | "hrs" | "hour" | "hours" => Unit::Time(60.0),
        "day" | "days" => Unit::Time(1440.0),
        _ => return None,
    })
}

fn measure(
    cursor: &Cursor,
    at: usize,
    word: &str,
    named: Option<Of>,
    kitchen: Kitchen,
) -> Result<VolumeUnit, DyeingError> {
    use VolumeUnit as V;
    let of = named.unwrap_or(match kitchen {
        Kitchen::Us => Of::Us,
        Kitchen::Metric => Of::Metric,
        Kitchen::Imperial => Of::Imperial,
    });
    let found = match (word, of) {
        ("tsp" | "tsps" | "teaspoon" | "teaspoons", Of::Us) => V::UsTeaspoon,
        ("tsp" | "tsps" | "teaspoon" | "teaspoons", _) => V::MetricTeaspoon,
        ("tbsp" | "tbsps" | "tbs" | "tablespoon" | "tablespoons", Of::Us) => V::UsTablespoon,
        ("tbsp" | "tbsps" | "tbs" | "tablespoon" | "tablespoons", Of::Australian) => {
            V::AustralianTablespoon
        }
        ("tbsp" | "tbsps" | "tbs" | "tablespoon" | "tablespoons", _) => V::MetricTablespoon,
        ("cup" | "cups", Of::Us) => V::UsCup,
        ("cup" | "cups", Of::Label) => V::UsLegalCup,
        ("cup" | "cups", Of::Imperial) => V::ImperialCup,
        ("cup" | "cups", _) => V::MetricCup,
        ("floz", Of::Us | Of::Label) => V::UsFluidOunce,
        ("floz", Of::Imperial) => V::ImperialFluidOunce,
        ("pint" | "pints" | "pt" | "pts", Of::Us) => V::UsPint,
        ("pint" | "pints" | "pt" | "pts", Of::Imperial) => V::ImperialPint,
        ("quart" | "quarts" | "qt" | "qts", Of::Us) => V::UsQuart,
        ("quart" | "quarts" | "qt" | "qts", Of::Imperial) => V::ImperialQuart,
        ("gallon" | "gallons" | "gal" | "gals", Of::Us) => V::UsGallon,
        ("gallon" | "gallons" | "gal" | "gals", Of::Imperial) => V::ImperialGallon,
        _ => return Err(cursor.fault(at, unknown(cursor, at, word, of))),
    };
    Ok(found)
}

fn unknown(cursor: &Cursor, at: usize, word: &str, of: Of) -> String {
    match (word, cursor.char_at(at)) {
        ("", Some('%')) => text::quantity::a_percentage_is_not_wanted_here_write().into(),
        ("", Some('-' | '–')) => text::quantity::a_range_is_no_amount_write().into(),
        ("", _) => text::quantity::a_unit_is_missing_as_in_250().into(),
        ("t", _) => text::quantity::t_and_t_are_easily_mixed_up().into(),
        ("c", _) => text::quantity::write_cup_or_c_for_a_temperature().into(),
        ("drop" | "drops" | "pinch" | "pinches" | "handful" | "dash", _) => {
            text::quantity::a_has_no_fixed_size_weigh(word.trim_end_matches('s'))
        }
        (
            "floz" | "pint" | "pints" | "pt" | "quart" | "quarts" | "qt" | "gallon" | "gallons"
            | "gal",
            _,
        ) => text::quantity::this_measure_is_either_us_or_imperial().into(),
        _ if of == Of::Label => text::quantity::only_a_cup_has_a_size().into(),
        _ => text::quantity::is_no_unit_known_here_use_g(word),
    }
}
