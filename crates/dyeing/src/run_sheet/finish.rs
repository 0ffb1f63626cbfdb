//! The steps after the bath.

use super::{Sheet, StepKind};
use crate::text;
use crate::{
    Celsius,
    caution::{Hazard, gather},
    plan::AfterPlan,
    recipe::Recipe,
};

impl Sheet {
    pub(super) fn wash_off(&mut self, recipe: &Recipe) {
        for (k, wash) in recipe.class.wash_off.iter().enumerate() {
            let (kind, title) = if wash.soap {
                (StepKind::Wash, text::run_sheet::wash())
            } else {
                (StepKind::Rinse, text::run_sheet::rinse())
            };
            // Tender fibres are washed no hotter than they bear.
            let bears = recipe.fibres.iter().map(|s| s.fibre.limit_c);
            let at = bears.fold(wash.at_c, |at, limit| if limit < at { limit } else { at });
            let step = self.push(
                kind,
                title,
                text::run_sheet::all_arms_alike(recipe.class.wash_off_how(k), recipe.arms.len()),
                Some(wash.minutes),
                [Some(at), Some(at)],
            );
            if k == 0 {
                step.cautions.push(Hazard::Disposal.caution(Vec::new()));
            }
        }
    }

    pub(super) fn after(&mut self, recipe: &Recipe, plan: &AfterPlan) {
        let heat = [Some(plan.temperature), Some(plan.temperature)];
        let minutes = Some(plan.time.minutes());
        let begins = self.now_min;
        let text = text::run_sheet::in_shown2_of_water(
            plan.line.shown(),
            &plan.line.name,
            plan.liquor.shown(),
            plan.temperature,
            plan.time,
            plan.pieces,
        );
        let hazards = plan
            .line
            .hazards
            .iter()
            .map(|h| (*h, plan.line.name.clone()));
        let hazards: Vec<_> = hazards
            .chain([(Hazard::DataSheet, plan.line.name.clone())])
            .collect();
        let title = text::run_sheet::after_treat(&plan.line.name);
        let step = self.push(StepKind::AfterTreat, &title, text, minutes, heat);
        let hot = step
            .cautions
            .iter()
            .map(|c| (c.hazard, String::new()))
            .collect::<Vec<_>>();
        step.cautions = gather(hazards.into_iter().chain(hot));
        step.arms.clone_from(&plan.arms);
        let others: Vec<String> = recipe
            .arms
            .iter()
            .map(|a| a.name.clone())
            .filter(|name| !plan.arms.contains(name))
            .collect();
        if !others.is_empty() {
            // Controls go through the same water, heat and time, so that only the agent differs.
            self.now_min = begins;
            let text =
                text::run_sheet::plain_water_same_ratio_for_moved(plan.temperature, plan.time);
            self.push(
                StepKind::MatchingSoak,
                text::run_sheet::matching_soak(),
                text,
                minutes,
                heat,
            )
            .arms = others;
        }
        let cold = Celsius::new(25.0).ok();
        let text = text::run_sheet::rinse_until_the_water_runs_clear(recipe.arms.len());
        let step = self.push(
            StepKind::Rinse,
            text::run_sheet::rinse(),
            text,
            Some(5.0),
            [cold, cold],
        );
        step.cautions
            .push(Hazard::Disposal.caution(vec![plan.line.name.clone()]));
    }

    pub(super) fn dry(&mut self, recipe: &Recipe) {
        let pieces = match recipe.goods.pieces {
            1 => text::run_sheet::the_piece().to_owned(),
            n => text::run_sheet::all_pieces(n),
        };
        let text = text::run_sheet::dry_the_same_way_out(pieces, recipe.arms.len());
        self.push(
            StepKind::Dry,
            text::run_sheet::dry(),
            text,
            None,
            [None, None],
        );
    }
}
