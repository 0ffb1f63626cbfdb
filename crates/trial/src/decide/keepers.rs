//! The errors that all pieces of an arm share: those of its keepers, or of its photos.

use super::{
    Repeatability,
    change::{Against, Change},
    table::Arm,
};
use inference::scatter::{Error, Scatter};

/// Degrees of freedom of the keepers' drifts from which their own scatter is trusted.
const ENOUGH_DRIFTS_DF: usize = 4;
/// Degrees of freedom granted to the uncertainty that photos state of themselves.
const STATED_DF: f64 = 30.0;

/// Whether it is known how well the keepers of a stage are read: by a set-up check, or
/// by the scatter of several keepers' drifts in an arm.
pub(super) fn drift_is_known(arms: &[Arm], stage: u32, known: Option<&Repeatability>) -> bool {
    let spare = |arm: &Arm| arm.drifts(stage).len().saturating_sub(1);
    known.is_some() || arms.iter().map(spare).sum::<usize>() >= ENOUGH_DRIFTS_DF
}

/// How unsure keepers and photos make the difference, or one, of these arms' changes.
/// `all` are the changes of every arm at this stage, `pieces` is the scatter within arms.
///
/// They shift all changes of an arm alike, so that their scatter doesn't show it.
pub(super) fn shared_errors(
    arms: &[&Change],
    all: &[Change],
    pieces: Scatter,
    known: Option<&Repeatability>,
) -> Vec<Error> {
    let keepers = keeper_error(arms, all, pieces, known);
    let photos = arms.iter().filter_map(|arm| photo_error(arm, known));
    keepers.into_iter().chain(photos).collect()
}

/// Against keepers as they look now it counts that a keeper is another piece, dyed
/// a little otherwise. Against a piece's own start it counts only how well the
/// keeper was read twice.
fn keeper_error(
    arms: &[&Change],
    all: &[Change],
    pieces: Scatter,
    known: Option<&Repeatability>,
) -> Option<Error> {
    let share = |change: &Change| match change.against.keepers() {
        0 => 0.0,
        count => 1.0 / count as f64,
    };
    let share: f64 = arms.iter().map(|arm| share(arm)).sum();
    if share == 0.0 {
        return None;
    }
    let dyed = |arm: &&Change| matches!(arm.against, Against::Keepers(_));
    if arms.iter().any(dyed) {
        let starts = arms.iter().map(|arm| arm.start_scatter);
        let start = starts.fold(Scatter::none(), Scatter::with);
        let scatter = if start.df() > 0 { start } else { pieces };
        return scatter.error(share);
    }
    match known {
        Some(known) => Some(known.of_readings(2.0 * share)),
        None => {
            let drifts = all.iter().filter_map(Change::drift).map(Scatter::of);
            drifts.fold(Scatter::none(), Scatter::with).error(share)
        }
    }
}

/// Without keepers, what befell the photo of the start and the photo of now stays in
/// the change: by a set-up check, else by what the photos state of themselves.
fn photo_error(arm: &Change, known: Option<&Repeatability>) -> Option<Error> {
    let stated = arm.stated?;
    Some(known.map_or(
        Error {
            covariance: stated,
            df: STATED_DF,
        },
        |known| known.of_photos(2.0),
    ))
}
