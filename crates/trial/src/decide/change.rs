//! How far the pieces of an arm have changed at a stage.

use super::table::{Arm, Piece};
use inference::scatter::{Scatter, mean};
use nalgebra::Vector3;
use std::collections::BTreeMap;

/// The changes of an arm's test pieces at one stage, in CIELAB.
pub(super) struct Change<'a> {
    pub arm: &'a str,
    /// Each test piece's change with the load it was in.
    pub pieces: Vec<(Option<&'a str>, Vector3<f64>)>,
    /// Mean of them.
    pub mean: Vector3<f64>,
    /// Keepers they are against; 0 if each is against its own start.
    pub keepers: usize,
    /// Colours of the pieces at the start.
    pub starts: Vec<Vector3<f64>>,
    /// Scatter of like pieces before anything was done to them.
    pub start_scatter: Scatter,
    /// Test pieces read at this stage with nothing to compare them with.
    pub left_out: usize,
}

impl<'a> Change<'a> {
    /// None if no test piece of the arm can be compared at that stage.
    pub fn of(arm: &'a Arm<'a>, stage: u32) -> Option<Self> {
        let kept = at(&arm.keepers, stage);
        let keeper = mean(&kept);
        let read = || {
            arm.tests
                .iter()
                .filter_map(|piece| Some((piece, piece.at(stage)?)))
        };
        let pieces: Vec<_> = read()
            .filter_map(|(piece, now)| {
                let before = keeper.or_else(|| piece.at(0))?;
                Some((piece.load(stage), now - before))
            })
            .collect();
        let changes: Vec<_> = pieces.iter().map(|(_, change)| *change).collect();
        let mean = mean(&changes)?;

        let tests_at_start = at(&arm.tests, 0);
        let kept_at_start = at(&arm.keepers, 0);
        let alike: Vec<_> = tests_at_start
            .iter()
            .chain(&kept_at_start)
            .copied()
            .collect();
        let start_scatter = Scatter::of(&alike);
        let starts = [tests_at_start, kept_at_start, kept.clone()]
            .into_iter()
            .find(|starts| !starts.is_empty())?;
        Some(Self {
            arm: arm.name,
            left_out: read().count() - pieces.len(),
            mean,
            keepers: kept.len(),
            starts,
            start_scatter,
            pieces,
        })
    }

    /// Scatter of the pieces about the arm's mean.
    pub fn piece_scatter(&self) -> Scatter {
        let changes: Vec<_> = self.pieces.iter().map(|(_, change)| *change).collect();
        Scatter::of(&changes)
    }

    /// The loads the pieces were in with the pieces of each; none unless every
    /// piece has one noted.
    pub fn loads(&self) -> Option<BTreeMap<&'a str, Vec<Vector3<f64>>>> {
        let mut loads: BTreeMap<&str, Vec<_>> = BTreeMap::new();
        for (load, change) in &self.pieces {
            loads.entry((*load)?).or_default().push(*change);
        }
        Some(loads)
    }

    /// Scatter of whole loads about the arm's mean, each by its share of the pieces.
    pub fn load_scatter(&self, loads: &BTreeMap<&str, Vec<Vector3<f64>>>) -> Scatter {
        let count = loads.len() as f64;
        let squares = loads
            .values()
            .filter_map(|pieces| {
                let share = pieces.len() as f64 / self.pieces.len() as f64;
                let off = (mean(pieces)? - self.mean) * (share * count);
                Some(off * off.transpose())
            })
            .sum();
        Scatter::from_squares(squares, loads.len() - 1)
    }
}

fn at(pieces: &[Piece], stage: u32) -> Vec<Vector3<f64>> {
    pieces.iter().filter_map(|piece| piece.at(stage)).collect()
}
