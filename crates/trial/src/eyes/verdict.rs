//! What grades judged by eye say.

use crate::decide::{DealtAnew, Verdict};
use serde::{Deserialize, Serialize};

/// Everything that follows from a table of grades.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
pub struct FromEyes {
    /// Every pair of arms at every stage: by change of their test pieces, then by staining
    /// of their witness cloths.
    pub comparisons: Vec<EyeComparison>,
    /// Every arm at every stage.
    pub arms: Vec<ArmGrade>,
}

/// Two arms at one stage, by eye.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct EyeComparison {
    /// After how many rounds.
    pub stage: u32,
    /// By staining of witness cloths, or else by change of test pieces.
    #[serde(default)]
    pub staining: bool,
    /// Name of the arm that appears first.
    pub a: String,
    /// Name of the other arm.
    pub b: String,
    /// Mean grade of each arm's pieces or witness cloths, all judges together.
    pub grades: [f64; 2],
    /// Grade of `a` less grade of `b`: above 0 where `b` has changed, or stained,
    /// more.
    pub difference: f64,
    /// Lower end of its 95 % interval.
    pub low: f64,
    /// Upper end.
    pub high: f64,
    /// The margin in grades, by [`super::in_grades`] or [`super::in_grades_of_staining`] in the
    /// middle of the two.
    pub margin_grades: f64,
    /// Test pieces, or witness cloths, of each arm that were judged.
    pub pieces: [usize; 2],
    /// People who judged.
    pub judges: usize,
    /// All ways of dealing the pieces out anew, where there are few enough.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub dealt_anew: Option<DealtAnew>,
    /// The verdict.
    pub verdict: Verdict,
    /// What it means, for anybody.
    pub plain: String,
    /// Why, with the figures.
    pub reason: String,
}

/// The mean grade of one arm at one stage, by eye.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct ArmGrade {
    /// Name of the arm.
    pub arm: String,
    /// After how many rounds.
    pub stage: u32,
    /// Of staining of its witness cloths, or else of change of its test pieces.
    pub staining: bool,
    /// How many pieces.
    pub pieces: usize,
    /// How many people.
    pub judges: usize,
    /// Mean grade, 5 to 1.
    pub grade: f64,
}
