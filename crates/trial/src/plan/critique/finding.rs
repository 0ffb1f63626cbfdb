//! A finding: a plain sentence, its consequence, what mends it.

use crate::plan::Mend;
use serde::Serialize;

/// What kind of weakness was found.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum FindingCode {
    /// An arm has one test piece.
    OnePiece,
    /// An arm has no keeper.
    KeeperMissing,
    /// Nothing is looked at before the first round.
    StartMissing,
    /// Arms lack the plain soak that matches another arm's treatment.
    SoakMissing,
    /// Each arm has one load of its own in a step.
    LoadIsArm,
    /// Each arm has its own days.
    DayIsArm,
    /// Each arm has its own person.
    PersonIsArm,
    /// Each arm lies at its own places on the board.
    PlaceIsArm,
    /// Loads, days and places together hide the arms' difference, none of them alone.
    Tangled,
    /// A load, day, person or place is spread unevenly over the arms.
    Uneven,
    /// One arm always comes before another in a vessel that isn't cleaned.
    OrderOfUse,
    /// Deep and pale colours, or different dyes, lie wet together.
    DeepWithPale,
    /// Loads in which dye could travel have no witness cloth.
    WitnessMissing,
    /// Which arm stains more is asked and can't be told.
    StainingUntold,
    /// A product is not used as its instruction says.
    DoseDeparture,
}

/// One weakness of a plan.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Finding {
    /// Its kind.
    pub code: FindingCode,
    /// What is the matter, a plain sentence.
    pub sentence: String,
    /// What the verdict can't say because of it.
    pub consequence: String,
    /// The arms it is about, by name; empty: all.
    pub arms: Vec<String>,
    /// Changes of the plan of which each takes the weakness away or lessens it.
    pub mends: Vec<Mend>,
}
