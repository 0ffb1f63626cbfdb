//! Currencies and how a sum is written.

use crate::codes::{NO_MONEY, OTHER_DECIMALS, TWO_DECIMALS};
use crate::{Locale, LocaleError, current};
use serde::{Deserialize, Serialize};
use std::fmt;
use std::str::FromStr;

/// A currency whose sums have two decimals, by its code.
///
/// Sums are kept in hundredths (`dyeing::Money`), which others would not fit.
///
/// ```
/// let euro: locale::Currency = " eur ".parse()?;
/// assert_eq!((euro.code(), euro.name()), ("EUR", "Euro"));
/// assert!("JPY".parse::<locale::Currency>().is_err());
/// # Ok::<(), locale::LocaleError>(())
/// ```
///
/// # Source
/// ISO 4217, list one of 1 January 2026; `reference/locale`.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct Currency {
    /// Its place in the list.
    index: u8,
}

impl Currency {
    /// Every currency that can be chosen, by code.
    pub fn all() -> impl Iterator<Item = Self> {
        (0u8..).take(TWO_DECIMALS.len()).map(|index| Self { index })
    }

    /// Its three letters, such as `EUR`.
    pub fn code(self) -> &'static str {
        TWO_DECIMALS[usize::from(self.index)].0
    }

    /// Its English name, such as `Euro`.
    pub fn name(self) -> &'static str {
        TWO_DECIMALS[usize::from(self.index)].1
    }
}

impl fmt::Display for Currency {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.code())
    }
}

impl FromStr for Currency {
    type Err = LocaleError;

    /// Reads a code, in whatever case.
    fn from_str(typed: &str) -> Result<Self, LocaleError> {
        let typed = typed.trim();
        if typed.len() != 3 || !typed.bytes().all(|byte| byte.is_ascii_alphabetic()) {
            let typed = typed.chars().take(20).collect();
            return Err(LocaleError::NotACode { typed });
        }
        let code = typed.to_ascii_uppercase();
        if let Some(found) = Self::all().find(|currency| currency.code() == code) {
            return Ok(found);
        }
        if let Some((_, decimals)) = OTHER_DECIMALS.iter().find(|(other, _)| *other == code) {
            let decimals = *decimals;
            return Err(LocaleError::NoCents { code, decimals });
        }
        if NO_MONEY.contains(&code.as_str()) {
            return Err(LocaleError::NoMoney { code });
        }
        Err(LocaleError::NoSuchCurrency { code })
    }
}

impl TryFrom<String> for Currency {
    type Error = LocaleError;

    fn try_from(code: String) -> Result<Self, LocaleError> {
        code.parse()
    }
}

impl From<Currency> for String {
    fn from(currency: Currency) -> String {
        currency.code().to_owned()
    }
}

/// Where a sum's currency stands. Always as its code: symbols such as $ and £ name several
/// currencies each.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum SumOrder {
    /// `8.50 EUR`.
    #[default]
    CodeLast,
    /// `EUR 8.50`.
    CodeFirst,
}

impl SumOrder {
    /// Both orders, as they are offered.
    pub const ALL: [Self; 2] = [Self::CodeLast, Self::CodeFirst];

    /// Its short name, as forms send it.
    pub const fn key(self) -> &'static str {
        match self {
            Self::CodeLast => "code_last",
            Self::CodeFirst => "code_first",
        }
    }
}

/// A sum with its currency: the one it names itself, else the bench's, else none.
///
/// ```
/// use locale::{Locale, SumOrder, sum_in};
/// let locale = Locale { currency: "EUR".parse().ok(), ..Locale::DATA };
/// assert_eq!(sum_in(&locale, "8.50", ""), "8.50 EUR");
/// assert_eq!(sum_in(&locale, "8.50", "USD"), "8.50 USD");
/// assert_eq!(sum_in(&Locale::DATA, "8.50", ""), "8.50");
/// ```
pub fn sum_in(locale: &Locale, figure: &str, named: &str) -> String {
    let own = locale.currency.map_or("", Currency::code);
    let code = if named.is_empty() { own } else { named };
    match locale.sums {
        _ if code.is_empty() => figure.to_owned(),
        SumOrder::CodeLast => format!("{figure} {code}"),
        SumOrder::CodeFirst => format!("{code} {figure}"),
    }
}

/// The same by the locale that holds now.
pub fn sum(figure: &str, named: &str) -> String {
    sum_in(&current(), figure, named)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_has_no_cents_or_is_no_code_is_refused_by_name() {
        for (typed, code) in [
            ("", "not_a_currency_code"),
            ("€", "not_a_currency_code"),
            ("US", "not_a_currency_code"),
            ("EURO", "not_a_currency_code"),
            ("E R", "not_a_currency_code"),
            ("<b>", "not_a_currency_code"),
            ("ÄÖÜ", "not_a_currency_code"),
            ("ABC", "no_such_currency"),
            // Replaced by the euro and by XCG.
            ("DEM", "no_such_currency"),
            ("ANG", "no_such_currency"),
            ("JPY", "currency_without_cents"),
            ("kwd", "currency_without_cents"),
            ("CLF", "currency_without_cents"),
            ("XAU", "code_is_no_money"),
            ("XXX", "code_is_no_money"),
        ] {
            let fault = typed.parse::<Currency>().unwrap_err();
            assert_eq!(fault.code(), code, "{typed}");
        }
        let long = "x".repeat(10_000).parse::<Currency>().unwrap_err();
        assert!(long.to_string().len() < 200);
        let yen = "jpy".parse::<Currency>().unwrap_err().to_string();
        assert!(yen.contains("JPY have 0 decimals"), "{yen}");
    }

    #[test]
    fn a_sum_never_loses_its_own_currency() {
        let locale = Locale {
            currency: "USD".parse().ok(),
            sums: SumOrder::CodeFirst,
            ..Locale::DATA
        };
        assert_eq!(sum_in(&locale, "0.42", ""), "USD 0.42");
        assert_eq!(sum_in(&locale, "0.42", "EUR"), "EUR 0.42");
    }
}
