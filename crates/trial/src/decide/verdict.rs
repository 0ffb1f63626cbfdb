//! What a decision says.

use super::{Along, DealtAnew, OverRounds};
use crate::Source;
use crate::text;
use serde::{Deserialize, Serialize};
use std::fmt;

/// The upper end of an interval where nothing is known of the scatter: no two
/// surface colours differ by more, so it is true and says nothing. CIEDE2000 units.
pub const UNBOUNDED_DE00: f64 = 150.0;

/// One of the four answers on a pair of arms.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Verdict {
    /// The whole interval lies above the margin.
    Visible,
    /// A difference is shown, and it is shown to lie below the margin.
    Small,
    /// Shown to lie below the margin, and no difference shown.
    Alike,
    /// Not enough evidence for any of the others.
    Open,
}

impl Verdict {
    /// The verdict as written in files.
    pub const fn as_str(self) -> &'static str {
        match self {
            Self::Visible => "visible",
            Self::Small => "small",
            Self::Alike => "alike",
            Self::Open => "open",
        }
    }

    /// The verdict in words.
    pub fn in_words(self) -> &'static str {
        match self {
            Self::Visible => text::decide::visible_difference(),
            Self::Small => text::decide::real_but_too_small_to_matter(),
            Self::Alike => text::decide::no_difference_that_matters(),
            Self::Open => text::decide::not_enough_evidence(),
        }
    }
}

impl fmt::Display for Verdict {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.as_str())
    }
}

/// Two arms at one stage.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Comparison {
    /// After how many rounds.
    pub stage: u32,
    /// Name of the arm that appears first.
    pub a: String,
    /// Name of the other arm.
    pub b: String,
    /// CIEDE2000 of the two arms' mean changes at their pooled start.
    pub de00: f64,
    /// Lower end of the 95 % interval of `de00`, 0 upward.
    pub low: f64,
    /// Upper end; [`UNBOUNDED_DE00`] where nothing is known of the scatter.
    pub high: f64,
    /// The difference along the way both arms fade, where that is clear.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub along: Option<Along>,
    /// How often chance alone would show as much where there is no difference, 0 to
    /// 1; below 0.05 exactly where `low` is above 0.
    pub p: f64,
    /// The same by dealing the pieces out anew, where pieces are the units, none of
    /// their errors is shared and there are few enough.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub dealt_anew: Option<DealtAnew>,
    /// The verdict.
    pub verdict: Verdict,
    /// Why, with the figures, in words.
    pub reason: String,
}

/// The mean change of one arm's test pieces at one stage.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct ArmChange {
    /// Name of the arm.
    pub arm: String,
    /// After how many rounds.
    pub stage: u32,
    /// How many test pieces it rests on.
    pub pieces: usize,
    /// Mean change of L*, a*, b*: after minus before.
    pub change: [f64; 3],
    /// CIEDE2000 of the change, at the arm's start.
    pub de00: f64,
    /// Lower end of the 95 % interval of `de00`, 0 upward.
    pub low: f64,
    /// Upper end; [`UNBOUNDED_DE00`] where nothing is known of the scatter.
    pub high: f64,
    /// Grade of change in colour on the grey scale (ISO 105-A05), such as `4-5`.
    pub fade_grade: String,
}

/// Everything that follows from a table of readings.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
pub struct Decision {
    /// Every pair of arms at every stage after the start.
    pub comparisons: Vec<Comparison>,
    /// Every arm at every stage after the start.
    pub arms: Vec<ArmChange>,
    /// Every pair of arms at the last stage by a model of all rounds; empty where that
    /// is not to be had.
    #[serde(default)]
    pub over_rounds: Vec<OverRounds>,
    /// The readings each stage rests on; empty where a table doesn't tell of sources.
    #[serde(default)]
    pub rests_on: Vec<RestsOn>,
}

/// The kind of readings that everything said of a stage rests on.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct RestsOn {
    /// After how many rounds.
    pub stage: u32,
    /// Where the readings come from.
    pub source: Source,
    /// Their light and observer, such as `D65/10`.
    pub view: String,
}
