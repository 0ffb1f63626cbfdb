//! Cloths that should have stayed pale, at their start and later.

use super::{StainedCloth, view};
use crate::{Part, PieceId, Reading, Role, Source, Trial, part_change, rows::current};
use colour::View;
use std::collections::BTreeMap;

/// A cloth's colour at its start and at a later stage.
pub(super) struct Shifted {
    pub piece: PieceId,
    pub cloth: StainedCloth,
    pub stage: u32,
    pub source: Source,
    pub view: View,
    pub from: [f64; 3],
    pub to: [f64; 3],
    /// Covariance of the difference.
    pub cov: [[f64; 3]; 3],
}

/// Every shift of a witness cloth and of a test piece's pale part, of one source and
/// view each.
pub(super) fn all(trial: &Trial, readings: &[Reading]) -> Vec<Shifted> {
    let mut found = witnesses(trial, readings);
    found.extend(pale_parts(trial, readings));
    found
}

fn witnesses(trial: &Trial, readings: &[Reading]) -> Vec<Shifted> {
    type Key<'a> = (PieceId, Source, &'a str);
    let mut cloths: BTreeMap<Key, BTreeMap<u32, Vec<&Reading>>> = BTreeMap::new();
    for reading in current(readings) {
        let role = trial.piece(reading.piece).map(|piece| piece.role);
        if role == Some(Role::Witness) {
            let key = (reading.piece, reading.source, reading.view.as_str());
            let stages = cloths.entry(key).or_default();
            stages.entry(reading.stage).or_default().push(reading);
        }
    }
    let mut found = Vec::new();
    for ((piece, source, name), stages) in cloths {
        let (Some(start), Some(view)) = (stages.get(&0), view(name)) else {
            continue;
        };
        for (&stage, now) in stages.range(1..) {
            let (from, from_cov) = mean(start);
            let (to, to_cov) = mean(now);
            found.push(Shifted {
                piece,
                cloth: StainedCloth::WitnessCloth,
                stage,
                source,
                view,
                from,
                to,
                cov: [0, 1, 2].map(|i| [0, 1, 2].map(|j| from_cov[i][j] + to_cov[i][j])),
            });
        }
    }
    found
}

/// Mean of readings of one cloth at one stage with its covariance: photos count as
/// erring alike, readings of an instrument each for itself.
fn mean(readings: &[&Reading]) -> ([f64; 3], [[f64; 3]; 3]) {
    let count = readings.len() as f64;
    let lab = [0, 1, 2].map(|k| readings.iter().map(|r| r.lab[k]).sum::<f64>() / count);
    let cov = part_change::average(readings.iter().map(|r| r.cov));
    let alike = readings.iter().any(|r| r.source == Source::Photo);
    let share = if alike { 1.0 } else { 1.0 / count };
    (lab, cov.map(|row| row.map(|v| v * share)))
}

fn pale_parts(trial: &Trial, readings: &[Reading]) -> Vec<Shifted> {
    let mut found = Vec::new();
    for ((piece, name, part), stages) in &part_change::sorted(readings) {
        let test = trial.piece(*piece).is_some_and(|p| p.role == Role::Test);
        let (true, Part::Pale, Some(start), Some(view)) = (test, part, stages.get(&0), view(name))
        else {
            continue;
        };
        for (&stage, now) in stages.range(1..) {
            let shift = part_change::Shift::of(start, now);
            found.push(Shifted {
                piece: *piece,
                cloth: StainedCloth::PalePart,
                stage,
                source: Source::Photo,
                view,
                from: shift.from,
                to: shift.to,
                cov: shift.cov,
            });
        }
    }
    found
}
