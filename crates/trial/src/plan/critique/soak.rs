//! Whether arms without a treatment were at least as wet, as warm, as long.

use super::{Finding, FindingCode};
use crate::plan::{Mend, Plan, Step, StepKind, dose::heat};
use crate::text;

/// Soaks whose times differ by less than this share match.
const TIME_SHARE: f64 = 0.1;
/// Soaks whose temperatures differ by less match, kelvins.
const HEAT_K: f64 = 5.0;

/// Treatments of some arms to which others have no matching plain soak.
pub(super) fn missing(plan: &Plan) -> Vec<Finding> {
    let treatments = plan
        .steps
        .iter()
        .enumerate()
        .filter(|(_, step)| matches!(step.kind, StepKind::Soak | StepKind::AfterTreat));
    treatments
        .filter_map(|(place, step)| {
            let without: Vec<String> = plan
                .arms
                .iter()
                .map(|arm| &arm.name)
                .filter(|name| !step.is_of(name) && !has_match(plan, name, step))
                .cloned()
                .collect();
            (!without.is_empty()).then(|| finding(step, place, without))
        })
        .collect()
}

fn has_match(plan: &Plan, arm: &str, treatment: &Step) -> bool {
    plan.steps
        .iter()
        .filter(|step| step.is_of(arm))
        .filter(|step| matches!(step.kind, StepKind::Soak | StepKind::AfterTreat))
        .any(|step| {
            // Plain water for another time is no treatment of its own to be matched.
            if is_plain(treatment) {
                return true;
            }
            alike(step.minutes, treatment.minutes, |a, b| {
                (a - b).abs() <= TIME_SHARE * a.max(b)
            }) && alike(step.temperature_c, treatment.temperature_c, |a, b| {
                (a - b).abs() <= HEAT_K
            })
        })
}

fn is_plain(step: &Step) -> bool {
    step.kind == StepKind::Soak && step.agent.is_empty()
}

/// What isn't known of the treatment can't be missed.
fn alike(own: Option<f64>, wanted: Option<f64>, close: impl Fn(f64, f64) -> bool) -> bool {
    match (own, wanted) {
        (_, None) => true,
        (None, Some(_)) => false,
        (Some(own), Some(wanted)) => close(own, wanted),
    }
}

fn finding(step: &Step, place: usize, without: Vec<String>) -> Finding {
    let what = if step.agent.is_empty() {
        text::plan::the(step.kind.words())
    } else {
        text::plan::the_with(step.kind.words(), &step.agent)
    };
    let how = match (step.minutes, step.temperature_c) {
        (Some(minutes), Some(celsius)) => text::plan::min_at(minutes, heat(celsius)),
        (Some(minutes), None) => text::plan::min_2(minutes),
        (None, Some(celsius)) => format!(" {}", text::plan::at(heat(celsius))),
        (None, None) => String::new(),
    };
    let arms = crate::plan::check::list(without.iter().map(String::as_str));
    let verb = if without.len() == 1 {
        text::plan::gets()
    } else {
        text::plan::get()
    };
    Finding {
        code: FindingCode::SoakMissing,
        sentence: text::plan::no_plain_soak_that_matches(
            &arms,
            verb,
            &what,
            crate::plan::check::list(step.arms.iter().map(String::as_str)),
            &how,
        ),
        consequence: text::plan::warm_water_alone_takes_loose_dye_off().to_owned(),
        mends: vec![Mend::AddSoak {
            arms: without.clone(),
            like_step: place,
        }],
        arms: without,
    }
}
