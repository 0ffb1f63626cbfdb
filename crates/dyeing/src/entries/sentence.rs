//! What the parser says, in our own sentences.

use crate::text::entries as say;

/// What is wrong and what to do, by the parser's message, what it points at and the line that is in;
/// nothing for a message that isn't known.
pub(super) fn of(message: &str, found: &str, line: &str) -> Option<String> {
    of_entries(message, found).or_else(|| of_signs(message, found, line).map(str::to_owned))
}

/// Faults of entries that can be read and don't fit.
fn of_entries(message: &str, found: &str) -> Option<String> {
    if let Some(rest) = message.strip_prefix("unknown field ") {
        let (name, known) = named(rest)?;
        return Some(match nearest(&name, &known) {
            Some(meant) => say::there_is_no_entry_did_you_mean(name, meant, known.join(", ")),
            None if known.is_empty() => say::there_is_no_entry(name),
            None => say::there_is_no_entry_those_are(name, known.join(", ")),
        });
    }
    if let Some(rest) = message.strip_prefix("unknown variant ") {
        let (word, known) = named(rest)?;
        return Some(match nearest(&word, &known) {
            Some(meant) => say::isnt_a_word_did_you_mean(word, meant, known.join(", ")),
            None => say::isnt_a_word_that_does(word, known.join(", ")),
        });
    }
    if let Some(rest) = message.strip_prefix("missing field ") {
        let (name, _) = named(rest)?;
        return Some(say::an_entry_is_missing(name));
    }
    if message.starts_with("data did not match any variant") {
        return Some(say::is_of_another_kind().to_owned());
    }
    for (beginning, said) in [
        (
            "invalid type: ",
            say::is_given_and_is_asked_for as fn(String, String) -> String,
        ),
        ("invalid value: ", say::doesnt_fit),
    ] {
        if let Some(rest) = message.strip_prefix(beginning) {
            let (kind, expected) = rest.rsplit_once(", expected ")?;
            let too_great =
                greatest(expected).filter(|_| kind.starts_with("integer `") && !kind.contains('-'));
            return Some(match too_great {
                Some(greatest) => {
                    say::doesnt_fit(given(kind, found), say::a_whole_number_up_to(greatest))
                }
                None => said(given(kind, found), asked(expected).to_owned()),
            });
        }
    }
    None
}

/// The greatest whole number that fits, from the parser's words for what is asked for.
fn greatest(expected: &str) -> Option<u64> {
    Some(match expected {
        "u8" => u8::MAX.into(),
        "u16" => u16::MAX.into(),
        "u32" => u32::MAX.into(),
        "u64" | "usize" => u64::MAX,
        _ => return None,
    })
}

