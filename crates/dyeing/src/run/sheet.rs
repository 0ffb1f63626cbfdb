//! A sheet as it is kept with a run.

use crate::text;
use serde::{Deserialize, Serialize};

use crate::{caution::Caution, plan::Plan, programme::Programme, recipe::Recipe, run_sheet::Step};

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
    /// The sheet in the measures that hold now, for one that was kept within
    /// [`locale::Locale::DATA`]. None where the recipe doesn't give the kept sheet any more, as after
    /// a change of this library: then it is shown as it was kept.
    pub fn rewritten(&self, recipe: &Recipe) -> Option<Self> {
        let written = || Plan::of(recipe).ok().map(|plan| Self::of(&plan));
        let kept = locale::within(locale::Locale::DATA, written)?;
        (kept == *self).then(written).flatten()
    }

    /// From what was worked out.
    pub fn of(plan: &Plan) -> Self {
        let labels = plan.checks.iter().filter(|c| c.code == "label_departure");
        Self {
            recipe: plan.name.clone(),
            about: text::run::on_shown2_of_liquor(
                &plan.class,
                plan.goods.mass.shown(),
                plan.baths.liquor.shown(),
                plan.baths.ratio,
            ),
            steps: plan.steps.clone(),
            cautions: plan.cautions.clone(),
            programme: plan.programme.clone(),
            departures: labels.map(|c| c.sentence.clone()).collect(),
        }
    }
}
