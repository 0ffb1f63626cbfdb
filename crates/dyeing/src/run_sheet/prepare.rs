//! The steps before the bath.

use super::{Sheet, StepKind};
use crate::text;
use crate::{
    Volume,
    caution::{Hazard, gather},
    plan::{Baths, Line},
    recipe::Recipe,
};

/// How long weighing and dissolving take, min; common practice, no source.
const PREPARING_MIN: f64 = 15.0;
/// How long goods soak before they are dyed, min; common practice, no source.
const PRESOAK_MIN: f64 = 30.0;

impl Sheet {
    pub(super) fn prepare(
        &mut self,
        recipe: &Recipe,
        baths: &Baths,
        lines: &[Line],
        top_up: Volume,
    ) {
        let soak = recipe.process.presoak.map_or(PRESOAK_MIN, |t| t.minutes());
        let text = text::run_sheet::weigh_the_goods_dry_then_wet_out_2(
            recipe.goods.mass.shown(),
            recipe.arms.len(),
        );
        self.push(
            StepKind::PreSoak,
            text::run_sheet::soak_the_goods(),
            text,
            Some(soak),
            [None, None],
        );
        // Weighing is done while the goods soak.
        self.now_min = (soak - PREPARING_MIN).max(0.0);
        let list: Vec<String> = lines
            .iter()
            .map(|l| format!("{} {}", l.shown(), l.name))
            .collect();
        let (water, bath) = (top_up.shown(), baths.liquor.shown());
        let mut text = match water == bath {
            true => text::run_sheet::read_the_data_sheets_measure_all_of_the_water(water),
            false => text::run_sheet::read_the_data_sheets_measure_of_water_2(water, bath),
        };
        if !list.is_empty() {
            text.push_str(&text::run_sheet::and_set_out(list.join("; ")));
        }
        text.push_str(text::run_sheet::wet_powders_to_a_paste_then_dissolve());
        if baths.count > 1 {
            text.push_str(&text::run_sheet::share_all_of_it_over_baths(baths.count));
        }
        let hazards = lines
            .iter()
            .flat_map(|l| l.hazards.iter().map(|h| (*h, l.name.clone())));
        let class = recipe
            .class
            .hazards
            .iter()
            .map(|h| (*h, recipe.class.name().to_owned()));
        let always = [
            (Hazard::DataSheet, String::new()),
            (Hazard::Pots, String::new()),
            (Hazard::Children, String::new()),
        ];
        let cautions = gather(hazards.chain(class).chain(always));
        self.push(
            StepKind::Prepare,
            text::run_sheet::weigh_and_dissolve(),
            text,
            Some(PREPARING_MIN),
            [None, None],
        )
        .cautions = cautions;
        self.now_min = soak.max(PREPARING_MIN);
    }
}
