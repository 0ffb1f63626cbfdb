//! In which order a person sees the pairs.

use super::{PairKind, Session};
use inference::chance::Chance;
use serde::{Deserialize, Serialize};

/// Orders that are tried before one with a repeat close by is taken.
const TRIES: usize = 500;

/// One pair's turn in a person's order.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Turn {
    /// Which of the session's pairs, from 0.
    pub pair: usize,
    /// Whether the graded cloth is named (or shown) second.
    pub swapped: bool,
}

/// The order of one person, from a seed of their own: change first, in random order
/// with catch pairs and repeats mixed in, then staining, so that the grey scale
/// is changed once. Which of the two cloths is named first is drawn too; a repeat comes as
/// far from the first look as a few hundred draws can bring it, up to a third of
/// the way.
///
/// ```
/// # use trial::eyes::{Session, Way, order};
/// let none = Session { stage: 1, way: Way::Cloth, pairs: vec![], repeats: 0, notes: vec![] };
/// assert!(order(&none, 7).is_empty());
/// ```
pub fn order(session: &Session, seed: u64) -> Vec<Turn> {
    let mut chance = Chance::new(seed);
    let of_kind = |wanted: fn(PairKind) -> bool| -> Vec<usize> {
        let all = session.pairs.iter().enumerate();
        all.filter(|(_, pair)| wanted(pair.kind))
            .map(|(at, _)| at)
            .collect()
    };
    let mut changes = of_kind(|kind| kind != PairKind::Staining);
    let mut again = of_kind(|kind| kind == PairKind::Change);
    chance.shuffle(&mut again);
    changes.extend(again.into_iter().take(session.repeats));
    let mut best = (0, changes.clone());
    for _ in 0..TRIES {
        chance.shuffle(&mut changes);
        let apart = closest(&changes);
        if apart > best.0 {
            best = (apart, changes.clone());
        }
        if apart >= changes.len() / 3 {
            break;
        }
    }
    let mut staining = of_kind(|kind| kind == PairKind::Staining);
    chance.shuffle(&mut staining);
    let turns = best.1.into_iter().chain(staining);
    turns
        .map(|pair| Turn {
            pair,
            swapped: chance.below(2) == 1,
        })
        .collect()
}

/// How many turns the closest look at the same pair lies from the first.
fn closest(pairs: &[usize]) -> usize {
    let repeats = pairs.iter().enumerate().filter_map(|(at, pair)| {
        let again = pairs[at + 1..].iter().position(|other| other == pair)?;
        Some(again + 1)
    });
    repeats.min().unwrap_or(pairs.len().max(1))
}

#[cfg(test)]
mod tests {
    use super::super::{Cloth, Pair, Way, What};
    use super::*;
    use crate::PieceId;
    use photo::board::Code;

    fn session(changes: usize, stains: usize, repeats: usize) -> Session {
        let pair = |kind, at: usize| Pair {
            kind,
            piece: PieceId(at as i64),
            cloths: [0, 1].map(|k| Cloth {
                what: What::Undyed,
                code: Code::from_number((2 * at + k) as u32),
            }),
            labs: None,
        };
        let changes = (0..changes).map(|at| pair(PairKind::Change, at));
        let stains = (0..stains).map(|at| pair(PairKind::Staining, 100 + at));
        Session {
            stage: 5,
            way: Way::Cloth,
            pairs: changes.chain(stains).collect(),
            repeats,
            notes: Vec::new(),
        }
    }

    #[test]
    fn every_pair_comes_and_repeats_come_apart() {
        let session = session(8, 3, 4);
        for seed in 0..40 {
            let turns = order(&session, seed);
            assert_eq!(turns.len(), 15);
            let mut count = [0; 11];
            turns.iter().for_each(|turn| count[turn.pair] += 1);
            assert_eq!(count.iter().filter(|n| **n == 2).count(), 4);
            assert!(count.iter().all(|n| *n > 0));
            assert!(
                turns[12..].iter().all(|turn| turn.pair >= 8),
                "staining last"
            );
            let pairs: Vec<usize> = turns[..12].iter().map(|turn| turn.pair).collect();
            assert!(closest(&pairs) >= 3, "{pairs:?}");
        }
        assert_eq!(order(&session, 3), order(&session, 3));
        assert_ne!(order(&session, 3), order(&session, 4));
    }

    #[test]
    fn one_pair_twice_is_still_shown_twice() {
        assert_eq!(order(&session(1, 0, 1), 1).len(), 2);
    }
}
