//! A sheet as it is kept with a run.

use crate::text;
use serde::{Deserialize, Serialize};

use crate::{
    caution::Caution, plan::Plan, programme::Programme, quantity::retold, recipe::Recipe,
    run_sheet::Step,
};

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
    /// [`locale::Locale::DATA`]. It is written anew where `recipe` still gives the kept sheet; else, as
    /// after a change of this library, the amounts in its sentences are told anew.
    pub fn rewritten(&self, recipe: Option<&Recipe>) -> Self {
        let written = || Plan::of(recipe?).ok().map(|plan| Self::of(&plan));
        let kept = locale::within(locale::Locale::DATA, written);
        let same = kept.is_some_and(|kept| kept == *self);
        match same.then(written).flatten() {
            Some(sheet) => sheet,
            None => self.retold(),
        }
    }

    fn retold(&self) -> Self {
        let mut sheet = self.clone();
        let own = sheet.steps.iter_mut();
        let (texts, cautions): (Vec<_>, Vec<_>) = own
            .map(|step| ([&mut step.title, &mut step.text], &mut step.cautions))
            .unzip();
        let cautions = cautions.into_iter().flatten().chain(&mut sheet.cautions);
        let programme = &mut sheet.programme;
        let stages = programme.stages.iter_mut().flat_map(|stage| {
            [
                &mut stage.how,
                &mut stage.how_to_add,
                &mut stage.how_to_raise,
            ]
        });
        let sentences = texts
            .into_iter()
            .flatten()
            .chain(cautions.map(|caution| &mut caution.sentence))
            .chain(stages)
            .chain(&mut programme.note)
            .chain(&mut sheet.departures)
            .chain([&mut sheet.about]);
        for sentence in sentences {
            *sentence = retold(sentence);
        }
        sheet
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
