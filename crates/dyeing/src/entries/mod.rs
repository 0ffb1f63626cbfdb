//! Files of entries, as a person writes them in TOML: what can't be read is told with its line, column
//! and what to do; the words of the parser come last.

mod sentence;

use crate::text;
use serde::de::DeserializeOwned;
use std::fmt;

/// Letters of a long line that are shown around the place of the fault.
const MOST_SHOWN: usize = 72;

/// Why a file of entries can't be used.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Unread {
    /// What the file is, as `the recipe`.
    what: String,
    /// The line at fault, from 1.
    pub line: usize,
    /// The character at fault in it, from 1.
    pub column: usize,
    /// The line as it stands, and the character at fault in what is shown of it, from 0.
    shown: (String, usize),
    /// What is wrong and what to do.
    why: String,
    /// The parser's own words.
    parser: String,
}

/// Reads a file of entries; `what` names it in sentences, as `the recipe`.
///
/// # Errors
/// The first line that can't be used.
pub fn read<T: DeserializeOwned>(text: &str, what: &str) -> Result<T, Unread> {
    toml::from_str(text).map_err(|error| Unread::of(text, what, &error))
}

impl Unread {
    fn of(text: &str, what: &str, error: &toml::de::Error) -> Self {
        let message = error.message().trim();
        let span = error.span().unwrap_or_default();
        let start = floor(text, place(text, span.start, message));
        let before = &text[..start];
        let begins = before.rfind('\n').map_or(0, |at| at + 1);
        let line = text[begins..].lines().next().unwrap_or_default();
        let column = text[begins..start].chars().count();
        let found = &text[start..floor(text, span.end.max(start))];
        Self {
            what: what.to_owned(),
            line: before.matches('\n').count() + 1,
            column: column + 1,
            shown: shown(line, column),
            why: sentence::of(message, found, line),
            parser: message.lines().collect::<Vec<_>>().join("; "),
        }
    }

    /// What is wrong and what to do, in a sentence.
    pub fn sentence(&self) -> String {
        let Self {
            line,
            what,
            column,
            why,
            ..
        } = self;
        text::entries::line_of_cant_be_used(line, what, column, why)
    }

    /// The line with a mark below the character at fault, as two lines; nothing for an empty line.
    pub fn pointed(&self) -> Option<String> {
        let (line, at) = &self.shown;
        let mark = format!("{}^", " ".repeat(*at));
        (!line.trim().is_empty()).then(|| format!("  {line}\n  {mark}"))
    }
}

impl fmt::Display for Unread {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        writeln!(f, "{}", self.sentence())?;
        if let Some(pointed) = self.pointed() {
            writeln!(f, "{pointed}")?;
        }
        f.write_str(&text::entries::the_parser_says(&self.parser))
    }
}

impl std::error::Error for Unread {}

/// Where a fault is shown. What is missing at the end of a line is found at the beginning of the next,
/// or behind the last: it is shown where the line ends.
fn place(text: &str, start: usize, message: &str) -> usize {
    let start = floor(text, start);
    let is_missing = !message.starts_with("missing field") && !message.starts_with("unknown field");
    let before = text[..start].trim_end();
    let at_break = text[start..].is_empty() || text[start..].starts_with(['\n', '\r']);
    match is_missing && at_break && !before.is_empty() {
        true => before.len(),
        false => start,
    }
}

/// The next place at or before one that doesn't cut a letter.
fn floor(text: &str, at: usize) -> usize {
    let mut at = at.min(text.len());
    while !text.is_char_boundary(at) {
        at -= 1;
    }
    at
}

/// What is shown of a line, without tabs that would move the mark; and where in it the mark stands.
fn shown(line: &str, column: usize) -> (String, usize) {
    let line: Vec<char> = line
        .chars()
        .map(|c| if c.is_control() { ' ' } else { c })
        .collect();
    if line.len() <= MOST_SHOWN {
        return (line.into_iter().collect(), column);
    }
    let from = column.saturating_sub(MOST_SHOWN / 2);
    let shown: String = line.iter().skip(from).take(MOST_SHOWN).collect();
    let (before, at) = match from {
        0 => ("", column),
        _ => ("… ", column - from + 2),
    };
    let after = match from + MOST_SHOWN < line.len() {
        true => " …",
        false => "",
    };
    (format!("{before}{shown}{after}"), at)
}
