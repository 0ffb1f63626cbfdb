//! A table as it is written, before its cells are understood.

use super::{TableError, said::Said};

/// Column names and rows of cells, with what stands around them.
#[derive(Debug, Clone, Default)]
pub(super) struct Written {
    /// Line of the column names, from 1.
    pub line: usize,
    pub names: Vec<String>,
    pub rows: Vec<Vec<Cell>>,
    /// Keywords, comments and lines before the column names.
    pub said: Said,
}

/// The text of a cell and the line it stands on, from 1.
#[derive(Debug, Clone)]
pub(super) struct Cell {
    pub text: String,
    pub line: usize,
}

impl Written {
    /// The text of a cell; empty where the row is too short.
    pub fn text<'a>(&self, row: &'a [Cell], column: usize) -> &'a str {
        row.get(column).map_or("", |cell| cell.text.trim())
    }

    /// The line of a cell, or else of its row's end.
    pub fn line(&self, row: &[Cell], column: usize) -> usize {
        let cell = row.get(column).or_else(|| row.last());
        cell.map_or(self.line, |cell| cell.line)
    }

    /// The number in a cell.
    pub fn number(&self, row: &[Cell], column: usize) -> Result<f64, TableError> {
        let text = self.text(row, column);
        let (line, name) = (self.line(row, column), self.names[column].clone());
        if text.is_empty() {
            return Err(TableError::Missing { line, column: name });
        }
        number(text).ok_or_else(|| TableError::Number {
            line,
            column: name,
            text: text.chars().take(40).collect(),
        })
    }
}

/// A finite number, with a decimal point or comma, perhaps with a percent sign.
pub(super) fn number(text: &str) -> Option<f64> {
    let text = text.strip_suffix('%').unwrap_or(text).trim();
    // A minus sign as typeset programs write it.
    let text = text.replace('\u{2212}', "-");
    let plain = if text.contains('.') {
        text
    } else {
        text.replacen(',', ".", 1)
    };
    // "inf" and "nan" parse as numbers, and so are left out by name.
    plain.parse::<f64>().ok().filter(|v| v.is_finite())
}
