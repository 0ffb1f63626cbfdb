//! Amounts within a kept sentence, told in the measures that hold now.

use crate::quantity::{Celsius, Mass, MassUnit, Volume};
use std::fmt::Write as _;

/// A sentence that was written within [`locale::Locale::DATA`], with its weights, volumes and
/// temperatures as the locale has them. Rates (`10 g/L`), ranges (`130 to 200 g`) and whatever else
/// isn't plainly an amount stay as they are.
pub(crate) fn retold(sentence: &str) -> String {
    let mut told = String::new();
    let mut rest = sentence;
    while let Some(at) = rest.find(|c: char| c.is_ascii_digit()) {
        let (before, from) = rest.split_at(at);
        told.push_str(before);
        let number = from.find(|c: char| !c.is_ascii_digit() && c != '.');
        let (number, after) = from.split_at(number.unwrap_or(from.len()));
        let stands_alone = told
            .chars()
            .next_back()
            .is_none_or(|c| c.is_whitespace() || matches!(c, '(' | '+' | '"'))
            && !told.ends_with(" to ");
        let amount = stands_alone.then(|| amount(number, after)).flatten();
        rest = match amount {
            Some((words, after)) => {
                told.push_str(&words);
                after
            }
            None => {
                let _ = write!(told, "{number}");
                after
            }
        };
    }
    told.push_str(rest);
    told
}

/// An amount as the locale has it, and what comes after it.
fn amount<'t>(number: &str, after: &'t str) -> Option<(String, &'t str)> {
    let value: f64 = number.parse().ok()?;
    let after = after.strip_prefix(' ')?;
    let end = after.find(|c: char| !c.is_alphabetic() && c != '°');
    let (unit, after) = after.split_at(end.unwrap_or(after.len()));
    let is_other = [" per ", " to "].iter().any(|word| after.starts_with(word))
        || after.starts_with(|c: char| c == '/' || c.is_ascii_digit());
    if is_other {
        return None;
    }
    let grams = |unit: MassUnit| Mass::new(value, unit).ok();
    let millilitres = |ml: f64| Volume::from_millilitres(value * ml).ok();
    // In data some amounts are told in both measures: the other one goes, for it comes anew.
    let (bare, both) = match after
        .strip_prefix(" (")
        .and_then(|rest| rest.split_once(')'))
    {
        Some((other, rest)) if is_customary(other) => (false, rest),
        _ => (true, after),
    };
    let words = match unit {
        "g" => grams(MassUnit::Gram)?.shown(),
        "kg" => grams(MassUnit::Kilogram)?.shown(),
        "ml" => millilitres(1.0)?.shown(),
        "L" => millilitres(1000.0)?.shown(),
        "°C" if bare => Celsius::new(value).ok()?.shown(),
        "°C" => Celsius::new(value).ok()?.to_string(),
        _ => return None,
    };
    Some((words, both))
}

fn is_customary(words: &str) -> bool {
    ["oz", "lb", "°F", "US gal", "US fl oz", "US tsp"]
        .iter()
        .any(|unit| words.ends_with(unit))
}

#[cfg(test)]
mod tests {
    use super::retold;
    use locale::{Locale, Measures, within};
    use proptest::prelude::*;

    const AMERICAN: Locale = Locale {
        measures: Measures::UsCustomary,
        ..Locale::DATA
    };

    #[test]
    fn amounts_follow_the_measures_and_other_numbers_stay() {
        for (kept, told) in [
            ("Add 250 g of salt.", "Add 8.82 oz (250 g) of salt."),
            ("250 g (8.82 oz) of salt", "8.82 oz (250 g) of salt"),
            ("in 5 L at 60 °C", "in 1.32 US gal (5 L) at 140 °F"),
            ("to 60 °C (140 °F),", "to 140 °F (60 °C),"),
            ("(1.5 kg)", "(3 lb 4.9 oz (1.5 kg))"),
            ("10 g/L of salt", "10 g/L of salt"),
            ("20 g per kg", "20 g per kg"),
            ("usually 130 to 200 g", "usually 130 to 200 g"),
            ("5 g to 10 g", "5 g to 10 g"),
            ("2 % owf, pH 10.5, 30 min", "2 % owf, pH 10.5, 30 min"),
            ("lot 7 g1 x250 g", "lot 7 g1 x250 g"),
            ("1.2.3 g", "1.2.3 g"),
            ("", ""),
        ] {
            assert_eq!(within(AMERICAN, || retold(kept)), told);
        }
    }

    proptest! {
        #[test]
        fn whatever_is_kept_is_told(sentence in "[a-z0-9.°CgkmlL/() ]{0,40}") {
            within(AMERICAN, || retold(&sentence));
        }
    }
}
