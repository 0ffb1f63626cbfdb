//! Which measures come first.

use crate::{Locale, current};
use serde::{Deserialize, Serialize};

/// A system of measures.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Measures {
    /// Grams, litres, °C.
    #[default]
    Metric,
    /// Ounces and pounds, US fluid ounces and gallons, °F.
    UsCustomary,
}

impl Measures {
    /// Every system, in the order in which they are offered.
    pub const ALL: [Self; 2] = [Self::Metric, Self::UsCustomary];

    /// Its short name, as forms send it.
    pub const fn key(self) -> &'static str {
        match self {
            Self::Metric => "metric",
            Self::UsCustomary => "us_customary",
        }
    }
}

/// One amount in both systems, the chosen one first, the other in brackets.
///
/// ```
/// use locale::{Locale, Measures, beside_in};
/// let american = Locale { measures: Measures::UsCustomary, ..Locale::DATA };
/// assert_eq!(beside_in(&Locale::DATA, "250 g", "8.82 oz"), "250 g (8.82 oz)");
/// assert_eq!(beside_in(&american, "250 g", "8.82 oz"), "8.82 oz (250 g)");
/// ```
pub fn beside_in(locale: &Locale, metric: &str, customary: &str) -> String {
    match locale.measures {
        Measures::Metric => format!("{metric} ({customary})"),
        Measures::UsCustomary => format!("{customary} ({metric})"),
    }
}

/// The same by the locale that holds now.
pub fn beside(metric: &str, customary: &str) -> String {
    beside_in(&current(), metric, customary)
}