/// Faults of quotation marks, brackets, commas and numbers.
fn of_signs(message: &str, found: &str, line: &str) -> Option<&'static str> {
    let begins = |beginnings: &[&str]| beginnings.iter().any(|b| message.starts_with(b));
    let first = found.chars().next();
    let value = line.split_once('=').map(|(_, value)| value.trim_start());
    // A word that begins as `true`, `false`, `inf` or `nan` does is taken for one of these.
    let is_word = value.is_some_and(|value| value.starts_with(char::is_alphabetic));
    Some(if first.is_some_and(|c| "“”„‘’«»".contains(c)) {
        say::quotation_marks_are_straight()
    } else if first.is_some_and(is_unseen_space) {
        say::a_hidden_sign_stands_here()
    } else if value.is_some_and(|value| value.starts_with(is_dash)) {
        say::a_minus_is_a_hyphen()
    } else if begins(&["unexpected key or value"]) {
        match value {
            Some(value) if value.starts_with(['"', '\'']) => say::a_unit_stands_within_the_marks(),
            Some(value) if has_a_comma(value) => say::a_number_has_a_point(),
            _ => return None,
        }
    } else if is_word && begins(&["invalid boolean", "invalid float", "invalid datetime"]) {
        say::text_needs_quotation_marks()
    } else if begins(&["string values must be quoted"]) {
        match value {
            Some(value) if has_a_space(value) => say::this_is_no_number(),
            Some(value) if value.starts_with(|c: char| c.is_ascii_digit() || c == '.') => {
                say::what_begins_as_a_number_needs_quotation_marks()
            }
            Some("") => say::there_is_no_value(),
            Some(value) if value.starts_with('[') => say::a_comma_is_missing_between_values(),
            _ => say::text_needs_quotation_marks(),
        }
    } else if begins(&[
        "invalid basic string",
        "invalid multi-line basic string",
        "invalid literal string",
        "invalid multi-line literal string",
        "missing opening quote",
    ]) || message.contains("closing quote")
    {
        say::the_text_has_no_second_quotation_mark()
    } else if begins(&["key with no value", "missing value", "missing assignment"]) {
        say::there_is_no_value()
    } else if begins(&["missing comma between key-value pairs", "extra assignment"]) {
        say::a_comma_is_missing_between_entries()
    } else if begins(&["missing comma between array elements"]) {
        say::a_comma_is_missing_between_values()
    } else if begins(&["unclosed array table", "unclosed table"]) {
        say::the_heading_has_no_bracket_at_its_end()
    } else if begins(&["unclosed array"]) {
        say::the_list_has_no_bracket_at_its_end()
    } else if begins(&["unclosed inline table", "missing key for inline table"]) {
        say::the_brace_isnt_closed()
    } else if begins(&["extra comma"]) {
        say::there_is_a_comma_too_many()
    } else if begins(&["extra `=`", "unexpected `=`"]) {
        say::there_is_an_equals_sign_too_many()
    } else if begins(&["duplicate key"]) {
        say::this_entry_is_there_twice()
    } else if begins(&["cannot extend value", "dotted key"]) {
        say::this_name_has_a_value_already()
    } else if begins(&[
        "invalid unquoted key",
        "unquoted keys cannot be empty",
        "missing key",
        "keys cannot be",
    ]) {
        say::a_name_stands_before_the_equals_sign()
    } else if begins(&[
        "missing escaped value",
        "too few unicode",
        "invalid escape",
        "invalid unicode",
    ]) || message.contains("escape")
    {
        say::a_backslash_in_text_is_written_twice()
    } else if begins(&["carriage return", "invalid comment character"])
        || first.is_some_and(is_hidden)
    {
        say::a_hidden_sign_stands_here()
    } else if begins(&[
        "unexpected leading zero",
        "`_` may only",
        "redundant",
        "unexpected sign",
        "radix must",
        "integers with a radix",
        "invalid integer",
        "invalid float",
        "invalid mantissa",
        "invalid exponent",
        "number too large",
        "integer number",
        "floating-point",
        "invalid datetime",
        "invalid date",
        "invalid time",
    ]) {
        say::this_is_no_number()
    } else if begins(&["cannot recurse further"]) {
        say::brackets_stand_within_too_many_brackets()
    } else {
        return None;
    })
}

/// Whether a number has a comma where such a file has a point.
fn has_a_comma(value: &str) -> bool {
    let number = value.trim_start_matches(['+', '-']);
    number.split_once(',').is_some_and(|(whole, rest)| {
        whole.starts_with(|c: char| c.is_ascii_digit())
            && whole.chars().all(|c| c.is_ascii_digit() || c == '.')
            && rest.starts_with(|c: char| c.is_ascii_digit())
    })
}

/// Whether thousands stand apart, as in `1 000`.
fn has_a_space(value: &str) -> bool {
    let number = value.trim_start_matches(|c: char| c.is_ascii_digit());
    let rest = number.trim_start_matches(|c: char| c == ' ' || is_unseen_space(c));
    number.len() < value.len()
        && rest.len() < number.len()
        && rest.starts_with(|c: char| c.is_ascii_digit())
}

/// A minus sign as print sets it, or a dash.
fn is_dash(c: char) -> bool {
    matches!(c, '\u{2212}' | '\u{2010}'..='\u{2014}')
}

