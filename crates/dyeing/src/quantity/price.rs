//! Prices: a sum for an amount, in a currency that may be named.

use crate::text;
use crate::{
    error::DyeingError,
    quantity::{Amount, Cursor, Kitchen, Money, amount, money, number},
};
use locale::Currency;
use serde::{Deserialize, Serialize};

/// Words between a sum and what it is for.
const FOR: [&str; 2] = ["per", "for"];

/// What an amount costs, as in `8.50 per 250 g` or `EUR 8.50 per 250 g`.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Price {
    /// The sum that is asked.
    pub money: Money,
    /// For how much of it.
    pub per: Amount,
    /// What it is in, where the price says so itself.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub currency: Option<Currency>,
}

impl Price {
    /// Reads `8.50 per 250 g`, `4.99 per bottle`, `8,50 €/250 g` or `USD 4 per kg`; measures are of
    /// that kitchen.
    ///
    /// `own` is what prices are in that name no currency. A sign that several currencies share, such as
    /// `$`, means that one if it is one of them.
    ///
    /// ```
    /// use dyeing::{Kitchen, Price};
    /// let euro = "EUR".parse().ok();
    /// let price = Price::read("8,50 € per 250 g", Kitchen::Metric, None)?;
    /// assert_eq!((price.money.cents(), price.currency), (850, euro));
    /// assert_eq!(Price::read("8.50 per 250 g", Kitchen::Metric, euro)?.currency, None);
    /// assert!(Price::read("$8.50 per 250 g", Kitchen::Metric, euro).is_err());
    /// # Ok::<(), dyeing::DyeingError>(())
    /// ```
    ///
    /// # Errors
    /// Points at the character at fault; refuses a price for nothing, a currency that isn't known, two
    /// currencies, and a sign of several currencies that `own` doesn't settle.
    pub fn read(text: &str, kitchen: Kitchen, own: Option<Currency>) -> Result<Self, DyeingError> {
        let mut cursor = Cursor::new(text);
        let sum = sum(&mut cursor, own)?;
        cursor.skip_space();
        if !cursor.eat('/') && !cursor.eat_word(&FOR) {
            let why = text::quantity::say_for_how_much_as_in_8();
            return Err(cursor.fault(cursor.at, why));
        }
        cursor.skip_space();
        let at = cursor.at;
        let per = amount::amount(&mut cursor, kitchen)?;
        cursor.finish()?;
        if per.is_zero() {
            return Err(cursor.fault(at, text::quantity::a_price_has_to_be_for_more()));
        }
        Ok(Self {
            money: sum.money,
            per,
            currency: sum.currency,
        })
    }
}

/// A sum as it stands in a text.
pub(crate) struct Sum {
    pub(crate) money: Money,
    /// What it says it is in.
    pub(crate) currency: Option<Currency>,
    /// Where its figure stands, characters from and up to.
    pub(crate) figure: (usize, usize),
}

/// Reads a sum with its currency before it, after it or not at all.
pub(crate) fn sum(cursor: &mut Cursor, own: Option<Currency>) -> Result<Sum, DyeingError> {
    let before = named(cursor, own)?;
    cursor.skip_space();
    let from = cursor.at;
    let money = money::read(cursor)?;
    let to = cursor.at;
    cursor.skip_space();
    let at = cursor.at;
    let after = named(cursor, own)?;
    if before.is_some() && after.is_some() {
        return Err(cursor.fault(at, text::quantity::a_price_names_its_currency_once()));
    }
    Ok(Sum {
        money,
        currency: before.or(after),
        figure: (from, to),
    })
}

/// Steps over a currency's code or sign, if one comes next.
fn named(cursor: &mut Cursor, own: Option<Currency>) -> Result<Option<Currency>, DyeingError> {
    cursor.skip_space();
    let (at, rest) = (cursor.at, cursor.rest());
    if let Some((length, meant)) = Currency::of_sign(&rest) {
        let one = match meant.as_slice() {
            [one] => Some(*one),
            several => own.filter(|own| several.contains(own)),
        };
        let sign: String = rest.chars().take(length).collect();
        cursor.at += length;
        return one.map(Some).ok_or_else(|| {
            let [first, second] = [0, 1].map(|i| meant.get(i).map_or("", |one| one.code()));
            let why = text::quantity::several_currencies_share_this_sign(&sign, first, second);
            cursor.fault(at, why)
        });
    }
    let letters: String = rest.chars().take_while(|c| c.is_alphabetic()).collect();
    if is_code(&letters) {
        cursor.at += letters.len();
        let code = letters.parse::<Currency>();
        return code
            .map(Some)
            .map_err(|fault| cursor.fault(at, fault.to_string()));
    }
    match rest.chars().next() {
        Some(sign) if is_money_sign(sign) => {
            Err(cursor.fault(at, text::quantity::this_sign_is_not_known(sign.to_string())))
        }
        _ => Ok(None),
    }
}

/// Whether letters are a currency's code: three capitals, or three small ones that are a currency's.
/// Words of a price are none, in whatever letters.
fn is_code(letters: &str) -> bool {
    let small = letters.to_lowercase();
    if FOR.contains(&small.as_str()) || number::is_word(&small) {
        return false;
    }
    let three = letters.len() == 3 && letters.bytes().all(|byte| byte.is_ascii_alphabetic());
    let capitals = letters.bytes().all(|byte| byte.is_ascii_uppercase());
    three && (capitals || letters.parse::<Currency>().is_ok())
}

