//! How each two arms of a layout can be compared, worked out once.

use super::{
    Contrasts, Layout, ScatterOf,
    fit::{Fit, Weights},
    side::Side,
};
use crate::text;
use crate::{InferenceError, dunnett::Dunnett};
use std::collections::BTreeSet;

/// Cells of normal equations that are solved at most for pairs by themselves.
const MOST_CELLS: usize = 1_600_000;

/// What a comparison of two arms goes by.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Analysis {
    /// Pieces, because all share one load or no loads are noted.
    Pieces,
    /// Pieces within loads that both arms share, loads being an additive part.
    WithinLoads,
    /// Means of loads, because each arm has loads of its own. With two loads in an
    /// arm the test errs on the safe side: at 5 %, chance shows a difference in 2 to 3 %.
    LoadMeans,
    /// Nothing: each arm has one load, its own, so that a difference may be the
    /// load's. It is never shown.
    Confounded,
    /// Nothing: no two units of an arm tell what chance does. It is never shown.
    NoScatter,
}

/// A comparison of two arms.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Contrast {
    /// The arm that is subtracted: the control, if there is one.
    pub first: usize,
    /// The other arm.
    pub second: usize,
    /// What it goes by.
    pub analysis: Analysis,
    /// Units (pieces, or loads where these are the units) in the smaller arm.
    pub units: usize,
}

/// A layout with all that is worked out once, before anything is drawn.
pub struct Design {
    pub(super) layout: Layout,
    pub(super) contrasts: Vec<Contrast>,
    pub(super) means: Vec<Means>,
    pub(super) fits: Vec<Fit>,
    /// Cells of the normal equations of all pairs' fits.
    cells: usize,
    /// Which of the contrasts can be shown.
    pub(super) family: Vec<usize>,
    /// The family's errors together, if it is against one control.
    pub(super) dunnett: Option<Dunnett>,
}

/// From what a difference and its error are got.
pub(super) enum Means {
    Never,
    Least { fit: usize, weights: Weights },
    Sides([Side; 2]),
}

/// Where the pieces of two arms stand in one kind of load.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Sharing {
    /// Not noted, or all in one.
    Alike,
    Shared,
    /// Loads of their own, several.
    Apart,
    /// Each arm its own one.
    Own,
}

impl Design {
    /// Works out how the arms of a layout can be compared.
    ///
    /// # Errors
    /// A layout that makes no sense, or more than 400 loads and arms in one
    /// comparison.
    pub fn of(layout: &Layout) -> Result<Self, InferenceError> {
        layout.check()?;
        let mut design = Self {
            layout: layout.clone(),
            contrasts: Vec::new(),
            means: Vec::new(),
            fits: Vec::new(),
            cells: 0,
            family: Vec::new(),
            dunnett: None,
        };
        let all: Vec<usize> = (0..layout.arms).collect();
        if layout.scatter == ScatterOf::AllArms {
            let kinds = several(layout, &all);
            design.fits.push(Fit::of(layout, &all, &kinds)?);
        }
        for (first, second) in layout.pairs() {
            let (analysis, means) = design.compare(first, second)?;
            let units = match &means {
                Means::Sides([a, b]) => a.count().min(b.count()),
                _ => count(layout, first).min(count(layout, second)),
            };
            if !matches!(means, Means::Never) {
                design.family.push(design.contrasts.len());
            }
            design.contrasts.push(Contrast {
                first,
                second,
                analysis,
                units,
            });
            design.means.push(means);
        }
        if matches!(layout.contrasts, Contrasts::Against(_)) && !design.family.is_empty() {
            design.dunnett = Some(Dunnett::sharing(&design.shares())?);
        }
        Ok(design)
    }

    /// The comparisons, in the order of the outcomes.
    pub fn contrasts(&self) -> &[Contrast] {
        &self.contrasts
    }

