//! Money, to the cent.

use crate::text;
use std::{fmt, iter::Sum, ops::Add, str::FromStr};

use serde::{Deserialize, Serialize};

use crate::{
    error::DyeingError,
    quantity::{Cursor, number},
};

/// A sum of money in hundredths of its currency's unit (cents, pence); whole in JSON too.
#[derive(
    Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default, Hash, Serialize, Deserialize,
)]
#[serde(transparent)]
pub struct Money(i64);

impl Money {
    /// Nothing.
    pub const ZERO: Self = Self(0);
    /// More than any bath costs, so that sums stay whole numbers.
    const LARGEST_CENTS: f64 = 1e13;

    /// That many hundredths.
    pub const fn from_cents(cents: i64) -> Self {
        Self(cents)
    }

    /// In hundredths.
    pub fn cents(self) -> i64 {
        self.0
    }

    /// That many times as much, rounded once to the nearest hundredth, halves up.
    ///
    /// A product within a millionth of a hundredth of a half counts as a half, so that binary
    /// fractions don't decide.
    ///
    /// ```
    /// use dyeing::Money;
    /// assert_eq!(Money::from_cents(850).times(0.035)?, Money::from_cents(30)); // 29.75
    /// assert_eq!(Money::from_cents(5).times(0.1)?, Money::from_cents(1)); // 0.5
    /// # Ok::<(), dyeing::DyeingError>(())
    /// ```
    ///
    /// # Errors
    /// Refuses a factor below 0 or not finite, and sums above 100 thousand million.
    pub fn times(self, factor: f64) -> Result<Self, DyeingError> {
        let cents = self.0 as f64 * factor;
        let fine = factor >= 0.0 && libm::fabs(cents) <= Self::LARGEST_CENTS;
        let cents = DyeingError::unless(
            fine,
            text::quantity::sum_of_money(),
            cents,
            text::quantity::cents(),
            text::quantity::n_0_to_1e13(),
        )?;
        Ok(Self(libm::floor(cents + 0.5 + 1e-6) as i64))
    }
}

impl Money {
    /// With its currency, as the locale has it: `8.50 EUR`. `named` is what it is in; where that is
    /// empty it is in the bench's currency, if there is one.
    pub fn shown(self, named: &str) -> String {
        locale::sum(&self.to_string(), named)
    }
}

impl fmt::Display for Money {
    /// The plain number: `8.50`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let sign = if self.0 < 0 { "-" } else { "" };
        let cents = self.0.unsigned_abs();
        write!(f, "{sign}{}.{:02}", cents / 100, cents % 100)
    }
}

impl FromStr for Money {
    type Err = DyeingError;

    /// Reads `8.50` or `8,5`; more than two decimals are refused. Faults point at a character.
    fn from_str(text: &str) -> Result<Self, DyeingError> {
        let mut cursor = Cursor::new(text);
        let money = read(&mut cursor)?;
        cursor.finish()?;
        Ok(money)
    }
}

pub(crate) fn read(cursor: &mut Cursor) -> Result<Money, DyeingError> {
    cursor.skip_space();
    let at = cursor.at;
    let value = number::read(cursor)?;
    let cents = libm::round(value * 100.0);
    if libm::fabs(cents - value * 100.0) > 1e-6 {
        return Err(cursor.fault(at, text::quantity::a_price_has_two_decimals_at_most()));
    }
    if cents > Money::LARGEST_CENTS {
        return Err(cursor.fault(at, text::quantity::this_price_is_too_high()));
    }
    Ok(Money(cents as i64))
}

impl Add for Money {
    type Output = Self;

    fn add(self, other: Self) -> Self {
        Self(self.0.saturating_add(other.0))
    }
}

impl Sum for Money {
    fn sum<I: Iterator<Item = Self>>(all: I) -> Self {
        all.fold(Self::ZERO, Add::add)
    }
}
