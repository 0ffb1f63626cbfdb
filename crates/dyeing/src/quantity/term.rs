//! Amounts of one or several terms: `250 g`, `1 lb 4 oz`, `1 cup + 2 tbsp`.

use crate::text;
use crate::{
    error::DyeingError,
    quantity::{
        Cursor, Kitchen, Mass, Minutes, Volume, number,
        unit::{self, Unit},
    },
};

/// A number with its unit.
#[derive(Debug, Clone, Copy)]
pub struct Term {
    /// The number.
    pub value: f64,
    /// The unit.
    pub unit: Unit,
    /// Where the unit starts.
    pub at: usize,
}

/// Reads a number and a unit.
pub fn read(cursor: &mut Cursor, kitchen: Kitchen) -> Result<Term, DyeingError> {
    let value = number::read(cursor)?;
    cursor.eat_word(&["of"]);
    unit_after(cursor, value, kitchen)
}

/// Reads the unit of a number that was read before.
pub fn unit_after(cursor: &mut Cursor, value: f64, kitchen: Kitchen) -> Result<Term, DyeingError> {
    cursor.skip_space();
    let at = cursor.at;
    let unit = unit::read(cursor, kitchen)?;
    Ok(Term { value, unit, at })
}

/// Whether a further term follows, as `4 oz` after `1 lb`; steps over "+" and "and".
pub fn follows(cursor: &mut Cursor) -> bool {
    cursor.skip_space();
    if cursor.eat('+') || cursor.eat_word(&["and", "plus"]) {
        return true;
    }
    cursor.peek().is_some_and(|c| c.is_ascii_digit()) && number::starts(cursor)
}

/// Reads a mass that is all of the text.
pub fn mass(text: &str) -> Result<Mass, DyeingError> {
    let why = text::quantity::a_weight_is_wanted_here();
    let grams = whole(text, Kitchen::Us, why, |unit| match unit {
        Unit::Mass(unit) => Some(unit.grams()),
        _ => None,
    })?;
    Mass::from_grams(grams)
}

/// Reads a volume that is all of the text.
pub fn volume(text: &str, kitchen: Kitchen) -> Result<Volume, DyeingError> {
    let why = text::quantity::a_volume_is_wanted_here();
    let ml = whole(text, kitchen, why, |unit| match unit {
        Unit::Volume(unit) => Some(unit.millilitres()),
        _ => None,
    })?;
    Volume::from_millilitres(ml)
}

/// Reads a time that is all of the text.
pub fn minutes(text: &str) -> Result<Minutes, DyeingError> {
    let why = text::quantity::a_time_is_wanted_here();
    let minutes = whole(text, Kitchen::Us, why, |unit| match unit {
        Unit::Time(minutes) => Some(minutes),
        _ => None,
    })?;
    Minutes::new(minutes)
}

fn whole(
    text: &str,
    kitchen: Kitchen,
    why: &str,
    factor: impl Fn(Unit) -> Option<f64>,
) -> Result<f64, DyeingError> {
    let mut cursor = Cursor::new(text);
    let mut sum = 0.0;
    loop {
        let term = read(&mut cursor, kitchen)?;
        let Some(factor) = factor(term.unit) else {
            return Err(cursor.fault(term.at, why));
        };
        sum += term.value * factor;
        if !follows(&mut cursor) {
            break;
        }
    }
    cursor.finish()?;
    Ok(sum)
}
