//! How much of something: a weight, a volume, or bottles.

use crate::text;
use std::fmt;

use serde::{Deserialize, Serialize};

use crate::{
    error::DyeingError,
    quantity::{
        Cursor, Kitchen, Mass, Volume, figure, number,
        term::{self, Term},
        unit::Unit,
    },
};

/// An amount by weight, by volume, or by bottles of a size not yet known.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Amount {
    /// By weight, g.
    Mass(Mass),
    /// By volume, ml.
    Volume(Volume),
    /// Bottles.
    Bottles(f64),
}

impl Amount {
    /// Reads `250 g`, `1/3 cup` or `half a bottle`.
    ///
    /// # Errors
    /// Points at the character at fault.
    pub fn read(text: &str, kitchen: Kitchen) -> Result<Self, DyeingError> {
        let mut cursor = Cursor::new(text);
        let amount = amount(&mut cursor, kitchen)?;
        cursor.finish()?;
        Ok(amount)
    }

    /// That many times as much.
    ///
    /// # Errors
    /// Refuses a factor below 0 or not finite.
    pub fn times(self, factor: f64) -> Result<Self, DyeingError> {
        Ok(match self {
            Self::Mass(mass) => Self::Mass(mass.times(factor)?),
            Self::Volume(volume) => Self::Volume(volume.times(factor)?),
            Self::Bottles(n) => {
                let n = n * factor;
                let range = text::quantity::n_0_or_more();
                Self::Bottles(DyeingError::unless(
                    n >= 0.0,
                    text::quantity::amount(),
                    n,
                    text::quantity::bottles_2(),
                    range,
                )?)
            }
        })
    }

    /// How many times another amount of the same kind it is.
    pub fn over(self, other: Self) -> Option<f64> {
        let ratio = match (self, other) {
            (Self::Mass(a), Self::Mass(b)) => a.grams() / b.grams(),
            (Self::Volume(a), Self::Volume(b)) => a.millilitres() / b.millilitres(),
            (Self::Bottles(a), Self::Bottles(b)) => a / b,
            _ => return None,
        };
        ratio.is_finite().then_some(ratio)
    }

    /// Whether it is nothing.
    pub fn is_zero(self) -> bool {
        match self {
            Self::Mass(mass) => mass.grams() == 0.0,
            Self::Volume(volume) => volume.millilitres() == 0.0,
            Self::Bottles(n) => n == 0.0,
        }
    }
}

impl Amount {
    /// In metric units, or in bottles.
    pub fn metric(self) -> String {
        match self {
            Self::Mass(mass) => mass.metric(),
            Self::Volume(volume) => volume.metric(),
            Self::Bottles(n) => text::quantity::bottles(figure(n)),
        }
    }
}

impl fmt::Display for Amount {
    /// As the locale has it.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&match self {
            Self::Mass(mass) => mass.shown(),
            Self::Volume(volume) => volume.shown(),
            Self::Bottles(_) => self.metric(),
        })
    }
}

/// Reads an amount; a unit without a number counts once.
pub fn amount(cursor: &mut Cursor, kitchen: Kitchen) -> Result<Amount, DyeingError> {
    let value = if number::starts(cursor) || cursor.peek().is_none() {
        number::read(cursor)?
    } else {
        1.0
    };
    amount_from(cursor, value, kitchen)
}

/// Reads an amount whose number was read already.
pub fn amount_from(
    cursor: &mut Cursor,
    value: f64,
    kitchen: Kitchen,
) -> Result<Amount, DyeingError> {
    let first = term::unit_after(cursor, value, kitchen)?;
    let mut sum = of_term(cursor, first)?;
    while term::follows(cursor) {
        let next = term::read(cursor, kitchen)?;
        sum = match (sum, of_term(cursor, next)?) {
            (Amount::Mass(a), Amount::Mass(b)) => Amount::Mass(a + b),
            (Amount::Volume(a), Amount::Volume(b)) => Amount::Volume(a + b),
            (Amount::Bottles(a), Amount::Bottles(b)) => Amount::Bottles(a + b),
            _ => {
                let why = text::quantity::a_weight_and_a_volume_cant();
                return Err(cursor.fault(next.at, why));
            }
        };
    }
    Ok(sum)
}

fn of_term(cursor: &Cursor, term: Term) -> Result<Amount, DyeingError> {
    match term.unit {
        Unit::Mass(unit) => Ok(Amount::Mass(Mass::new(term.value, unit)?)),
        Unit::Volume(unit) => Ok(Amount::Volume(Volume::new(term.value, unit)?)),
        Unit::Bottle => Ok(Amount::Bottles(term.value)),
        Unit::Time(_) => {
            Err(cursor.fault(term.at, text::quantity::a_weight_or_a_volume_is_wanted()))
        }
    }
}
