//! How a bench writes measures, sums of money, days and times of day, by its owner's setting.
//!
//! In: what can be chosen ([`Measures`], [`Currency`], [`SumOrder`], [`DateFormat`], [`Clock`]),
//! how each writes, and which [`Locale`] holds now. Out: what is measured (`dyeing`), where the
//! setting is kept (`store`), where it is chosen (`web`), the words around a figure (`text/`).
//!
//! A program serves one bench, so the setting holds for the whole process, as the locale of C
//! does: [`set`] when a bench is opened or its setting changes, [`current`] where something is
//! written. [`within`] holds another one for a piece of work: files of data are written within
//! [`Locale::DATA`], so that a reader of data never has to ask.
//!
//! ```
//! use locale::{DateFormat, Locale, day};
//! let american = Locale { dates: DateFormat::MonthNamed, ..Locale::DATA };
//! assert_eq!(day("2026-11-26T18:05:00Z"), "2026-11-26");
//! assert_eq!(locale::within(american, || day("2026-11-26")), "Nov 26, 2026");
//! ```

mod choice;
mod clock;
mod codes;
mod currency;
mod current;
mod dates;
mod error;
mod language;
mod measures;
mod sentence;
mod sign;
mod text;

// The texts ask for the language by the path that other crates call this one.
extern crate self as locale;

pub use clock::{Clock, time_at, time_of_day, time_of_day_in};
pub use currency::{Currency, SumOrder, sum, sum_in};
pub use current::{current, set, within};
pub use dates::{DateFormat, day, day_in};
pub use error::LocaleError;
pub use language::language;
pub use measures::{Measures, beside, beside_in};
pub use sentence::capital;

use serde::{Deserialize, Serialize};

/// What a person chose for their bench. Whatever is missing where it is kept stands as in
/// [`Locale::DATA`].
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(default)]
pub struct Locale {
    /// Which measures come first.
    pub measures: Measures,
    /// What sums are in that name no currency of their own; none: they are plain numbers.
    pub currency: Option<Currency>,
    /// Where the currency stands.
    pub sums: SumOrder,
    /// How a day is written.
    pub dates: DateFormat,
    /// How a time of day is written.
    pub clock: Clock,
}

impl Locale {
    /// What files of data are written in, and what holds until a person chooses: metric, plain
    /// numbers, days by ISO 8601, 24 hours.
    pub const DATA: Self = Self {
        measures: Measures::Metric,
        currency: None,
        sums: SumOrder::CodeLast,
        dates: DateFormat::Iso,
        clock: Clock::Hours24,
    };
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_not_said_stands_as_in_data() {
        assert_eq!(Locale::default(), Locale::DATA);
        assert_eq!(serde_json::from_str::<Locale>("{}").unwrap(), Locale::DATA);
        let some = r#"{"currency":"USD","dates":"month_first"}"#;
        let read: Locale = serde_json::from_str(some).unwrap();
        assert_eq!(read.currency.unwrap().code(), "USD");
        assert_eq!(
            (read.dates, read.clock),
            (DateFormat::MonthFirst, Clock::Hours24)
        );
    }

    #[test]
    fn a_locale_is_kept_and_read_back() {
        let chosen = Locale {
            measures: Measures::UsCustomary,
            currency: Some("USD".parse().unwrap()),
            sums: SumOrder::CodeFirst,
            dates: DateFormat::MonthNamed,
            clock: Clock::Hours12,
        };
        let text = serde_json::to_string(&chosen).unwrap();
        assert_eq!(serde_json::from_str::<Locale>(&text).unwrap(), chosen);
        for broken in [
            r#"{"currency":"JPY"}"#,
            r#"{"currency":"euro"}"#,
            r#"{"measures":"cubits"}"#,
        ] {
            assert!(serde_json::from_str::<Locale>(broken).is_err(), "{broken}");
        }
    }
}
