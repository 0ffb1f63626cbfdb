//! A plan as a person writes it.

use super::Margin;
use crate::text;
use serde::{Deserialize, Serialize};

/// What is compared and how: arms, steps with their loads, and all that pieces share.
///
/// Lists of loads deal pieces out in turn: with two washes the first piece of an
/// arm goes into the first wash, the second into the second, the third into the
/// first again. The random order comes later, over the same numbers.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Plan {
    /// Its title; may be empty.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub title: String,
    /// What is asked, in words.
    pub question: String,
    /// What kind of question it is.
    #[serde(default)]
    pub asks: Asks,
    /// Whether it is asked, too, which arm stains other cloth more.
    #[serde(default, skip_serializing_if = "is_false")]
    pub staining: bool,
    /// The fibre, in words; may be empty.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub fibre: String,
    /// The class of dye, in words; may be empty.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub dye_class: String,
    /// The smallest difference that matters.
    pub margin: Margin,
    /// Rounds of wash and dry, 1 upward.
    pub rounds: u32,
    /// After how many rounds pieces are looked at; empty: before the first and after the last.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub stages: Vec<u32>,
    /// Where the random order starts from; kept so that it can be drawn again.
    #[serde(default)]
    pub seed: u32,
    /// How much equal pieces differ, where the person knows.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub scatter: Option<Scatter>,
    /// The arms, two at least.
    pub arms: Vec<PlannedArm>,
    /// What is done to the pieces, in order.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub steps: Vec<Step>,
    /// Days, people and places that pieces share.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub circumstances: Vec<Circumstance>,
    /// Vessels and machines that several loads use one after the other.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub vessels: Vec<Vessel>,
    /// What the products' own instructions say.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub instructions: Vec<Instruction>,
}

/// What kind of question a trial answers.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Asks {
    /// Does it last? Each arm's change over rounds.
    Lasts,
    /// Does the step matter? Arms with it against one without.
    #[default]
    StepMatters,
    /// Which is best? Every arm against every other.
    WhichIsBest,
    /// One dye at several depths.
    ShadeLadder,
}

impl Asks {
    /// All of them, in the order of a form.
    pub const ALL: [Self; 4] = [
        Self::StepMatters,
        Self::Lasts,
        Self::WhichIsBest,
        Self::ShadeLadder,
    ];

    /// As a person asks it.
    pub fn words(self) -> &'static str {
        match self {
            Self::Lasts => text::plan::does_the_colour_last(),
            Self::StepMatters => text::plan::does_the_extra_step_matter(),
            Self::WhichIsBest => text::plan::which_one_is_best(),
            Self::ShadeLadder => text::plan::what_does_one_dye_give_at_several(),
        }
    }

    /// As written in files.
    pub const fn as_str(self) -> &'static str {
        match self {
            Self::Lasts => "lasts",
            Self::StepMatters => "step_matters",
            Self::WhichIsBest => "which_is_best",
            Self::ShadeLadder => "shade_ladder",
        }
    }
}

/// An arm of a plan.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PlannedArm {
    /// Its short name, unique in the plan.
    pub name: String,
    /// What is done to its pieces, in words; may be empty.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub treatment: String,
    /// Whether the others are compared with it; where no arm says so, the first is.
    #[serde(default, skip_serializing_if = "is_false")]
    pub control: bool,
    /// Test pieces, 1 upward.
    pub pieces: usize,
    /// Pieces kept unwashed in the dark.
    #[serde(default)]
    pub keepers: usize,
    /// The dye, in words; empty: the same for all arms.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub dye: String,
    /// Dye, percent on weight of fibre, if known: which arms are deep and which pale.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub depth_percent_owf: Option<f64>,
    /// Whether its pieces have undyed or pale areas, as resist-dyed ones do.
    #[serde(default, skip_serializing_if = "is_false")]
    pub pale_areas: bool,
    /// Codes for its test pieces, then its keepers; empty: made up from the arm's place.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub codes: Vec<String>,
}

/// What is done to pieces in a load.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum StepKind {
    /// A soak, with or without an agent.
    Soak,
    /// The dye bath.
    Dye,
    /// A rinse or washing-off after dyeing.
    Rinse,
    /// An after-treatment, such as a fixing agent.
    AfterTreat,
    /// A wash, once each round.
    Wash,
    /// Drying, once each round.
    Dry,
}

impl StepKind {
    /// As said in a sentence.
    pub fn words(self) -> &'static str {
        match self {
            Self::Soak => text::plan::soak(),
            Self::Dye => text::plan::dye_bath(),
            Self::Rinse => text::plan::rinse(),
            Self::AfterTreat => text::plan::after_treatment(),
            Self::Wash => text::plan::wash_2(),
            Self::Dry => text::plan::drying(),
        }
    }

    /// Whether it is done again each round, and not to keepers.
    pub const fn every_round(self) -> bool {
        matches!(self, Self::Wash | Self::Dry)
    }
}