/// Whether a character is a sign of money.
///
/// # Source
/// Unicode's block Currency Symbols, U+20A0 to U+20CF; beside it the signs of Latin-1 and those of
/// full width.
fn is_money_sign(sign: char) -> bool {
    matches!(
        sign,
        '\u{20a0}'..='\u{20cf}' | '¢' | '¤' | '¥' | '＄' | '￡' | '￥'
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn read(text: &str, own: &str) -> Result<Price, DyeingError> {
        Price::read(text, Kitchen::Metric, own.parse().ok())
    }

    #[test]
    fn a_currency_stands_before_or_after_by_code_or_sign() {
        for (text, own, cents, code) in [
            ("12.50 per 100 g", "EUR", 1250, ""),
            ("12,50 € per 100 g", "", 1250, "EUR"),
            ("€12.50/100 g", "USD", 1250, "EUR"),
            ("EUR 12.50 per 100 g", "", 1250, "EUR"),
            ("12.50 EUR/100 g", "", 1250, "EUR"),
            ("12.50EUR per 100 g", "", 1250, "EUR"),
            ("USD 4 per kg", "EUR", 400, "USD"),
            ("usd 4 per kg", "", 400, "USD"),
            ("4 chf for 1 kg", "", 400, "CHF"),
            ("$4 per kg", "CAD", 400, "CAD"),
            ("4 $ per kg", "USD", 400, "USD"),
            ("US$ 4 per kg", "CAD", 400, "USD"),
            ("£3.20 per bottle", "GBP", 320, "GBP"),
            ("25 kr per 50 g", "NOK", 2500, "NOK"),
            ("25 kr. per 50 g", "DKK", 2500, "DKK"),
            ("kr. 25 per 50 g", "SEK", 2500, "SEK"),
            ("S$4 per kg", "USD", 400, "SGD"),
            ("4 MX$ per kg", "", 400, "MXN"),
            ("NT$ 40 per kg", "", 4000, "TWD"),
            ("5 zł per 50 g", "EUR", 500, "PLN"),
            ("3 euros per 50 g", "", 300, "EUR"),
            ("TRY 40 per 100 g", "", 4000, "TRY"),
        ] {
            let price = read(text, own).unwrap();
            let found = price.currency.map_or("", Currency::code);
            assert_eq!((price.money.cents(), found), (cents, code), "{text}");
        }
    }

    #[test]
    fn what_names_no_one_currency_is_refused_in_words() {
        for (text, own, part) in [
            ("$4 per kg", "", "share the sign $"),
            ("4 $ per kg", "EUR", "share the sign $"),
            (
                "£4 per kg",
                "USD",
                "share the sign £; write the code, as in GBP or EGP,",
            ),
            ("4 kr per kg", "USD", "as in SEK or NOK"),
            ("ABC 4 per kg", "", "no currency ABC"),
            ("4 JPY per kg", "", "Sums in JPY have 0 decimals"),
            ("¥400 per kg", "", "sign ¥ is not known"),
            ("400 ₿ per kg", "", "sign ₿ is not known"),
            ("EUR 4 EUR per kg", "", "once"),
            ("€ 4 USD per kg", "", "once"),
            ("EUR per kg", "", "number"),
            ("-4 EUR per kg", "", "below 0"),
            ("EUR -4 per kg", "", "below 0"),
            ("EUR 4.999 per kg", "", "two decimals"),
            ("EUR 1,250 per kg", "", "thousand"),
            ("EUR", "", "number"),
            ("4 EUR", "", "for how much"),
            ("4 bucks per kg", "", "for how much"),
        ] {
            let fault = read(text, own).unwrap_err().to_string();
            assert!(fault.contains(part), "{text}: {fault}");
        }
    }

    #[test]
    fn words_of_a_price_are_no_codes_in_capitals() {
        for (text, per) in [
            ("8.50 PER 250 g", "8.50 per 250 g"),
            ("8.50 FOR 1 kg", "8.50 for 1 kg"),
            ("8.50 EUR PER ONE KG", "8.50 EUR per 1 kg"),
            ("8.50 For Ten g", "8.50 for 10 g"),
            ("TEN PER 250 g", "10 per 250 g"),
        ] {
            assert_eq!(read(text, "").unwrap(), read(per, "").unwrap(), "{text}");
        }
        for word in ["PER", "FOR", "ONE", "TWO", "SIX", "TEN"] {
            assert!(!is_code(word), "{word}");
            // ISO 4217 has none of them.
            assert!(word.parse::<Currency>().is_err(), "{word}");
        }
    }

    proptest! {
        #[test]
        fn whatever_is_typed_is_read_or_refused(text in "\\PC{0,24}", own in 0usize..3) {
            let _ = read(&text, ["", "EUR", "USD"][own]);
        }

        #[test]
        fn every_code_is_read_on_either_side(index in 0usize..120, cents in 0i64..1_000_000) {
            let currency = Currency::all().nth(index).expect("there are more");
            let money = Money::from_cents(cents);
            for text in [format!("{currency} {money}/100 g"), format!("{money} {currency} per 1 kg")] {
                let price = read(&text, "").unwrap();
                prop_assert_eq!((price.money, price.currency), (money, Some(currency)));
            }
        }
    }
}