    fn compare(
        &mut self,
        first: usize,
        second: usize,
    ) -> Result<(Analysis, Means), InferenceError> {
        let layout = &self.layout;
        let pair = [first, second];
        let sharing: Vec<Sharing> = (0..layout.kinds)
            .map(|kind| sharing(layout, pair, kind))
            .collect();
        let never = |analysis| Ok((analysis, Means::Never));
        if sharing.contains(&Sharing::Own) {
            return never(Analysis::Confounded);
        }
        let apart = kinds_with(&sharing, Sharing::Apart);
        if !apart.is_empty() {
            let sides = pair.map(|arm| Side::of_loads(layout, arm, &apart));
            return if sides[0].df() + sides[1].df() > 0 {
                Ok((Analysis::LoadMeans, Means::Sides(sides)))
            } else {
                never(Analysis::Confounded)
            };
        }
        let shared = kinds_with(&sharing, Sharing::Shared);
        let analysis = if shared.is_empty() {
            Analysis::Pieces
        } else {
            Analysis::WithinLoads
        };
        if layout.scatter == ScatterOf::EachPair {
            if shared.is_empty() {
                let sides = pair.map(|arm| Side::of_pieces(layout, arm));
                let kept = layout.keepers[first] + layout.keepers[second] > 0;
                return if sides[0].df() + sides[1].df() > 0 || kept {
                    Ok((analysis, Means::Sides(sides)))
                } else {
                    never(Analysis::NoScatter)
                };
            }
            let fit = Fit::of(layout, &pair, &shared)?;
            self.cells += fit.count() * fit.count();
            let what = text::error::number_of_loads_and_arms();
            let range = text::error::smaller_where_so_many_pairs_are_compared();
            let fine = self.cells <= MOST_CELLS;
            InferenceError::unless(fine, what, fit.count() as f64, range)?;
            self.fits.push(fit);
        }
        let fit = self.fits.len() - 1;
        let Some(weights) = self.fits[fit].difference(first, second) else {
            return never(Analysis::Confounded);
        };
        if self.fits[fit].df == 0 {
            return never(Analysis::NoScatter);
        }
        Ok((analysis, Means::Least { fit, weights }))
    }

    /// The control's share of the variance of each contrast that can be shown.
    fn shares(&self) -> Vec<f64> {
        let keeper = |arm: usize| match self.layout.keepers[arm] {
            0 => 0.0,
            kept => 1.0 / f64::from(kept),
        };
        let share = |&at: &usize| {
            let Contrast { first, second, .. } = self.contrasts[at];
            let (of_control, of_both) = match &self.means[at] {
                Means::Sides([a, b]) => {
                    let (one_a, one_b) = (1.0 / a.count() as f64, 1.0 / b.count() as f64);
                    (one_a, one_a + one_b)
                }
                Means::Least { fit, weights } => {
                    let others = self.family.iter().filter(|other| **other != at);
                    let shared: Vec<f64> = others
                        .map(|other| {
                            let second = self.contrasts[*other].second;
                            self.fits[*fit].shared(weights, first, second)
                        })
                        .filter(|shared| *shared > 0.0)
                        .collect();
                    // Fitted by itself, a contrast shares about half of its variance.
                    let half = weights.share / 2.0;
                    let mean = shared.iter().sum::<f64>() / shared.len() as f64;
                    (if shared.is_empty() { half } else { mean }, weights.share)
                }
                Means::Never => (0.0, 1.0),
            };
            (of_control + keeper(first)) / (of_both + keeper(first) + keeper(second))
        };
        self.family.iter().map(share).collect()
    }
}

fn count(layout: &Layout, arm: usize) -> usize {
    layout
        .pieces
        .iter()
        .filter(|piece| piece.arm == arm)
        .count()
}

fn kinds_with(sharing: &[Sharing], wanted: Sharing) -> Vec<usize> {
    (0..sharing.len())
        .filter(|kind| sharing[*kind] == wanted)
        .collect()
}

/// Kinds of which every piece's load is noted, and which have several loads.
fn several(layout: &Layout, arms: &[usize]) -> Vec<usize> {
    let count = |kind: &usize| {
        let all: Option<BTreeSet<usize>> = arms
            .iter()
            .map(|arm| loads(layout, *arm, *kind))
            .try_fold(BTreeSet::new(), |sum, own| Some(&sum | &own?));
        all.map_or(0, |loads| loads.len())
    };
    (0..layout.kinds).filter(|kind| count(kind) > 1).collect()
}

/// The loads of an arm; none unless every piece has one noted.
fn loads(layout: &Layout, arm: usize, kind: usize) -> Option<BTreeSet<usize>> {
    let own = layout.pieces.iter().filter(|piece| piece.arm == arm);
    own.map(|piece| piece.loads[kind]).collect()
}

fn sharing(layout: &Layout, [first, second]: [usize; 2], kind: usize) -> Sharing {
    // Where the scatter of all arms is used, what isn't noted of one isn't used of any.
    let noted = layout.scatter == ScatterOf::EachPair
        || layout
            .pieces
            .iter()
            .all(|piece| piece.loads[kind].is_some());
    let (Some(a), Some(b), true) = (
        loads(layout, first, kind),
        loads(layout, second, kind),
        noted,
    ) else {
        return Sharing::Alike;
    };
    match (a.is_disjoint(&b), a.len() + b.len() > 2) {
        (false, false) => Sharing::Alike,
        (false, true) => Sharing::Shared,
        (true, true) => Sharing::Apart,
        (true, false) => Sharing::Own,
    }
}
