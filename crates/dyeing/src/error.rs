//! Why nothing can be worked out, in sentences.

use crate::Place;
use crate::entries::Unread;
use crate::text;
use std::fmt;

/// Why a text that a person wrote can't be read, and where.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ParseFault {
    /// The text as it was written.
    pub text: String,
    /// Which character is at fault, counted from 0; the text's length if something is missing.
    pub at: usize,
    /// What is wrong there and what would do.
    pub why: String,
}

impl ParseFault {
    /// The text with a mark below the character at fault, as two lines.
    ///
    /// ```
    /// let fault = "1//3 cup".parse::<dyeing::Volume>().unwrap_err();
    /// assert_eq!(fault.pointed().unwrap(), "1//3 cup\n  ^");
    /// ```
    pub fn pointed(&self) -> String {
        format!("{}\n{}^", self.text, " ".repeat(self.at))
    }
}

impl fmt::Display for ParseFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (text, why) = (&self.text, &self.why);
        write!(f, "{}", text::error::at_character(text, self.at + 1, why))
    }
}

/// What is wrong with what was given, and what is usual.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum DyeingError {
    /// A text that can't be read.
    #[error("{0}")]
    Parse(ParseFault),
    /// A number out of its range.
    #[error("{}", out_of_range(what, *value, unit, range))]
    Range {
        /// What the number stands for.
        what: &'static str,
        /// The number.
        value: f64,
        /// Its unit; empty for a plain number.
        unit: &'static str,
        /// Which numbers make sense.
        range: &'static str,
    },
    /// A name that no table has.
    #[error("{}", crate::text::error::there_is_no_called(what, name, known))]
    Unknown {
        /// What was looked up.
        what: &'static str,
        /// The name.
        name: String,
        /// The names that would do.
        known: String,
    },
    /// Something that is wrong at a place, which stands before it.
    #[error("{place}: {why}")]
    At {
        /// Where.
        place: Place,
        /// What is wrong there.
        why: Box<DyeingError>,
    },
    /// A sentence that says itself where it belongs.
    #[error("{sentence}")]
    Said {
        /// Where.
        place: Place,
        /// What is wrong there.
        sentence: String,
    },
    /// A file of entries with a line that can't be used.
    #[error("{0}")]
    Unread(Box<Unread>),
    /// Anything else that makes a recipe unusable, as a sentence.
    #[error("{0}")]
    Recipe(String),
}

fn out_of_range(what: &str, value: f64, unit: &str, range: &str) -> String {
    if unit.is_empty() {
        return text::error::the_number_without_unit_is_out_of_range(what, value, range);
    }
    text::error::the_number_is_out_of_range(what, value, unit, range)
}

impl From<Unread> for DyeingError {
    fn from(unread: Unread) -> Self {
        Self::Unread(Box::new(unread))
    }
}

impl DyeingError {
    /// The text with a mark below the character at fault, if a text is at fault.
    pub fn pointed(&self) -> Option<String> {
        match self {
            Self::Parse(fault) => Some(fault.pointed()),
            Self::At { why, .. } => why.pointed(),
            _ => None,
        }
    }

    /// Where it is wrong, as far as that is known.
    pub fn place(&self) -> Option<&Place> {
        match self {
            Self::At { place, .. } | Self::Said { place, .. } => Some(place),
            _ => None,
        }
    }

    /// What is wrong, for someone who sees where.
    pub fn at_its_place(&self) -> String {
        match self {
            Self::At { why, .. } => why.to_string(),
            other => other.to_string(),
        }
    }

    /// The same fault with its place before it, as in `dye "yellow", amount: …`.
    pub fn at(self, place: Place) -> Self {
        Self::At {
            place,
            why: Box::new(self),
        }
    }

    /// The same fault at its own place, or at this one where it has none.
    pub(crate) fn or_at(self, place: Place) -> Self {
        match self.place() {
            Some(_) => self,
            None => self.at(place),
        }
    }

    /// The number, if it is finite and `fine`.
    pub(crate) fn unless(
        fine: bool,
        what: &'static str,
        value: f64,
        unit: &'static str,
        range: &'static str,
    ) -> Result<f64, Self> {
        if fine && value.is_finite() {
            Ok(value)
        } else {
            Err(Self::Range {
                what,
                value,
                unit,
                range,
            })
        }
    }
}

#[cfg(test)]
mod tests {
    use super::DyeingError;

    #[test]
    fn a_number_without_a_unit_has_one_space_around_it() {
        for (unit, told) in [
            ("", "the factor is 0; it has to be above 0"),
            ("g", "the factor is 0 g; it has to be above 0"),
        ] {
            let fault = DyeingError::unless(false, "factor", 0.0, unit, "above 0").unwrap_err();
            assert_eq!(fault.to_string(), told);
        }
    }
}
