//! What stands on a shelf: how much of a material a lot holds, and what a bath takes from it.

use crate::text;
use locale::Currency;
use std::fmt;

use crate::{
    Amount, Kitchen, Mass, Price, Volume,
    error::DyeingError,
    plan::Line,
    quantity::{Cursor, figure, read_number, read_sum},
};

/// By what a lot is counted.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum StockUnit {
    /// By weight, g.
    Gram,
    /// By volume, ml.
    Millilitre,
    /// By the bottle.
    Bottle,
    /// By the piece: garments, skeins.
    Piece,
}

/// So much of a material; below 0 where more was taken than there was.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stock {
    /// How many of the unit.
    pub amount: f64,
    /// The unit.
    pub unit: StockUnit,
}

impl StockUnit {
    /// Its short name, as it is kept.
    pub const fn key(self) -> &'static str {
        match self {
            Self::Gram => "g",
            Self::Millilitre => "ml",
            Self::Bottle => "bottle",
            Self::Piece => "piece",
        }
    }

    /// The unit of that short name.
    pub fn of_key(key: &str) -> Option<Self> {
        [Self::Gram, Self::Millilitre, Self::Bottle, Self::Piece]
            .into_iter()
            .find(|unit| unit.key() == key)
    }
}

impl Stock {
    /// Reads `500 g`, `1 1/2 lb`, `2 bottles`, `8 fl oz` or `12 pieces`.
    ///
    /// ```
    /// use dyeing::{Kitchen, stock::{Stock, StockUnit}};
    /// let shirts = Stock::read("12 pieces", Kitchen::Us)?;
    /// assert_eq!((shirts.amount, shirts.unit), (12.0, StockUnit::Piece));
    /// assert_eq!(Stock::read("1/2 kg", Kitchen::Us)?.to_string(), "500 g");
    /// # Ok::<(), dyeing::DyeingError>(())
    /// ```
    ///
    /// # Errors
    /// Points at the character at fault; refuses none at all.
    pub fn read(text: &str, kitchen: Kitchen) -> Result<Self, DyeingError> {
        let stock = match pieces(text) {
            Some(amount) => Self {
                amount,
                unit: StockUnit::Piece,
            },
            None => Self::of(Amount::read(text, kitchen)?),
        };
        DyeingError::unless(
            stock.amount > 0.0,
            text::stock::amount(),
            stock.amount,
            "",
            text::stock::above_0(),
        )?;
        Ok(stock)
    }

    /// An amount in grams, millilitres or bottles.
    pub fn of(amount: Amount) -> Self {
        let (amount, unit) = match amount {
            Amount::Mass(mass) => (mass.grams(), StockUnit::Gram),
            Amount::Volume(volume) => (volume.millilitres(), StockUnit::Millilitre),
            Amount::Bottles(n) => (n, StockUnit::Bottle),
        };
        Self { amount, unit }
    }

    /// What a bath takes of a material that is counted by that unit; nothing where the recipe
    /// doesn't tell it in that unit.
    pub fn for_line(line: &Line, unit: StockUnit) -> Option<Self> {
        let amount = match (unit, line.amount) {
            (StockUnit::Gram, _) => line.solid_g?,
            (StockUnit::Millilitre, Amount::Volume(volume)) => volume.millilitres(),
            (StockUnit::Bottle, Amount::Bottles(n)) => n,
            (StockUnit::Bottle, Amount::Volume(volume)) => {
                volume.millilitres() / line.bottle?.millilitres()
            }
            _ => return None,
        };
        (amount > 0.0 && amount.is_finite()).then_some(Self { amount, unit })
    }
}

impl fmt::Display for Stock {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.amount < 0.0 {
            f.write_str("−")?;
        }
        let amount = self.amount.abs();
        let whole = match self.unit {
            StockUnit::Gram => Mass::from_grams(amount).map(|m| m.shown()),
            StockUnit::Millilitre => Volume::from_millilitres(amount).map(|v| v.shown()),
            StockUnit::Bottle => Ok(text::stock::bottles(counted(amount))),
            StockUnit::Piece => Ok(text::stock::pieces(counted(amount))),
        };
        f.write_str(&whole.unwrap_or_default())
    }
}

/// A whole count with all its digits.
fn counted(amount: f64) -> String {
    if amount.fract() == 0.0 && amount <= f64::from(u32::MAX) {
        (amount as u32).to_string()
    } else {
        figure(amount)
    }
}

/// A count of pieces, if the text is one.
fn pieces(text: &str) -> Option<f64> {
    let mut cursor = Cursor::new(text);
    let count = read_number(&mut cursor).ok()?;
    let said = cursor.eat_word(&["piece", "pieces", "pc", "pcs", "skein", "skeins"]);
    (said && cursor.is_done()).then_some(count)
}

/// The price of a lot: what was written less its currency, and the currency.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LotPrice {
    /// As it was written, without a currency: `9.50 per 100 g`.
    pub plain: String,
    /// What it is in; none: it names none, and neither does the bench.
    pub currency: Option<Currency>,
}

