//! How the bench writes measures, currency, days and times.

pub(crate) mod keep;
pub(crate) mod show;

use crate::text::settings as say;
use dyeing::{Celsius, Mass};
use locale::Locale;

/// A day whose number is no month's, so that an example can't be misread.
const DAY: &str = "2026-11-26";

/// A weight, a temperature, a price and a day with its time, as a locale writes them.
pub(crate) fn examples(locale: Locale) -> [String; 4] {
    locale::within(locale, || {
        let [weight, part] =
            [250.0, 100.0].map(|grams| Mass::from_grams(grams).unwrap_or_default());
        let heat = Celsius::new(60.0).map(|at| at.to_string());
        [
            weight.to_string(),
            heat.unwrap_or_default(),
            say::price_per(locale::sum("8.50", ""), part.shown()),
            format!("{}, {}", locale::day(DAY), locale::time_of_day(18, 5)),
        ]
    })
}
