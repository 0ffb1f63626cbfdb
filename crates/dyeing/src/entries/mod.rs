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
    /// The parser's own words, where these aren't ours already.
    parser: Option<String>,
}

/// Reads a file of entries; `what` names it in sentences, as `the recipe`.
///
/// # Errors
/// The first line that can't be used.
pub fn read<T: DeserializeOwned>(text: &str, what: &str) -> Result<T, Unread> {
    toml::from_str(text).map_err(|error| Unread::of(text, what, &error))
}

impl Unread {
    fn of(file: &str, what: &str, error: &toml::de::Error) -> Self {
        let message = error.message().trim();
        let span = error.span().unwrap_or_default();
        let start = floor(file, place(file, span.start, message));
        let before = &file[..start];
        let begins = before.rfind('\n').map_or(0, |at| at + 1);
        let line = file[begins..].lines().next().unwrap_or_default();
        let column = file[begins..start].chars().count();
        let found = &file[start..floor(file, span.end.max(start))];
        let (why, parser) = match sentence::of(message, found, line) {
            Some(why) => (why, Some(message)),
            None if is_the_parsers(file, message) => (
                text::entries::this_isnt_an_entry().to_owned(),
                Some(message),
            ),
            None => (message.to_owned(), None),
        };
        Self {
            what: what.to_owned(),
            line: before.matches('\n').count() + 1,
            column: column + 1,
            shown: shown(line, column),
            why,
            parser: parser.map(|said| said.lines().collect::<Vec<_>>().join("; ")),
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
        f.write_str(&self.sentence())?;
        if let Some(pointed) = self.pointed() {
            write!(f, "\n{pointed}")?;
        }
        match &self.parser {
            Some(parser) => write!(f, "\n{}", text::entries::the_parser_says(parser)),
            None => Ok(()),
        }
    }
}

impl std::error::Error for Unread {}

/// Whether a message is the parser's: of text that is no such file, or in words that it has for every
/// value. Others are sentences of ours, of a value that can be read and doesn't do.
fn is_the_parsers(file: &str, message: &str) -> bool {
    const BEGINNINGS: [&str; 7] = [
        "invalid ",
        "unknown ",
        "duplicate ",
        "expected ",
        "wanted ",
        "integer number ",
        "floating-point number ",
    ];
    BEGINNINGS.iter().any(|begins| message.starts_with(begins))
        || toml::de::DeTable::parse(file).is_err()
}

/// Where a fault is shown. What is missing at the end of a line is found at the beginning of the next,
/// or behind the last: it is shown where the line ends.
fn place(text: &str, start: usize, message: &str) -> usize {
    let start = floor(text, start);
    let is_of_the_line =
        !message.starts_with("missing field") && !message.starts_with("unknown field");
    let before = text[..start].trim_end();
    let at_break = text[start..].is_empty() || text[start..].starts_with(['\n', '\r']);
    match is_of_the_line && at_break && !before.is_empty() {
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
