//! The mean change of each arm with its interval.

use super::{
    ArmChange, Repeatability, UNBOUNDED_DE00,
    change::{Against, Change},
    keepers::shared_errors,
    ruler::{Ruler, lab},
};
use colour::grade;
use inference::scatter::{Error, Scatter, mean};
use nalgebra::Vector3;

/// The changes of all arms at one stage.
pub(super) fn arm_changes(
    stage: u32,
    changes: &[Change],
    known: Option<&Repeatability>,
) -> Vec<ArmChange> {
    changes
        .iter()
        .map(|change| {
            let start = mean(&change.starts).unwrap_or_else(Vector3::zeros);
            let ruler = Ruler::between(start, start + change.mean);
            let (low, high) = match ruler.length(&errors(change, changes, known)) {
                Some(length) => bounded(ruler.de00, length.interval(0.95)),
                None => (0.0, UNBOUNDED_DE00),
            };
            ArmChange {
                arm: change.arm.to_owned(),
                stage,
                pieces: change.pieces.len(),
                change: change.mean.into(),
                de00: ruler.de00,
                low,
                high,
                fade_grade: grade::fade(lab(start), lab(start + change.mean))
                    .grade
                    .to_string(),
            }
        })
        .collect()
}

/// An interval that holds the value in spite of rounding, and ends at the bound.
pub(super) fn bounded(de00: f64, interval: inference::Interval) -> (f64, f64) {
    let high = interval.high.min(UNBOUNDED_DE00).max(de00);
    (interval.low.min(de00), high)
}

fn errors(change: &Change, all: &[Change], known: Option<&Repeatability>) -> Vec<Error> {
    let own_loads = change.loads().filter(|loads| {
        let others = all.iter().filter(|other| other.arm != change.arm);
        let mut taken = others.flat_map(|other| &other.pieces);
        loads.len() > 1 && !taken.any(|(load, _)| load.is_some_and(|l| loads.contains_key(l)))
    });
    let (mut scatter, units) = match &own_loads {
        Some(loads) => (change.load_scatter(loads), loads.len()),
        None => (change.piece_scatter(), change.pieces.len()),
    };
    if scatter.df() == 0 {
        // A single piece says nothing of scatter: take that of the other arms.
        scatter = all
            .iter()
            .map(Change::piece_scatter)
            .fold(Scatter::none(), Scatter::with);
    }
    if scatter.df() == 0 && matches!(change.against, Against::Keepers(_)) {
        scatter = change.start_scatter;
    }
    let own = scatter.error(1.0 / units as f64);
    own.map_or_else(Vec::new, |own| {
        let shared = shared_errors(&[change], all, scatter, known);
        std::iter::once(own).chain(shared).collect()
    })
}