/// A space that looks like one or isn't seen, and is none to the parser.
fn is_unseen_space(c: char) -> bool {
    matches!(
        c,
        '\u{a0}' | '\u{2000}'..='\u{200b}' | '\u{202f}' | '\u{205f}' | '\u{3000}' | '\u{feff}'
    )
}

fn is_hidden(c: char) -> bool {
    c.is_control() && c != '\n' && c != '\t'
}

/// The word in backticks with which a message begins, and the words that would do.
fn named(rest: &str) -> Option<(String, Vec<&str>)> {
    let mut words = rest.split('`').skip(1).step_by(2);
    let name = words.next()?.to_owned();
    Some((name, words.collect()))
}

/// Of the words that would do the one that was meant: nearest by letters changed, left out, added or
/// swapped, at most one in three.
fn nearest<'k>(word: &str, known: &[&'k str]) -> Option<&'k str> {
    let far = |known: &str| changes(&word.to_lowercase(), known);
    let best = known.iter().copied().min_by_key(|known| far(known))?;
    (far(best) <= best.chars().count() / 3).then_some(best)
}

/// How many letters one word is from another: restricted edit distance (Damerau and Levenshtein).
fn changes(a: &str, b: &str) -> usize {
    let (a, b): (Vec<char>, Vec<char>) = (a.chars().collect(), b.chars().collect());
    let mut rows = vec![(0..=b.len()).collect::<Vec<usize>>()];
    for i in 1..=a.len() {
        let mut row = vec![i];
        for j in 1..=b.len() {
            let same = usize::from(a[i - 1] != b[j - 1]);
            let mut least = (rows[i - 1][j] + 1)
                .min(row[j - 1] + 1)
                .min(rows[i - 1][j - 1] + same);
            if i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1] {
                least = least.min(rows[i - 2][j - 2] + 1);
            }
            row.push(least);
        }
        rows.push(row);
    }
    rows[a.len()][b.len()]
}

/// What was found, from the parser's words for its kind, as `integer ``5```, and as it stands.
fn given(kind: &str, found: &str) -> String {
    let value = kind.split('`').nth(1).unwrap_or_default();
    match kind.split([' ', ',']).next().unwrap_or_default() {
        "integer" | "floating" => say::the_number(value),
        "boolean" => say::the_value(value),
        "string" => say::the_text(kind.trim_start_matches("string ")),
        "sequence" => say::a_list().to_owned(),
        // The parser has no other word for dates and times.
        "map" if found.starts_with(|c: char| c.is_ascii_digit()) => say::the_date(found),
        "map" => say::entries_of_its_own().to_owned(),
        _ => say::something_else().to_owned(),
    }
}

/// What is asked for, from the parser's words for it.
fn asked(expected: &str) -> &'static str {
    match expected {
        "a string" | "a borrowed string" => say::text_in_quotation_marks(),
        "a sequence" | "sequence" => say::a_list_in_brackets(),
        "a boolean" => say::true_or_false(),
        "u8" | "u16" | "u32" | "u64" | "usize" => say::a_whole_number(),
        "i8" | "i16" | "i32" | "i64" | "isize" => say::a_whole_number_maybe_negative(),
        "f32" | "f64" => say::a_number_without_quotation_marks(),
        "a map" | "map" => say::entries_in_braces_or_below_a_heading(),
        other if other.starts_with("struct ") => say::entries_in_braces_or_below_a_heading(),
        _ => say::something_of_another_kind(),
    }
}

#[cfg(test)]
mod tests {
    use super::{changes, nearest};

    /// Wikipedia's and textbooks' usual example: kitten and sitting are 3 apart; a swap counts as one.
    #[test]
    fn words_are_as_far_apart_as_their_letters() {
        assert_eq!(changes("kitten", "sitting"), 3);
        assert_eq!(changes("wieght", "weight"), 1);
        assert_eq!(changes("", "abc"), 3);
        assert_eq!(
            nearest("amuont", &["name", "amount", "price"]),
            Some("amount")
        );
        assert_eq!(nearest("colour", &["name", "amount", "price"]), None);
        assert_eq!(nearest("x", &[]), None);
    }
}
