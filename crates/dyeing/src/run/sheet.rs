//! A sheet as it is kept with a run.

use serde::{Deserialize, Serialize};

use crate::{caution::Caution, plan::Plan, programme::Programme, run_sheet::Step};

/// A run sheet as it stood when its run began; a later change of the recipe, or of what this
/// library makes of it, leaves it as it is.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct RunSheet {
    /// Name of the recipe.
    pub recipe: String,
    /// What is dyed and how, in a line.
    pub about: String,
    /// The steps.
    pub steps: Vec<Step>,
    /// What to beware of, for all of it.
    pub cautions: Vec<Caution>,
    /// The bath's temperature over time.
    pub programme: Programme,
    /// How the recipe departs from labels, each a sentence.
    pub departures: Vec<String>,
}

impl RunSheet {
    /// From what was worked out.
    pub fn of(plan: &Plan) -> Self {
        let labels = plan.checks.iter().filter(|c| c.code == "label_departure");
        Self {
            recipe: plan.name.clone(),
            about: format!(
                "{} on {}, {} of liquor, {}",
                plan.class,
                plan.goods.mass.shown(),
                plan.baths.liquor.shown(),
                plan.baths.ratio
            ),
            steps: plan.steps.clone(),
            cautions: plan.cautions.clone(),
            programme: plan.programme.clone(),
            departures: labels.map(|c| c.sentence.clone()).collect(),
        }
    }
}
