//! The steps of the dye bath.

use super::{Sheet, StepKind};
use crate::text;
use crate::{
    caution::{Hazard, gather},
    plan::{Baths, Line},
    programme::Programme,
};

impl Sheet {
    pub(super) fn bath(&mut self, lines: &[Line], programme: &Programme, baths: &Baths) {
        for stage in &programme.stages {
            let (from, to) = (Some(stage.from_c), Some(stage.to_c));
            if !stage.add.is_empty() {
                let here: Vec<&Line> = lines
                    .iter()
                    .filter(|l| stage.add.contains(&l.name))
                    .collect();
                let what = here.iter().map(|l| {
                    let each = l
                        .each_bath
                        .as_ref()
                        .map_or(String::new(), text::run_sheet::to_each_bath);
                    format!("{} {}{each}", l.shown(), l.name)
                });
                let list = what.collect::<Vec<_>>().join("; ");
                let mut text = match stage.how_to_add.as_str() {
                    "" => text::run_sheet::stir_in(list),
                    how => text::run_sheet::stir_in_so(list, how),
                };
                if baths.count > 1 && here.iter().all(|l| l.each_bath.is_none()) {
                    text.push_str(text::run_sheet::share_it_over_the_baths_by_weight());
                }
                if here.iter().any(|l| l.role.is_none()) && !stage.goods_wait {
                    text.push_str(text::run_sheet::then_put_the_wet_goods());
                }
                let hazards: Vec<_> = here
                    .iter()
                    .flat_map(|l| l.hazards.iter().map(|h| (*h, l.name.clone())))
                    .collect();
                let step = self.push(
                    StepKind::Add,
                    &text::run_sheet::add(stage.add.join(", ")),
                    text,
                    Some(stage.adding_min),
                    [from, from],
                );
                let hot = step
                    .cautions
                    .iter()
                    .map(|c| (c.hazard, String::new()))
                    .collect::<Vec<_>>();
                step.cautions = gather(hazards.into_iter().chain(hot));
            }
            if stage.raising_min > 0.0 {
                let up = stage.to_c > stage.from_c;
                let (kind, title) = if up {
                    (StepKind::Raise, text::run_sheet::raise_to(stage.to_c))
                } else {
                    (StepKind::Cool, text::run_sheet::cool_to(stage.to_c))
                };
                let text = text::run_sheet::from_to(stage.from_c, stage.to_c);
                let text = format!("{text} {}", stage.how_to_raise)
                    .trim_end()
                    .to_owned();
                let step = self.push(kind, &title, text, Some(stage.raising_min), [from, to]);
                if stage.to_c.celsius() > 100.0 {
                    step.cautions.push(Hazard::Pressure.caution(Vec::new()));
                }
            }
            if stage.holding_min > 0.0 {
                let text = match stage.how.as_str() {
                    "" => text::run_sheet::keep_at(stage.to_c),
                    how => how.to_owned(),
                };
                self.push(
                    StepKind::Hold,
                    &text::run_sheet::hold_at(stage.to_c),
                    text,
                    Some(stage.holding_min),
                    [to, to],
                );
            }
        }
        if programme.cooling_min > 0.0 {
            let from = programme.stages.last().map(|s| s.to_c);
            let text = text::run_sheet::heat_off_let_the_bath_cool(programme.cool_to_c);
            self.push(
                StepKind::Cool,
                &text::run_sheet::cool_to_2(programme.cool_to_c),
                text,
                Some(programme.cooling_min),
                [from, Some(programme.cool_to_c)],
            );
        }
    }
}
