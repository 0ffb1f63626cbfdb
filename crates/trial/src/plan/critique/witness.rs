//! Whether loads in which dye could travel hold a cloth that shows it, and one that tells whose it is
//! where that is asked.

use super::{Finding, FindingCode};
use crate::plan::{Kind, Mend, Plan, Sharing, Staining, StepKind, check::list};
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

/// Where the plan asks which arm stains more, and its witness cloths won't tell.
pub(super) fn untold(plan: &Plan, sharing: &Sharing) -> Option<Finding> {
    let found = plan.staining_with(sharing);
    let consequence = match &found.staining {
        _ if !plan.staining => return None,
        // That no wash has a witness is a finding of its own.
        Staining::NoWitness | Staining::Told { .. } => return None,
        Staining::Shared { .. } => text::plan::the_stain_cant_be_laid_to_one_arm(),
        Staining::Few { .. } => text::plan::one_cloth_tells_nothing_of_chance(),
    };
    let mends = found.at_fault.iter().flat_map(|wash| {
        let kind = Kind::Load(StepKind::Wash, *wash);
        let mends = [Mend::AddLoads { kind }, Mend::EachByItself { kind }];
        // Neither helps an arm that lacks the wash, the cloth or a second piece.
        mends.into_iter().filter(|mend| {
            let mended = mend.apply(plan);
            let left = mended.staining_with(&Sharing::of(&mended));
            !left.at_fault.contains(wash)
        })
    });
    Some(Finding {
        code: FindingCode::StainingUntold,
        sentence: found.staining.sentence(plan.staining),
        consequence: consequence.to_owned(),
        mends: mends.collect(),
        arms: match found.staining {
            Staining::Few { arms, .. } => arms,
            _ => Vec::new(),
        },
    })
}
