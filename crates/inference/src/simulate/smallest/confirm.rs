//! A size tried out by drawing trials at random.

use super::{
    super::{Contrasts, Design, Layout, Outcome, Piece, Runs, Truth},
    Sharing, Size, Strictness, Wish,
};
use crate::InferenceError;

/// Trials that are drawn of a small size.
const RUNS: usize = 2000;
/// Trials that are drawn at least.
const LEAST_RUNS: usize = 200;
/// Pieces that are drawn in all, unless that is too few trials.
const DRAWN: usize = 1_000_000;

/// The size with its simulated powers; as it is if there are too many loads.
pub(super) fn confirmed(wish: &Wish, size: Size, seed: u64) -> Result<Size, InferenceError> {
    let layout = layout(wish, &size);
    let Ok(design) = Design::of(&layout) else {
        return Ok(size);
    };
    let (first, second) = compared(wish);
    let runs = (DRAWN / size.pieces).clamp(LEAST_RUNS, RUNS);
    let runs = Runs {
        tail: wish.tail,
        equivalence_tail: wish.equivalence_tail,
        ..Runs::new(runs as u32, seed)
    };
    let outcome = |effect: f64, margin| -> Result<Option<Outcome>, InferenceError> {
        let mut effects = vec![0.0; wish.arms];
        effects[second] = effect;
        let truth = Truth {
            effects,
            piece_sd: wish.piece_sd,
            load_sds: vec![wish.load_sd],
            reading_sd: wish.reading_sd,
            photos: wish.photos,
            margin,
            parts: wish.alike.map_or(1, |alike| alike.parts),
        };
        let all = design.simulate(&truth, &runs)?;
        let of_pair = |outcome: &Outcome| {
            (outcome.contrast.first, outcome.contrast.second) == (first, second)
        };
        Ok(all.into_iter().find(of_pair))
    };
    let mut size = size;
    if let (Some(power), Some(effect)) = (&mut size.difference, wish.difference) {
        power.simulated = outcome(effect, None)?.and_then(|outcome| match wish.strictness {
            Strictness::Each => Some(outcome.difference),
            Strictness::Holm => Some(outcome.difference_holm),
            Strictness::Dunnett => outcome.difference_dunnett,
        });
    }
    if let (Some(power), Some(alike)) = (&mut size.alike, wish.alike) {
        let found = outcome(alike.truly, Some(alike.margin))?;
        power.simulated = found.and_then(|outcome| outcome.equivalence);
    }
    Ok(size)
}

/// The two arms of which one differs.
fn compared(wish: &Wish) -> (usize, usize) {
    match wish.contrasts {
        Contrasts::Against(control) if control == wish.arms - 1 => (control, 0),
        Contrasts::Against(control) => (control, wish.arms - 1),
        Contrasts::AllPairs => (0, wish.arms - 1),
    }
}

fn layout(wish: &Wish, size: &Size) -> Layout {
    let of_arm = size.loads / wish.arms;
    let load = |arm: usize, number: usize| match wish.sharing {
        Sharing::AllArms => number % size.loads,
        Sharing::OneArm => arm * of_arm + number % of_arm,
    };
    let pieces = (0..wish.arms).flat_map(|arm| {
        (0..size.per_arm).map(move |number| Piece {
            arm,
            loads: vec![Some(load(arm, number))],
        })
    });
    Layout {
        arms: wish.arms,
        pieces: pieces.collect(),
        keepers: vec![wish.keepers; wish.arms],
        kinds: 1,
        contrasts: wish.contrasts,
        scatter: wish.scatter,
    }
}
