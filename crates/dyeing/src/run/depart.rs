//! Where a run departed from its sheet, in words.

use crate::text;
use serde::Serialize;

use super::{Run, What};
use crate::{
    Celsius,
    quantity::figure,
    run_sheet::{Step, StepKind},
};

/// A time off by less than this share follows the sheet; common practice, no source.
const CLOSE_SHARE: f64 = 0.2;
/// A time off by less follows the sheet, min; common practice, no source.
const CLOSE_MIN: f64 = 2.0;
/// A temperature off by less follows the sheet, K; common practice, no source.
const CLOSE_K: f64 = 5.0;

/// Where a run departed from its sheet, or its recipe from a label.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Departure {
    /// Number of the step; nothing where it isn't of one.
    pub step: Option<u32>,
    /// The arms that it is about; empty where it is about all.
    pub arms: Vec<String>,
    /// What departed, as a sentence.
    pub sentence: String,
}

/// What usually goes otherwise in a step of that kind, a few words each.
pub fn usual_departures(kind: StepKind) -> Vec<&'static str> {
    match kind {
        StepKind::PreSoak => vec![
            text::run::dry_spots_were_left(),
            text::run::soaked_overnight(),
            text::run::arms_soaked_apart(),
        ],
        StepKind::Prepare => vec![
            text::run::measured_by_spoon_not_weighed(),
            text::run::powder_not_fully_dissolved(),
            text::run::another_product_or_lot(),
        ],
        StepKind::Add => vec![
            text::run::forgotten_and_added_later(),
            text::run::added_all_at_once(),
            text::run::some_was_spilled(),
        ],
        StepKind::Raise => vec![
            text::run::heated_faster(),
            text::run::heated_more_slowly(),
            text::run::boiled_by_mistake(),
        ],
        StepKind::Hold => vec![
            text::run::not_stirred_all_the_time(),
            text::run::boiled_by_mistake(),
            text::run::heat_went_off(),
            text::run::goods_floated_up(),
        ],
        StepKind::Cool => vec![
            text::run::taken_out_hot(),
            text::run::cooled_faster(),
            text::run::left_in_overnight(),
        ],
        StepKind::Rinse => vec![
            text::run::water_not_yet_clear(),
            text::run::arms_rinsed_together(),
            text::run::hotter_or_colder_water(),
        ],
        StepKind::Wash => vec![
            text::run::another_detergent(),
            text::run::arms_washed_together(),
            text::run::water_not_yet_clear(),
        ],
        StepKind::AfterTreat => vec![
            text::run::another_amount(),
            text::run::not_all_pieces_covered(),
            text::run::another_product_or_lot(),
        ],
        StepKind::MatchingSoak => vec![
            text::run::left_out(),
            text::run::shorter_than_the_after_treatment(),
            text::run::in_the_same_vessel(),
        ],
        StepKind::Dry => vec![
            text::run::tumble_dried(),
            text::run::dried_in_the_sun(),
            text::run::ironed(),
        ],
    }
}

impl Run {
    /// Everything that departed: from labels, by times and temperatures, as noted, and what was
    /// left out of a run that is over; in the order of the sheet.
    pub fn departures(&self) -> Vec<Departure> {
        let labels = self.sheet.departures.iter().map(|sentence| Departure {
            step: None,
            arms: Vec::new(),
            sentence: sentence.clone(),
        });
        let mut found: Vec<Departure> = labels.collect();
        let whole = self.noted.iter().filter(|n| n.step.is_none());
        found.extend(whole.filter_map(|n| match &n.what {
            What::Departed(text) => Some(Departure {
                step: None,
                arms: Vec::new(),
                sentence: text::run::in_the_run_as_a_whole(ended(text)),
            }),
            _ => None,
        }));
        for step in &self.sheet.steps {
            let said = self.of_step(step);
            found.extend(said.into_iter().map(|words| Departure {
                step: Some(step.number),
                arms: step.arms.clone(),
                sentence: text::run::step(
                    step.number,
                    &step.title,
                    for_arms(&step.arms),
                    ended(&words),
                ),
            }));
        }
        found.extend(self.soaks_apart());
        found
    }

    fn of_step(&self, step: &Step) -> Vec<String> {
        let clock = self.clock(step.number);
        let mut said = Vec::new();
        if self.is_finished() && clock.began_s.is_none() {
            said.push(text::run::no_start_was_noted().to_owned());
        }
        if let (Some(planned), false, Some(_)) = (step.minutes, clock.is_running(), clock.began_s) {
            said.extend(off_time(step.kind, planned, minutes(clock.ran_s)));
        }
        for noted in self.noted_of(step.number) {
            match &noted.what {
                What::Temperature(found) => said.extend(off_heat(step, *found)),
                What::Departed(text) => said.push(text.clone()),
                _ => {}
            }
        }
        said
    }

    /// A control that soaked longer or shorter than the others were treated is no control.
    fn soaks_apart(&self) -> Vec<Departure> {
        let mut found = Vec::new();
        for pair in self.sheet.steps.windows(2) {
            let [treat, soak] = pair else { continue };
            if (treat.kind, soak.kind) != (StepKind::AfterTreat, StepKind::MatchingSoak) {
                continue;
            }
            let took = [treat, soak].map(|s| self.clock(s.number));
            if took.iter().any(|c| c.is_running() || c.began_s.is_none()) {
                continue;
            }
            let [treated, soaked] = took.map(|c| minutes(c.ran_s));
            if is_off(treated, soaked) {
                found.push(Departure {
                    step: Some(soak.number),
                    arms: soak.arms.clone(),
                    sentence: text::run::the_matching_soak_took_min(
                        figure(soaked),
                        figure(treated),
                    ),
                });
            }
        }
        found
    }
}

fn minutes(seconds: i64) -> f64 {
    // To the half minute: nobody taps to the second.
    libm::round(seconds as f64 / 30.0) / 2.0
}

fn is_off(planned_min: f64, took_min: f64) -> bool {
    let off = (took_min - planned_min).abs();
    off > CLOSE_MIN && off > CLOSE_SHARE * planned_min
}

fn off_time(kind: StepKind, planned_min: f64, took_min: f64) -> Option<String> {
    let matters = match kind {
        // Weighing and stirring in take the time they take, and so does drying.
        StepKind::Prepare | StepKind::Add | StepKind::Dry => false,
        // A soak may last; a short one leaves dry spots.
        StepKind::PreSoak => took_min < planned_min,
        _ => true,
    };
    (matters && is_off(planned_min, took_min))
        .then(|| text::run::it_took_min_instead_of_min(figure(took_min), figure(planned_min)))
}

fn off_heat(step: &Step, found: Celsius) -> Option<String> {
    let (from, to) = (step.from_c?, step.to_c?);
    let [low, high] = if from <= to { [from, to] } else { [to, from] };
    let planned = if low == high {
        low.shown()
    } else {
        text::run::to(figure(low.local_degrees()), high.shown())
    };
    (found.celsius() < low.celsius() - CLOSE_K || found.celsius() > high.celsius() + CLOSE_K)
        .then(|| text::run::it_was_at_instead(found.shown(), &planned))
}

fn for_arms(arms: &[String]) -> String {
    if arms.is_empty() {
        String::new()
    } else {
        format!(" ({})", arms.join(", "))
    }
}

/// With a full stop.
fn ended(text: &str) -> String {
    let text = text.trim();
    if text.ends_with(['.', '!', '?']) {
        text.to_owned()
    } else {
        format!("{text}.")
    }
}