/// Reads the price of a lot: `9.50 per 100 g`, `USD 4.99 per bottle` or `6,00 € per piece`. What names no
/// currency is in `own`.
///
/// ```
/// use dyeing::{Kitchen, stock::read_price};
/// let price = read_price("USD 9.50/100 g", Kitchen::Us, "EUR".parse().ok())?;
/// assert_eq!((price.plain.as_str(), price.currency), ("9.50/100 g", "USD".parse().ok()));
/// # Ok::<(), dyeing::DyeingError>(())
/// ```
///
/// # Errors
/// Points at the character at fault.
pub fn read_price(
    text: &str,
    kitchen: Kitchen,
    own: Option<Currency>,
) -> Result<LotPrice, DyeingError> {
    let text = text.trim();
    let mut cursor = Cursor::new(text);
    let ends = [text::stock::per_piece(), text::stock::a_piece(), "each"];
    let sum = match ends.iter().find_map(|end| text.strip_suffix(end)) {
        Some(money) => {
            let mut money = Cursor::new(money);
            let sum = read_sum(&mut money, own)?;
            money.finish()?;
            cursor.at = money.at;
            sum
        }
        None => {
            Price::read(text, kitchen, own)?;
            read_sum(&mut cursor, own)?
        }
    };
    let figure: String = text.chars().take(sum.figure.1).skip(sum.figure.0).collect();
    let rest = cursor.rest();
    let rest = rest.trim_start();
    let gap = if rest.starts_with('/') { "" } else { " " };
    Ok(LotPrice {
        plain: format!("{figure}{gap}{rest}"),
        currency: sum.currency.or(own),
    })
}

/// The price of a lot as it was written, with the currency it is in: `9.50 EUR per 100 g`. Where
/// `named` is empty it is in the bench's currency, if there is one.
///
/// ```
/// use dyeing::stock::price_with_currency;
/// assert_eq!(price_with_currency("9,50/100 g", "EUR"), "9,50 EUR/100 g");
/// assert_eq!(price_with_currency("6.00 each", ""), "6.00 each");
/// ```
pub fn price_with_currency(written: &str, named: &str) -> String {
    let written = written.trim();
    let end = written.find(|c: char| !c.is_ascii_digit() && !matches!(c, '.' | ','));
    match written.split_at(end.unwrap_or(written.len())) {
        ("", other) => other.to_owned(),
        (figure, rest) => format!("{}{rest}", locale::sum(figure, named)),
    }
}

/// How much of `wanted` comes from each lot, the first ones first; what no lot holds comes from the
/// last, which then holds less than nothing and wants counting.
///
/// ```
/// use dyeing::stock::drawn;
/// assert_eq!(drawn(&[30.0, 0.0, 100.0], 50.0), [30.0, 0.0, 20.0]);
/// assert_eq!(drawn(&[30.0, 10.0], 50.0), [30.0, 20.0]);
/// ```
pub fn drawn(left: &[f64], wanted: f64) -> Vec<f64> {
    let mut still = wanted;
    let mut taken: Vec<f64> = left
        .iter()
        .map(|left| {
            let taken = left.max(0.0).min(still);
            still -= taken;
            taken
        })
        .collect();
    if let Some(last) = taken.last_mut() {
        *last += still;
    }
    taken
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn amounts_are_read_and_said() {
        for (text, said) in [
            ("500 g", "500 g"),
            ("2 1/2 kg", "2.5 kg"),
            ("1 lb", "454 g"),
            ("750 ml", "750 ml"),
            ("2 bottles", "2 bottles"),
            ("1 piece", "1 piece"),
            ("12 skeins", "12 pieces"),
        ] {
            let stock = Stock::read(text, Kitchen::Us).unwrap();
            assert_eq!(stock.to_string(), said, "{text}");
            assert_eq!(StockUnit::of_key(stock.unit.key()), Some(stock.unit));
        }
        let owed = Stock {
            amount: -20.0,
            unit: StockUnit::Gram,
        };
        assert_eq!(owed.to_string(), "−20 g");
        for text in ["", "0 g", "-5 g", "12", "a heap", "0 pieces", "5 min"] {
            assert!(Stock::read(text, Kitchen::Us).is_err(), "{text}");
        }
    }

    #[test]
    fn prices_are_for_something() {
        for (text, plain, code) in [
            ("9.50 per 100 g", "9.50 per 100 g", "EUR"),
            ("4.99 per bottle", "4.99 per bottle", "EUR"),
            ("6.00 per piece", "6.00 per piece", "EUR"),
            (" 6 each ", "6 each", "EUR"),
            ("12,50 €/100 g", "12,50/100 g", "EUR"),
            ("USD 4 per kg", "4 per kg", "USD"),
            ("6 CHF each", "6 each", "CHF"),
            ("6CHF each", "6 each", "CHF"),
            ("5 zł a piece", "5 a piece", "PLN"),
        ] {
            let read = read_price(text, Kitchen::Us, "EUR".parse().ok()).unwrap();
            let code = read.currency.map_or("", Currency::code) == code;
            assert!(code && read.plain == plain, "{text}: {read:?}");
            // What is kept is read as it was.
            let again = read_price(&read.plain, Kitchen::Us, read.currency).unwrap();
            assert_eq!(again, read);
        }
        let plain = read_price("9.50 per 100 g", Kitchen::Us, None).unwrap();
        assert_eq!(plain.currency, None);
        for text in [
            "9.50",
            "per 100 g",
            "cheap each",
            "1.234 per kg",
            "$6 each",
            "6 USD EUR each",
            "6 XYZ each",
        ] {
            let read = read_price(text, Kitchen::Us, "EUR".parse().ok());
            assert!(read.is_err(), "{text}");
        }
    }

    proptest! {
        #[test]
        fn what_is_drawn_is_what_was_wanted(
            left in proptest::collection::vec(-50.0..500.0f64, 1..6),
            wanted in 0.0..2000.0f64,
        ) {
            let taken = drawn(&left, wanted);
            prop_assert!((taken.iter().sum::<f64>() - wanted).abs() < 1e-9);
            prop_assert!(taken.iter().all(|t| *t >= 0.0));
            // No lot but the last goes below nothing by it.
            for (left, taken) in left.iter().zip(&taken).take(left.len() - 1) {
                prop_assert!(*taken <= left.max(0.0));
            }
        }
    }
}
