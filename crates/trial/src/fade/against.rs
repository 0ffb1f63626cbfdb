//! What a piece is compared with, and what comes of it.

use super::look::{ArmLooks, Seen};
use crate::text;
use colour::{Lab, grade};
use inference::decay::{Shared, Value};
use nalgebra::Vector3;
use serde::Serialize;
use std::collections::{BTreeMap, BTreeSet};

/// dE_F that stands for all of a share: a change of so much would be 0 left. From black
/// to white, so that no change lies beyond it.
pub(super) const WHOLE_DE: f64 = 100.0;
/// Strength of a start below which ratios to it mean nothing.
const LEAST_STRENGTH: f64 = 0.05;

/// What a piece is compared with.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Against {
    /// Its own start, both set against the arm's keeper of the same stage.
    KeeperAndStart,
    /// Its own start alone. What all pieces of one photo err by isn't in the interval.
    Start,
    /// The arm's keeper of the same stage alone.
    Keeper,
}

/// An arm's values as a curve takes them.
pub(super) struct Compared {
    pub against: Against,
    pub pieces: usize,
    pub left_out: usize,
    /// Rounds at which a piece could be compared.
    pub stages: BTreeSet<u32>,
    /// Shares of the strength left, or why there are none.
    pub strengths: Result<Vec<Value>, String>,
    /// One less the change as a share of [`WHOLE_DE`].
    pub changes: Vec<Value>,
    pub shared: Shared,
}

/// A piece before and after: what it was compared with already taken into account.
struct Pair {
    piece: usize,
    stage: u32,
    before: Lab,
    after: Lab,
    /// Strength now, at the start, of the keeper now, of the keeper at the start.
    strengths: [f64; 4],
}

impl Compared {
    /// None where no test piece was read after the start.
    pub(super) fn of(arm: &ArmLooks, bare: Option<f64>) -> Option<Self> {
        let read = |looks: &BTreeMap<u32, Seen>| looks.keys().any(|stage| *stage > 0);
        let washed = arm.tests.values().filter(|looks| read(looks)).count();
        if washed == 0 {
            return None;
        }
        // Of ways by which as many values come about, the first.
        let ways = [Against::KeeperAndStart, Against::Start, Against::Keeper];
        let mut best = (Against::KeeperAndStart, pairs(arm, Against::KeeperAndStart));
        for way in &ways[1..] {
            let found = pairs(arm, *way);
            if found.len() > best.1.len() {
                best = (*way, found);
            }
        }
        let (against, pairs) = best;
        let pieces: BTreeSet<usize> = pairs.iter().map(|pair| pair.piece).collect();
        let stages: BTreeSet<u32> = pairs.iter().map(|pair| pair.stage).collect();
        Some(Self {
            against,
            pieces: pieces.len(),
            left_out: washed - pieces.len(),
            strengths: strengths(&pairs, bare.unwrap_or(0.0)),
            changes: changes(&pairs),
            shared: shared(arm, against, &stages),
            stages,
        })
    }
}

fn pairs(arm: &ArmLooks, against: Against) -> Vec<Pair> {
    let mean = |stage: u32| -> Option<Seen> {
        let kept = arm.keepers.get(&stage)?;
        let count = kept.len() as f64;
        Some(Seen {
            lab: kept.iter().map(|seen| seen.lab).sum::<Vector3<f64>>() / count,
            strength: kept.iter().map(|seen| seen.strength).sum::<f64>() / count,
        })
    };
    let mut found = Vec::new();
    for (piece, looks) in arm.tests.values().enumerate() {
        for (&stage, now) in looks.range(1..) {
            let (start, kept, kept_first) = (looks.get(&0).copied(), mean(stage), mean(0));
            let pair = match (against, start, kept, kept_first) {
                (Against::KeeperAndStart, Some(start), Some(kept), Some(first)) => {
                    let after = now.lab - (kept.lab - first.lab);
                    let strengths = [now.strength, start.strength, kept.strength, first.strength];
                    (start.lab, after, strengths)
                }
                (Against::Start, Some(start), ..) => {
                    (start.lab, now.lab, [now.strength, start.strength, 1.0, 1.0])
                }
                (Against::Keeper, _, Some(kept), _) => {
                    (kept.lab, now.lab, [now.strength, kept.strength, 1.0, 1.0])
                }
                _ => continue,
            };
            found.push(Pair {
                piece,
                stage,
                before: Lab::from(<[f64; 3]>::from(pair.0)),
                after: Lab::from(<[f64; 3]>::from(pair.1)),
                strengths: pair.2,
            });
        }
    }
    found
}

fn strengths(pairs: &[Pair], bare: f64) -> Result<Vec<Value>, String> {
    pairs
        .iter()
        .map(|pair| {
            let [now, start, kept, first] = pair.strengths;
            // Where there is no keeper both stand for 1.
            let (kept, first) = if kept == 1.0 && first == 1.0 {
                (1.0, 1.0)
            } else {
                (kept - bare, first - bare)
            };
            let start = start - bare;
            let least = LEAST_STRENGTH.max(0.1 * bare);
            if [start, kept, first].iter().any(|of| *of < least) {
                return Err(text::fade::at_the_start_it_is_hardly_deeper().to_owned());
            }
            Ok(Value {
                piece: pair.piece,
                rounds: f64::from(pair.stage),
                left: (now - bare) / start * (first / kept),
            })
        })
        .collect()
}

/// Each change along the direction of the pooled mean change.
fn changes(pairs: &[Pair]) -> Vec<Value> {
    let terms: Vec<Vector3<f64>> = pairs
        .iter()
        .map(|pair| {
            let fade = grade::fade(pair.before, pair.after);
            Vector3::new(fade.d_l, fade.d_cf, fade.d_hf)
        })
        .collect();
    let mut by_stage: BTreeMap<u32, (Vector3<f64>, f64)> = BTreeMap::new();
    for (pair, terms) in pairs.iter().zip(&terms) {
        let sum = by_stage.entry(pair.stage).or_default();
        sum.0 += terms;
        sum.1 += 1.0;
    }
    let pooled: Vector3<f64> = by_stage.values().map(|(sum, count)| sum / *count).sum();
    let direction = pooled.try_normalize(0.0).unwrap_or_else(Vector3::x);
    pairs
        .iter()
        .zip(&terms)
        .map(|(pair, terms)| Value {
            piece: pair.piece,
            rounds: f64::from(pair.stage),
            left: 1.0 - terms.dot(&direction) / WHOLE_DE,
        })
        .collect()
}

/// A keeper errs as a piece does, and alike for all pieces that are set against it.
fn shared(arm: &ArmLooks, against: Against, stages: &BTreeSet<u32>) -> Shared {
    let share = |stage: &u32| {
        let kept = arm.keepers.get(stage).map_or(1, Vec::len);
        1.0 / kept as f64
    };
    let by_stage = stages.iter().map(share).sum::<f64>() / (stages.len() as f64).max(1.0);
    match against {
        Against::KeeperAndStart => Shared {
            by_stage,
            at_start: share(&0),
            by_others: 0.0,
        },
        Against::Start => Shared::NOTHING,
        Against::Keeper => Shared {
            by_stage,
            at_start: 0.0,
            by_others: by_stage,
        },
    }
}