/// A step of some or all arms, with the loads that pieces share in it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Step {
    /// What is done.
    pub kind: StepKind,
    /// Names of the arms it is done to; empty: all.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub arms: Vec<String>,
    /// The loads over which each arm's pieces are dealt in turn; empty: each piece by itself.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub loads: Vec<String>,
    /// Witness cloths in each load, such as `plain` and `multifibre`; with each piece
    /// where it is by itself.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub witnesses: Vec<String>,
    /// The product in the water, in words; empty: water alone, or as is usual for the step.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub agent: String,
    /// How much of the product, such as `2 tbsp`; empty where unknown.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub amount: String,
    /// To how much water, such as `1 gal`; empty where unknown.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub water: String,
    /// How long, minutes.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub minutes: Option<f64>,
    /// How warm, degrees Celsius.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub temperature_c: Option<f64>,
    /// Whether a departure from the product's instruction is what the trial asks about.
    #[serde(default, skip_serializing_if = "is_false")]
    pub on_purpose: bool,
}

impl Step {
    /// A step of all arms without loads.
    pub fn of(kind: StepKind) -> Self {
        Self {
            kind,
            arms: Vec::new(),
            loads: Vec::new(),
            witnesses: Vec::new(),
            agent: String::new(),
            amount: String::new(),
            water: String::new(),
            minutes: None,
            temperature_c: None,
            on_purpose: false,
        }
    }

    /// Whether it is done to the arm of that name.
    pub fn is_of(&self, arm: &str) -> bool {
        holds(&self.arms, arm)
    }
}

/// What pieces share that is no load.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum CircumstanceKind {
    /// The day on which it was done.
    Day,
    /// Who did it.
    Person,
    /// Where the piece lies on the board for its photos.
    Place,
}

impl CircumstanceKind {
    /// As said in a sentence.
    pub fn words(self) -> &'static str {
        match self {
            Self::Day => text::plan::day_2(),
            Self::Person => text::plan::person(),
            Self::Place => text::plan::place_on_the_board(),
        }
    }
}

/// A day, person or place for the pieces of some or all arms.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Circumstance {
    /// What kind of circumstance.
    pub kind: CircumstanceKind,
    /// Names of the arms; empty: all.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub arms: Vec<String>,
    /// Its values, over which each arm's pieces are dealt in turn.
    pub values: Vec<String>,
}

impl Circumstance {
    /// Whether it holds for the arm of that name.
    pub fn is_of(&self, arm: &str) -> bool {
        holds(&self.arms, arm)
    }
}

fn holds(names: &[String], arm: &str) -> bool {
    names.is_empty() || names.iter().any(|name| name == arm)
}

/// A vessel or machine that several loads use one after the other.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Vessel {
    /// Its name.
    pub name: String,
    /// Its loads in the order of use.
    pub order: Vec<String>,
    /// Whether it is cleaned between two loads.
    #[serde(default, skip_serializing_if = "is_false")]
    pub cleaned: bool,
}

/// What a product's own instruction says.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Instruction {
    /// The product, as the steps name it.
    pub agent: String,
    /// How much of it.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub amount: String,
    /// To how much water.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub water: String,
    /// How long, minutes.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub minutes: Option<f64>,
    /// How warm, degrees Celsius.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub temperature_c: Option<f64>,
}

/// How much equal pieces differ, standard deviations in CIEDE2000 units along the
/// direction in which colours fade.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Scatter {
    /// From piece to piece of one arm and load.
    pub piece_sd_de00: f64,
    /// From load to load.
    pub load_sd_de00: f64,
    /// Of reading one piece once.
    pub reading_sd_de00: f64,
    /// Where these figures come from, a sentence.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub origin: String,
}

impl Default for Scatter {
    fn default() -> Self {
        Self {
            piece_sd_de00: 0.5,
            load_sd_de00: 0.3,
            reading_sd_de00: 0.3,
            origin: text::plan::assumed_for_want_of_trials().to_owned(),
        }
    }
}

/// What needn't be written.
fn is_false(value: &bool) -> bool {
    !value
}

impl Plan {
    /// The control: the first arm that says so, else the first.
    pub fn control(&self) -> usize {
        self.arms.iter().position(|arm| arm.control).unwrap_or(0)
    }

    /// Test pieces of all arms.
    pub fn test_pieces(&self) -> usize {
        self.arms.iter().map(|arm| arm.pieces).sum()
    }

    /// The stages at which pieces are looked at, in order.
    pub fn looked_at(&self) -> Vec<u32> {
        if self.stages.is_empty() {
            return vec![0, self.rounds];
        }
        let mut stages = self.stages.clone();
        stages.sort_unstable();
        stages.dedup();
        stages
    }
}
