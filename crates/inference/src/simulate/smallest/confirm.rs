//! A size tried out by drawing trials at random.

use super::{
    super::{Case, Contrasts, Design, Layout, Outcome, Piece, Runs, Truth},
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
    let mut effects = vec![0.0; wish.arms];
    let truth = Truth {
        effects: effects.clone(),
        piece_sd: wish.piece_sd,
        load_sds: vec![wish.load_sd],
        reading_sd: wish.reading_sd,
        photos: wish.photos,
        margin: None,
        parts: wish.alike.map_or(1, |alike| alike.parts),
    };
    let mut case = |effect: f64, margin, together| {
        effects[second] = effect;
        Case {
            effects: effects.clone(),
            margin,
            together,
        }
    };
    let strict = wish.strictness != Strictness::Each;
    let differs = wish.difference.map(|effect| case(effect, None, strict));
    let alike = wish
        .alike
        .map(|alike| case(alike.truly, Some(alike.margin), false));
    let cases: Vec<Case> = differs.into_iter().chain(alike).collect();
    let of_pair = |all: Vec<Outcome>| {
        let pair = |outcome: &Outcome| {
            (outcome.contrast.first, outcome.contrast.second) == (first, second)
        };
        all.into_iter().find(pair)
    };
    let mut found = design
        .simulate_each(&truth, &cases, &runs)?
        .into_iter()
        .map(of_pair);
    let mut size = size;
    if let Some(power) = &mut size.difference {
        power.simulated = found
            .next()
            .flatten()
            .and_then(|found| match wish.strictness {
                Strictness::Each => Some(found.difference),
                Strictness::Holm => found.difference_holm,
                Strictness::Dunnett => found.difference_dunnett,
            });
    }
    if let Some(power) = &mut size.alike {
        power.simulated = found.next().flatten().and_then(|found| found.equivalence);
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
