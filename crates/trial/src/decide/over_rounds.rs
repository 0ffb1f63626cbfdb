//! How much further one arm has faded than another, by all rounds together.
//!
//! Each piece is looked at several times, and what its looks have in common is its
//! own. A mixed model takes that apart (arm by round fixed, piece and load by chance),
//! so that the last round is judged by what all rounds tell of chance. It looks along
//! the way all arms fade, a number; the verdict looks in all directions.

use super::{ruler::Ruler, table::Table};
use inference::{
    InferenceError,
    mixed::{Cells, Fit, Place},
    scatter::mean,
};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// Level of the intervals.
const LEVEL: f64 = 0.95;
/// Rounds looked at that a model over rounds is worth.
const FEWEST_STAGES: usize = 2;

/// Two arms at the last stage, by a model of all stages.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct OverRounds {
    /// After how many rounds.
    pub stage: u32,
    /// Name of the arm that appears first.
    pub a: String,
    /// Name of the other arm.
    pub b: String,
    /// How much further `b` has faded than `a`, CIEDE2000 units; negative: less far.
    pub de00: f64,
    /// Lower end of its 95 % interval.
    pub low: f64,
    /// Upper end.
    pub high: f64,
    /// Degrees of freedom (Satterthwaite's).
    pub df: f64,
    /// How often chance alone shows as much, either way, 0 to 1.
    pub p: f64,
    /// The same where all pairs are weighed together by Holm's rule.
    pub p_together: f64,
}

/// Every pair of arms at the last stage; none where there are fewer than two stages
/// after the start, or the readings don't settle the model.
///
/// Pieces need a reading at the start. Keepers enter as arms of their own, whose
/// change is taken off that of their arm.
pub(super) fn over_rounds(table: &Table) -> Vec<OverRounds> {
    let Some(&last) = table.stages.last() else {
        return Vec::new();
    };
    if table.stages.len() < FEWEST_STAGES || table.arms.len() < 2 {
        return Vec::new();
    }
    Model::of(table, last)
        .and_then(|model| model.pairs(table, last).ok())
        .unwrap_or_default()
}

/// All changes from the start along the way that arms fade.
struct Model {
    cells: Cells,
    stages: Vec<u32>,
}

impl Model {
    /// None if no piece has a start, or the arms as a whole don't change.
    fn of(table: &Table, last: u32) -> Option<Self> {
        let tests = || table.arms.iter().flat_map(|arm| &arm.tests);
        let changes: Vec<_> = tests().filter_map(|piece| piece.changed(last)).collect();
        let way = mean(&changes)?;
        let starts: Vec<_> = tests().filter_map(|piece| piece.at(0)).collect();
        let start = mean(&starts)?;
        let ruler = Ruler::between(start, start + way);
        let stages: Vec<u32> = table.stages.iter().copied().collect();
        let mut cells = Cells::new(1);
        let mut loads: BTreeMap<&str, usize> = BTreeMap::new();
        let mut number = 0;
        for (at, arm) in table.arms.iter().enumerate() {
            for (group, pieces) in [(2 * at, &arm.tests), (2 * at + 1, &arm.keepers)] {
                for piece in pieces {
                    number += 1;
                    for (at_stage, &stage) in stages.iter().enumerate() {
                        let Some(change) = piece.changed(stage) else {
                            continue;
                        };
                        let next = loads.len();
                        let load = piece
                            .load(stage)
                            .filter(|_| group % 2 == 0)
                            .map(|load| *loads.entry(load).or_insert(next));
                        let place = Place {
                            piece: number,
                            loads: &[load],
                        };
                        let along = ruler.along_way(way, change)?;
                        cells.add(place, group, at_stage, along).ok()?;
                    }
                }
            }
        }
        Some(Self { cells, stages })
    }

    fn pairs(&self, table: &Table, last: u32) -> Result<Vec<OverRounds>, InferenceError> {
        let fit: Fit = self.cells.fit()?;
        let at = self.stages.len() - 1;
        let mut pairs = Vec::new();
        let mut weights = Vec::new();
        for i in 0..table.arms.len() {
            for j in i + 1..table.arms.len() {
                let own = self.cells.difference(2 * i, 2 * j, at)?;
                let kept = [i, j].map(|arm| self.cells.mean(2 * arm + 1, at).ok());
                weights.push(less_keepers(own, &kept));
                pairs.push((&table.arms[i], &table.arms[j]));
            }
        }
        let found = fit.by_holm(&weights)?;
        Ok(pairs
            .into_iter()
            .zip(found)
            .map(|((a, b), (contrast, p_together))| {
                let interval = contrast.interval(LEVEL);
                OverRounds {
                    stage: last,
                    a: a.name.to_owned(),
                    b: b.name.to_owned(),
                    de00: contrast.estimate,
                    low: interval.low,
                    high: interval.high,
                    df: contrast.df,
                    p: contrast.p(),
                    p_together,
                }
            })
            .collect())
    }
}

/// Takes each arm's keepers off it, where it has some.
fn less_keepers(mut own: Vec<f64>, kept: &[Option<Vec<f64>>; 2]) -> Vec<f64> {
    for (sign, kept) in [1.0, -1.0].into_iter().zip(kept) {
        for (weight, of_keepers) in own.iter_mut().zip(kept.iter().flatten()) {
            *weight += sign * of_keepers;
        }
    }
    own
}
