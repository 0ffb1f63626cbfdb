//! Whether loads in which dye could travel hold a cloth that shows it.

use super::{Finding, FindingCode};
use crate::plan::{Mend, Plan, check::list};
use crate::text;

/// One finding for all steps of every round whose loads have no witness; where a
/// plan names no wash at all, nothing can be said.
pub(super) fn missing(plan: &Plan) -> Option<Finding> {
    let washes: Vec<(usize, &crate::plan::Step)> = plan
        .steps
        .iter()
        .enumerate()
        .filter(|(_, step)| step.kind == crate::plan::StepKind::Wash)
        .filter(|(_, step)| step.witnesses.is_empty())
        .collect();
    if washes.is_empty() {
        return None;
    }
    let loads: Vec<&str> = washes
        .iter()
        .flat_map(|(_, step)| &step.loads)
        .map(String::as_str)
        .collect();
    let place = match loads.len() {
        0 => text::plan::the_wash().to_owned(),
        1..=6 => format!(
            "{} {}",
            list(loads.iter().copied()),
            if loads.len() == 1 {
                text::plan::has_2()
            } else {
                text::plan::have()
            }
        ),
        n => text::plan::washes_have(n),
    };
    Some(Finding {
        code: FindingCode::WitnessMissing,
        sentence: text::plan::no_witness_cloth_no_undyed_strip(&place),
        consequence: text::plan::nothing_will_show_whether_dye_came_off().to_owned(),
        arms: Vec::new(),
        mends: vec![Mend::AddWitness {
            steps: washes.iter().map(|(place, _)| *place).collect(),
        }],
    })
}
