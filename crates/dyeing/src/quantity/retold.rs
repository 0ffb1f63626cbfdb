//! Amounts within a kept sentence, told in the measures that hold now.

use crate::quantity::{Celsius, Mass, MassUnit, Volume};

/// A sentence that was written within [`locale::Locale::DATA`], with its weights, volumes and
/// temperatures as the locale has them, and both ends of a range of temperatures. Rates (`10 g/L`),
/// ranges whose first figure has no unit of its own (`130 to 200 g`) and whatever else isn't plainly an
/// amount stay as they are.
pub(crate) fn retold(sentence: &str) -> String {
    let mut told = String::new();
    let mut rest = sentence;
    while let Some(at) = rest.find(|c: char| c.is_ascii_digit()) {
        let (before, from) = rest.split_at(at);
        told.push_str(before);
        let stands_alone = told
            .chars()
            .next_back()
            .is_none_or(|c| c.is_whitespace() || matches!(c, '(' | '+' | '"'));
        let number = from.find(|c: char| !c.is_ascii_digit() && c != '.');
        let (number, after) = from.split_at(number.unwrap_or(from.len()));
        let figure = Figure::of(number, after).filter(|_| stands_alone);
        let amount = figure.and_then(|figure| range(from, figure).or_else(|| figure.alone()));
        let (words, after) = amount.unwrap_or_else(|| (number.to_owned(), after));
        told.push_str(&words);
        rest = after;
    }
    told.push_str(rest);
    told
}

/// What stands before a `to` with a figure after it, and what comes after that: both ends of a range of
/// temperatures, or an amount, as in `5 g to 2 L`, as the locale has them; other ranges as they stand.
fn range<'t>(from: &'t str, low: Figure<'t>) -> Option<(String, &'t str)> {
    let high = low.after.strip_prefix(" to ")?;
    let number = high.find(|c: char| !c.is_ascii_digit() && c != '.');
    let (number, after) = high.split_at(number.unwrap_or(high.len()));
    let high = Figure::of(number, after)?;
    let is_temperature = matches!(low.unit, "" | "°C") && high.unit == "°C";
    if !is_temperature && !low.unit.is_empty() && !high.is_rate() {
        // As in `bring 5 L to 60 °C`; the end of a range comes next and is told for itself.
        return Some((low.shown()?, low.after));
    }
    if !is_temperature || high.is_rate() {
        let length = from.len() - high.after.len();
        return Some((from[..length].to_owned(), high.after));
    }
    let unit = high.unit;
    let is_bare = high.is_bare;
    let low = Figure {
        unit,
        is_bare,
        ..low
    };
    Some((format!("{} to {}", low.shown()?, high.shown()?), high.after))
}

/// A number and the word after it, which may be a unit.
#[derive(Clone, Copy)]
struct Figure<'t> {
    value: f64,
    /// Empty where no word follows the number, or `to`.
    unit: &'t str,
    /// Whether it isn't told in the other measure too, in brackets.
    is_bare: bool,
    /// What comes after all this.
    after: &'t str,
}

impl<'t> Figure<'t> {
    fn of(number: &str, after: &'t str) -> Option<Self> {
        let value = number.parse().ok()?;
        let word = after.strip_prefix(' ').unwrap_or_default();
        let end = word.find(|c: char| !c.is_alphabetic() && c != '°');
        let (unit, rest) = word.split_at(end.unwrap_or(word.len()));
        if matches!(unit, "" | "to") {
            return Some(Self {
                value,
                unit: "",
                is_bare: true,
                after,
            });
        }
        // In data some amounts are told in both measures: the other one goes, for it comes anew.
        let (is_bare, after) = match rest.strip_prefix(" (").and_then(|r| r.split_once(')')) {
            Some((other, rest)) if is_customary(other) => (false, rest),
            _ => (true, rest),
        };
        Some(Self {
            value,
            unit,
            is_bare,
            after,
        })
    }

    fn is_rate(self) -> bool {
        let after = self.after;
        after.starts_with(" per ") || after.starts_with(|c: char| c == '/' || c.is_ascii_digit())
    }

    /// An amount that is plainly one, and what comes after it.
    fn alone(self) -> Option<(String, &'t str)> {
        let to = self.after.strip_prefix(" to ").unwrap_or_default();
        let is_other = self.is_rate() || to.starts_with(|c: char| c.is_ascii_digit());
        (!is_other).then(|| Some((self.shown()?, self.after)))?
    }

    /// As the locale has it; none for what is no amount.
    fn shown(self) -> Option<String> {
        let value = self.value;
        let grams = |unit: MassUnit| Mass::new(value, unit).ok();
        let millilitres = |ml: f64| Volume::from_millilitres(value * ml).ok();
        Some(match self.unit {
            "g" => grams(MassUnit::Gram)?.shown(),
            "kg" => grams(MassUnit::Kilogram)?.shown(),
            "ml" => millilitres(1.0)?.shown(),
            "L" => millilitres(1000.0)?.shown(),
            "°C" if self.is_bare => Celsius::new(value).ok()?.shown(),
            "°C" => Celsius::new(value).ok()?.to_string(),
            _ => return None,
        })
    }
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
            ("5 g to 10 g", "0.18 oz (5 g) to 0.35 oz (10 g)"),
            ("5 g to 10 g/L", "5 g to 10 g/L"),
            (
                "add 5 g to 2 L of water",
                "add 0.18 oz (5 g) to 0.53 US gal (2 L) of water",
            ),
            (
                "20 g (5 g to each bath)",
                "0.71 oz (20 g) (0.18 oz (5 g) to each bath)",
            ),
            ("add 5 g to 3 pots", "add 0.18 oz (5 g) to 3 pots"),
            ("add 5 g (0.18 oz) to 2 pots", "add 0.18 oz (5 g) to 2 pots"),
            (
                "5 to 10 g/L, then 20 ml",
                "5 to 10 g/L, then 0.68 US fl oz (20 ml)",
            ),
            (
                "From 40 °C (104 °F) to 60 °C (140 °F).",
                "From 104 °F (40 °C) to 140 °F (60 °C).",
            ),
            ("hold at 40 to 60 °C", "hold at 104 °F to 140 °F"),
            ("from 40 °C to 60 °C;", "from 104 °F to 140 °F;"),
            ("250 g (8.82 oz) to the bath", "8.82 oz (250 g) to the bath"),
            ("cool to 60 °C", "cool to 140 °F"),
            ("bring 5 L to 60 °C", "bring 1.32 US gal (5 L) to 140 °F"),
            ("for 20 to 30 min at 60 °C", "for 20 to 30 min at 140 °F"),
            ("by 1 to 2 °C/min", "by 1 to 2 °C/min"),
            ("by 1 to 2 °C per minute", "by 1 to 2 °C per minute"),
            ("1 to 200 °C", "1 to 200 °C"),
            ("5 g to ", "0.18 oz (5 g) to "),
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
