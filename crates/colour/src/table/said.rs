//! What a table says of itself outside its rows: keywords, comments, lines above.

use super::{
    TableError,
    light::{Seen, seen},
};

/// Rows and columns of a chart, as far as a table says them.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub(super) struct SaidLayout {
    pub rows: Option<usize>,
    pub columns: Option<usize>,
}

/// What was said.
#[derive(Debug, Clone, Default, PartialEq)]
pub(super) struct Said {
    pub seen: Seen,
    pub layout: SaidLayout,
    pub instrument: Option<String>,
    /// Whether reflectance is in percent, where that is said.
    pub percent: Option<bool>,
}

impl Said {
    /// Takes in a keyword with its value.
    pub fn keyword(&mut self, key: &str, value: &str, line: usize) -> Result<(), TableError> {
        let value = value.trim().trim_matches('"').trim();
        let plain: String = key.chars().filter(|c| c.is_alphanumeric()).collect();
        match plain.to_lowercase().as_str() {
            "view" | "light" | "illuminant" | "illumination" | "illuminationname" | "observer"
            | "observerangle" | "weightingfunction" | "measurementsource" | "lightandobserver" => {
                let found = seen(value).map_err(|_| TableError::View {
                    line,
                    text: value.chars().take(40).collect(),
                })?;
                self.seen = self.seen.or(found);
            }
            "rows" => self.layout.rows = value.parse().ok().or(self.layout.rows),
            "columns" => self.layout.columns = value.parse().ok().or(self.layout.columns),
            "instrument" | "instrumentation" if !value.is_empty() => {
                self.instrument
                    .get_or_insert_with(|| value.chars().take(200).collect());
            }
            "unit" | "units" => self.percent = percent(value).or(self.percent),
            _ => {}
        }
        Ok(())
    }

    /// Takes in a comment: `rows 4 columns 6`, `view D50/2`, or prose, which is passed over.
    pub fn comment(&mut self, text: &str, line: usize) -> Result<(), TableError> {
        let words: Vec<&str> = text
            .split(|c: char| c.is_whitespace() || matches!(c, ':' | '=' | ',' | ';'))
            .filter(|w| !w.is_empty())
            .collect();
        for pair in words.windows(2) {
            if matches!(pair[0].to_lowercase().as_str(), "rows" | "columns") {
                self.keyword(pair[0], pair[1], line)?;
            }
        }
        match words.as_slice() {
            [] => Ok(()),
            // More words than these are prose, in which a light may be named by the way.
            [key, value @ ..] if value.len() <= 2 => self.keyword(key, &value.join(" "), line),
            [key, value @ ..]
                if matches!(
                    key.to_lowercase().as_str(),
                    "instrument" | "instrumentation"
                ) =>
            {
                self.keyword(key, &value.join(" "), line)
            }
            _ => Ok(()),
        }
    }
}

fn percent(text: &str) -> Option<bool> {
    match text.to_lowercase().as_str() {
        "percent" | "%" | "per cent" => Some(true),
        "share" | "fraction" | "factor" | "1" => Some(false),
        _ => None,
    }
}
