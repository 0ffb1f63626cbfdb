//! Numbers as people write them: `2.5`, `2,5`, `1/3`, `2 1/2`, `1½`, "half a".

use crate::text;
use crate::{error::DyeingError, quantity::Cursor};

/// Fractions that have a character of their own.
const VULGAR: [(char, f64, f64); 15] = [
    ('½', 1.0, 2.0),
    ('⅓', 1.0, 3.0),
    ('⅔', 2.0, 3.0),
    ('¼', 1.0, 4.0),
    ('¾', 3.0, 4.0),
    ('⅕', 1.0, 5.0),
    ('⅖', 2.0, 5.0),
    ('⅗', 3.0, 5.0),
    ('⅘', 4.0, 5.0),
    ('⅙', 1.0, 6.0),
    ('⅚', 5.0, 6.0),
    ('⅛', 1.0, 8.0),
    ('⅜', 3.0, 8.0),
    ('⅝', 5.0, 8.0),
    ('⅞', 7.0, 8.0),
];

const WORDS: [(&str, f64); 12] = [
    ("half", 0.5),
    ("a", 1.0),
    ("an", 1.0),
    ("one", 1.0),
    ("two", 2.0),
    ("three", 3.0),
    ("four", 4.0),
    ("five", 5.0),
    ("six", 6.0),
    ("eight", 8.0),
    ("ten", 10.0),
    ("twelve", 12.0),
];

/// Whether a word, in small letters, is a number's.
pub fn is_word(word: &str) -> bool {
    WORDS.iter().any(|(name, _)| *name == word)
}

/// Whether a number starts here.
pub fn starts(cursor: &mut Cursor) -> bool {
    cursor.skip_space();
    let before = cursor.at;
    let found = match cursor.peek() {
        Some(c) if c.is_ascii_digit() || vulgar(c).is_some() || matches!(c, '-' | '−' | '.') => {
            true
        }
        Some(c) if c.is_alphabetic() => {
            let (_, word) = cursor.word();
            is_word(&word)
        }
        _ => false,
    };
    cursor.at = before;
    found
}

/// Reads a number that is not below 0.
///
/// # Errors
/// Says which character is at fault: a minus, a fraction without one of its halves, a division by
/// 0, or `1,000`, which is a thousand to some and one to others.
pub fn read(cursor: &mut Cursor) -> Result<f64, DyeingError> {
    cursor.skip_space();
    let start = cursor.at;
    match cursor.peek() {
        None => Err(cursor.fault(start, text::quantity::a_number_is_missing_as_in_250())),
        Some('-' | '−') => Err(cursor.fault(start, text::quantity::an_amount_cant_be_below_0())),
        Some(c) if vulgar(c).is_some() => {
            cursor.at += 1;
            Ok(vulgar(c).unwrap_or(0.0))
        }
        Some(c) if c.is_ascii_digit() || c == '.' => in_digits(cursor),
        Some(c) if c.is_alphabetic() => in_words(cursor),
        Some(_) => Err(cursor.fault(start, text::quantity::a_number_is_wanted_here())),
    }
}

fn vulgar(c: char) -> Option<f64> {
    let found = VULGAR.iter().find(|(sign, ..)| *sign == c);
    found.map(|(_, over, under)| over / under)
}

fn in_words(cursor: &mut Cursor) -> Result<f64, DyeingError> {
    let (at, word) = cursor.word();
    let Some((_, value)) = WORDS.iter().find(|(name, _)| *name == word) else {
        return Err(cursor.fault(at, text::quantity::a_number_is_wanted_before(&word)));
    };
    if word == "half" {
        cursor.eat_word(&["of"]);
        cursor.eat_word(&["a", "an"]);
    } else if matches!(word.as_str(), "a" | "an") && cursor.eat_word(&["half"]) {
        cursor.eat_word(&["of"]);
        cursor.eat_word(&["a", "an"]);
        return Ok(0.5);
    }
    Ok(*value)
}

