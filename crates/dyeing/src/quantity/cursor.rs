//! A place in a text, so that faults can point at a character.

use crate::error::{DyeingError, ParseFault};
use crate::text;

/// Walks over a text by characters.
pub struct Cursor<'t> {
    text: &'t str,
    chars: Vec<char>,
    /// The next character, counted from 0.
    pub at: usize,
}

impl<'t> Cursor<'t> {
    /// At the start of a text.
    pub fn new(text: &'t str) -> Self {
        Self {
            text,
            chars: text.chars().collect(),
            at: 0,
        }
    }

    /// The next character.
    pub fn peek(&self) -> Option<char> {
        self.chars.get(self.at).copied()
    }

    /// Steps over white space.
    pub fn skip_space(&mut self) {
        while self.peek().is_some_and(char::is_whitespace) {
            self.at += 1;
        }
    }

    /// Whether nothing but white space is left.
    pub fn is_done(&mut self) -> bool {
        self.skip_space();
        self.at == self.chars.len()
    }

    /// Steps over the character if it comes next.
    pub fn eat(&mut self, wanted: char) -> bool {
        let found = self.peek() == Some(wanted);
        self.at += usize::from(found);
        found
    }

    /// Steps over digits and returns them.
    pub fn digits(&mut self) -> String {
        self.run(|c| c.is_ascii_digit())
    }

    /// Steps over white space and a word of letters; returns the word, small, and where it starts.
    pub fn word(&mut self) -> (usize, String) {
        self.skip_space();
        let start = self.at;
        let word = self.run(|c| c.is_alphabetic());
        (start, word.to_lowercase())
    }

    /// Steps over any of these words if it comes next.
    pub fn eat_word(&mut self, wanted: &[&str]) -> bool {
        let before = self.at;
        let (_, word) = self.word();
        let found = wanted.contains(&word.as_str());
        if !found {
            self.at = before;
        }
        found
    }

    /// What is left of the text.
    pub fn rest(&self) -> String {
        self.chars.iter().skip(self.at).collect()
    }

    fn run(&mut self, belongs: impl Fn(char) -> bool) -> String {
        let start = self.at;
        while self.peek().is_some_and(&belongs) {
            self.at += 1;
        }
        self.chars[start..self.at].iter().collect()
    }

    /// The character as it was written, for telling capitals apart.
    pub fn char_at(&self, at: usize) -> Option<char> {
        self.chars.get(at).copied()
    }

    /// What is wrong at a character.
    pub fn fault(&self, at: usize, why: impl Into<String>) -> DyeingError {
        DyeingError::Parse(ParseFault {
            text: self.text.to_owned(),
            at,
            why: why.into(),
        })
    }

    /// Fails if anything is left.
    pub fn finish(&mut self) -> Result<(), DyeingError> {
        if self.is_done() {
            return Ok(());
        }
        let why = match self.peek() {
            Some('-' | '–') => text::quantity::a_range_is_no_amount_write(),
            _ => text::quantity::nothing_more_is_expected_here_leave(),
        };
        Err(self.fault(self.at, why))
    }
}
