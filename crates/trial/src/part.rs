//! The pale and the deep part of a resist-dyed piece.

use crate::text;
use photo::Parts;
use serde::{Deserialize, Serialize};
use std::{fmt, str::FromStr};

/// Which part of a piece a colour is of.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Part {
    /// All of its area, as if it were dyed in one.
    Whole,
    /// Where something kept the dye away; another piece's dye shows here.
    Pale,
    /// Where nothing did.
    Deep,
}

impl Part {
    /// The part as written in files.
    pub const fn as_str(self) -> &'static str {
        match self {
            Self::Whole => "whole",
            Self::Pale => "pale",
            Self::Deep => "deep",
        }
    }
}

impl fmt::Display for Part {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.as_str())
    }
}

impl FromStr for Part {
    type Err = String;

    /// Reads `whole`, `pale` or `deep`.
    fn from_str(text: &str) -> Result<Self, String> {
        [Self::Whole, Self::Pale, Self::Deep]
            .into_iter()
            .find(|part| part.as_str() == text)
            .ok_or_else(|| text::part::the_part_is_write_whole_pale(text))
    }
}

/// A resist-dyed piece's two parts as one photo shows them. They stand beside the
/// reading of the whole and are never counted with it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct SplitReading {
    /// The pale part.
    pub pale: PartReading,
    /// The deep part.
    pub deep: PartReading,
    /// By how much the photo's chart is missed, patch by patch, as in
    /// [`crate::Doubt::misses`]: it tells how alike two photos err.
    #[serde(skip)]
    pub misses: Vec<Option<[f64; 3]>>,
}

impl SplitReading {
    /// The reading of one part; none of the whole.
    pub const fn part(&self, part: Part) -> Option<&PartReading> {
        match part {
            Part::Whole => None,
            Part::Pale => Some(&self.pale),
            Part::Deep => Some(&self.deep),
        }
    }
}

/// The colour of one part of a piece.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct PartReading {
    /// L*, a*, b* for the light and observer of the whole's reading.
    pub lab: [f64; 3],
    /// Covariance of `lab` by cause.
    pub causes: Parts,
    /// Its share of the piece's area, 0 to 1.
    pub share: f64,
    /// How many pixels it rests on.
    pub pixels: u64,
}

impl PartReading {
    /// Covariance of `lab` from everything that makes it uncertain.
    pub fn cov(&self) -> [[f64; 3]; 3] {
        self.causes.total()
    }
}
