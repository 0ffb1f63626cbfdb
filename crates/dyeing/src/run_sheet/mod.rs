//! The run sheet: what to do, for how long, how warm, and what to beware of.

mod bath;
mod finish;
mod prepare;

use serde::{Deserialize, Serialize};

use crate::{
    Celsius, Volume,
    caution::{Caution, Hazard, gather},
    plan::{AfterPlan, Baths, Line},
    programme::Programme,
    recipe::Recipe,
};

/// Hotter than this scalds at once.
const SCALDING_C: f64 = 55.0;
/// What kind of step.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum StepKind {
    /// Wetting the goods out.
    PreSoak,
    /// Weighing and dissolving.
    Prepare,
    /// Putting something into the bath.
    Add,
    /// Getting hotter.
    Raise,
    /// Keeping the temperature.
    Hold,
    /// Getting cooler.
    Cool,
    /// Rinsing with water.
    Rinse,
    /// Washing with soap.
    Wash,
    /// An after-treatment.
    AfterTreat,
    /// Plain water for arms without the after-treatment, so that only the agent differs.
    MatchingSoak,
    /// Drying.
    Dry,
}

impl StepKind {
    /// Whether it is done in the dye bath, whose curve it is part of.
    pub fn is_of_bath(self) -> bool {
        matches!(self, Self::Add | Self::Raise | Self::Hold | Self::Cool)
    }
}

/// A step.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Step {
    /// Its number, from 1.
    pub number: u32,
    /// What kind.
    pub kind: StepKind,
    /// A few words.
    pub title: String,
    /// What to do.
    pub text: String,
    /// When it is planned to begin, minutes since the first step began.
    pub begins_min: f64,
    /// How long it is planned to take, min; nothing where it ends when it is done.
    pub minutes: Option<f64>,
    /// Temperature at its beginning.
    pub from_c: Option<Celsius>,
    /// Temperature at its end.
    pub to_c: Option<Celsius>,
    /// The arms it is for; empty where it is for all.
    pub arms: Vec<String>,
    /// What to beware of.
    pub cautions: Vec<Caution>,
}

/// Builds steps one after the other.
struct Sheet {
    steps: Vec<Step>,
    now_min: f64,
}

/// The steps of a recipe.
pub(crate) fn steps(
    recipe: &Recipe,
    baths: &Baths,
    lines: &[Line],
    programme: &Programme,
    after: &[AfterPlan],
    top_up: Volume,
) -> Vec<Step> {
    let mut sheet = Sheet {
        steps: Vec::new(),
        now_min: 0.0,
    };
    sheet.prepare(recipe, baths, lines, top_up);
    sheet.bath(lines, programme, baths);
    sheet.wash_off(recipe);
    for treatment in after {
        sheet.after(recipe, treatment);
    }
    sheet.dry(recipe);
    sheet.steps
}

impl Sheet {
    fn push(
        &mut self,
        kind: StepKind,
        title: &str,
        text: String,
        minutes: Option<f64>,
        heat: [Option<Celsius>; 2],
    ) -> &mut Step {
        let [from_c, to_c] = heat;
        let hot = heat.iter().flatten().any(|c| c.celsius() > SCALDING_C);
        let begins_min = self.now_min;
        self.now_min += minutes.unwrap_or(0.0);
        let at = self.steps.len();
        self.steps.push(Step {
            number: at as u32 + 1,
            kind,
            title: title.to_owned(),
            text,
            begins_min,
            minutes,
            from_c,
            to_c,
            arms: Vec::new(),
            cautions: gather(hot.then(|| (Hazard::Hot, String::new()))),
        });
        &mut self.steps[at]
    }
}
