//! The steps before the bath.

use super::{Sheet, StepKind};
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
        let text = format!(
            "Weigh the goods dry, then wet {} out in lukewarm water with a drop of detergent until no dry spot is left; all arms alike.",
            recipe.goods.mass.shown()
        );
        self.push(
            StepKind::PreSoak,
            "Soak the goods",
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
        let mut text = format!(
            "Read the data sheets. Measure {} of water for a bath of {}",
            top_up.shown(),
            baths.liquor.shown()
        );
        if !list.is_empty() {
            text.push_str(&format!(", and set out: {}", list.join("; ")));
        }
        text.push_str(
            ". Wet powders to a paste, then dissolve them in some hot water of the bath.",
        );
        if baths.count > 1 {
            text.push_str(&format!(
                " Share all of it over {} baths by weight of goods.",
                baths.count
            ));
        }
        let hazards = lines
            .iter()
            .flat_map(|l| l.hazards.iter().map(|h| (*h, l.name.clone())));
        let class = recipe
            .class
            .hazards
            .iter()
            .map(|h| (*h, recipe.class.name.clone()));
        let always = [
            (Hazard::DataSheet, String::new()),
            (Hazard::Pots, String::new()),
            (Hazard::Children, String::new()),
        ];
        let cautions = gather(hazards.chain(class).chain(always));
        self.push(
            StepKind::Prepare,
            "Weigh and dissolve",
            text,
            Some(PREPARING_MIN),
            [None, None],
        )
        .cautions = cautions;
        self.now_min = soak.max(PREPARING_MIN);
    }
}