fn in_digits(cursor: &mut Cursor) -> Result<f64, DyeingError> {
    let start = cursor.at;
    let whole = cursor.digits();
    match cursor.peek() {
        Some('.' | ',') => return decimal(cursor, start, &whole),
        Some('/' | '⁄') => return fraction(cursor, start, &whole),
        Some(c) if vulgar(c).is_some() => {
            cursor.at += 1;
            return Ok(parsed(cursor, start, &whole)? + vulgar(c).unwrap_or(0.0));
        }
        _ => {}
    }
    let value = parsed(cursor, start, &whole)?;
    // "2 1/2", "2-1/2" and "2 ½": a second number belongs to the first only if it is a fraction.
    let after_whole = cursor.at;
    if !cursor.eat('-') {
        cursor.skip_space();
    }
    if let Some(part) = cursor.peek().and_then(vulgar) {
        cursor.at += 1;
        return Ok(value + part);
    }
    let over_at = cursor.at;
    let over = cursor.digits();
    if !over.is_empty() && matches!(cursor.peek(), Some('/' | '⁄')) {
        let part = fraction(cursor, over_at, &over)?;
        if part >= 1.0 {
            return Err(cursor.fault(over_at, text::quantity::a_fraction_after_a_whole_number()));
        }
        return Ok(value + part);
    }
    cursor.at = after_whole;
    Ok(value)
}

fn decimal(cursor: &mut Cursor, start: usize, whole: &str) -> Result<f64, DyeingError> {
    let (mark_at, mark) = (cursor.at, cursor.peek());
    cursor.at += 1;
    let places = cursor.digits();
    if places.is_empty() {
        return Err(cursor.fault(
            cursor.at,
            text::quantity::a_digit_is_wanted_after_the_decimal(),
        ));
    }
    if mark == Some(',') && places.len() == 3 && !whole.trim_start_matches('0').is_empty() {
        let why = text::quantity::is_a_thousand_to_some(whole, &places);
        return Err(cursor.fault(mark_at, why));
    }
    if matches!(cursor.peek(), Some('.' | ',')) {
        return Err(cursor.fault(
            cursor.at,
            text::quantity::a_number_has_one_decimal_mark_write(),
        ));
    }
    parsed(cursor, start, &format!("{whole}.{places}"))
}

fn fraction(cursor: &mut Cursor, start: usize, over: &str) -> Result<f64, DyeingError> {
    cursor.at += 1;
    let under_at = cursor.at;
    let under = cursor.digits();
    if under.is_empty() {
        return Err(cursor.fault(under_at, text::quantity::a_whole_number_is_wanted_after()));
    }
    let (over, under) = (
        parsed(cursor, start, over)?,
        parsed(cursor, under_at, &under)?,
    );
    if under == 0.0 {
        return Err(cursor.fault(under_at, text::quantity::a_fraction_cant_have_0_below()));
    }
    Ok(over / under)
}

fn parsed(cursor: &Cursor, start: usize, digits: &str) -> Result<f64, DyeingError> {
    match digits.parse::<f64>() {
        Ok(value) if value.is_finite() => Ok(value),
        _ => Err(cursor.fault(start, text::quantity::this_number_is_too_large())),
    }
}

#[cfg(test)]
mod tests {
    use super::read;
    use crate::quantity::Cursor;

    fn number(text: &str) -> f64 {
        read(&mut Cursor::new(text)).unwrap()
    }

    #[test]
    fn people_write_numbers_in_many_ways() {
        for (text, value) in [
            ("2.5", 2.5),
            ("2,5", 2.5),
            (".5", 0.5),
            ("1/3", 1.0 / 3.0),
            ("2 1/2 tsp", 2.5),
            ("2-1/2 tsp", 2.5),
            ("2½", 2.5),
            ("2 ½", 2.5),
            ("⅔ cup", 2.0 / 3.0),
            ("1⁄4", 0.25),
            ("half a cup", 0.5),
            ("a half", 0.5),
            ("a pound", 1.0),
            ("two shirts", 2.0),
            ("0,125", 0.125),
            ("250 g", 250.0),
        ] {
            assert_eq!(number(text), value, "{text}");
        }
    }

    #[test]
    fn a_fault_points_at_its_character() {
        for (text, at) in [
            ("1//3 cup", 2),
            ("1/", 2),
            ("1/0 cup", 2),
            ("-3 g", 0),
            ("", 0),
            ("some salt", 0),
            ("1,000 g", 1),
            ("1.2.3", 3),
            ("2. g", 2),
            ("2 4/3 cup", 2),
            ("?", 0),
        ] {
            let fault = read(&mut Cursor::new(text)).unwrap_err();
            assert_eq!(
                fault.pointed().unwrap(),
                format!("{text}\n{}^", " ".repeat(at)),
                "{fault}"
            );
        }
    }
}
