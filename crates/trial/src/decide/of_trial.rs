//! The decision on a trial whose readings come from several sources.

use super::{DecideError, Decision, Repeatability, RestsOn, decide_knowing};
use crate::text;
use crate::{Reading, Source, Trial, rows};
use std::collections::BTreeMap;

/// Decides on a trial by its current readings.
///
/// A photo's colours, a spectrum's and a colorimeter's differ by more than the
/// changes that matter, and so do colours for different lights. So a change is
/// always taken between readings of one source and one view, and all that is said
/// of one stage rests on one such kind: the one by which most arms, then most
/// pieces, can be compared; of equals spectra before Lab before photos. Readings of
/// other kinds stand beside it and don't count.
///
/// `known` tells how well photos of this set-up repeat; other sources have no use for it.
///
/// # Errors
/// As of [`decide_knowing`], for the kind with most readings, if no kind allows a decision.
pub fn of_trial(
    trial: &Trial,
    readings: &[Reading],
    known: Option<&Repeatability>,
) -> Result<Decision, DecideError> {
    let mut kinds: BTreeMap<(u8, &str), Vec<Reading>> = BTreeMap::new();
    for reading in readings {
        let kind = (rank(reading.source), reading.view.as_str());
        kinds.entry(kind).or_default().push(reading.clone());
    }
    let mut by_kind = Vec::new();
    let mut refused: Option<(usize, DecideError)> = None;
    for ((_, view), of_kind) in kinds {
        let known = known.filter(|_| of_kind[0].source == Source::Photo);
        match decide_knowing(&rows(trial, &of_kind), trial.margin_de00, known) {
            Ok(decision) => by_kind.push((of_kind[0].source, view, decision)),
            Err(error) => {
                if refused
                    .as_ref()
                    .is_none_or(|(most, _)| of_kind.len() > *most)
                {
                    refused = Some((of_kind.len(), error));
                }
            }
        }
    }
    if by_kind.is_empty() {
        return Err(refused.map_or(DecideError::Empty, |(_, error)| error));
    }
    Ok(merged(by_kind))
}

const fn rank(source: Source) -> u8 {
    match source {
        Source::Spectrum => 0,
        Source::Lab => 1,
        Source::Photo => 2,
    }
}

/// Of every stage what one kind says.
fn merged(by_kind: Vec<(Source, &str, Decision)>) -> Decision {
    let mut stages: BTreeMap<u32, Vec<usize>> = BTreeMap::new();
    for (k, (_, _, decision)) in by_kind.iter().enumerate() {
        for arm in &decision.arms {
            let kinds = stages.entry(arm.stage).or_default();
            if kinds.last() != Some(&k) {
                kinds.push(k);
            }
        }
    }
    let mut merged = Decision::default();
    for (stage, kinds) in stages {
        let reach = |k: &usize| {
            let arms = by_kind[*k].2.arms.iter().filter(|arm| arm.stage == stage);
            arms.fold((0, 0), |(arms, pieces), arm| {
                (arms + 1, pieces + arm.pieces)
            })
        };
        // Kinds stand in the order of preference, and of equals the last would win.
        let Some(chosen) = kinds.iter().rev().copied().max_by_key(reach) else {
            continue;
        };
        let (source, view, decision) = &by_kind[chosen];
        let others = kinds.len() > 1;
        merged.rests_on.push(RestsOn {
            stage,
            source: *source,
            view: (*view).to_owned(),
        });
        merged.arms.extend(
            decision
                .arms
                .iter()
                .filter(|arm| arm.stage == stage)
                .cloned(),
        );
        for comparison in decision.comparisons.iter().filter(|c| c.stage == stage) {
            let mut comparison = comparison.clone();
            if *source != Source::Photo || others {
                comparison.reason += &text::decide::it_rests(source.in_words(), view);
            }
            if others {
                comparison.reason += text::decide::readings_from_other_sources_stand_beside();
            }
            merged.comparisons.push(comparison);
        }
        // Of the kind that the last stage rests on.
        merged.over_rounds = decision
            .over_rounds
            .iter()
            .filter(|pair| pair.stage == stage)
            .cloned()
            .collect();
    }
    merged
}
