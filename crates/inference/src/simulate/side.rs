//! The mean of an arm by its units: pieces, or loads that hold no other arm.

use super::Layout;
use std::collections::BTreeMap;

/// One arm's units.
pub(super) struct Side {
    /// Pieces of each unit.
    units: Vec<Vec<usize>>,
    pieces: usize,
}

/// Mean of an arm with the scatter of its units.
pub(super) struct Found {
    pub mean: f64,
    /// Sum of squares of the units about it.
    pub squares: f64,
}

impl Side {
    /// Each piece of the arm by itself.
    pub(super) fn of_pieces(layout: &Layout, arm: usize) -> Self {
        let own = pieces_of(layout, arm);
        Self {
            pieces: own.len(),
            units: own.into_iter().map(|piece| vec![piece]).collect(),
        }
    }

    /// Pieces together that share a load of any of those kinds, straight or by way
    /// of other pieces.
    pub(super) fn of_loads(layout: &Layout, arm: usize, kinds: &[usize]) -> Self {
        let own = pieces_of(layout, arm);
        let mut group: BTreeMap<usize, usize> = own.iter().map(|piece| (*piece, *piece)).collect();
        for &kind in kinds {
            let mut first: BTreeMap<Option<usize>, usize> = BTreeMap::new();
            for &piece in &own {
                let with = *first
                    .entry(layout.pieces[piece].loads[kind])
                    .or_insert(piece);
                let (from, to) = (top(&group, piece), top(&group, with));
                group.insert(from.max(to), from.min(to));
            }
        }
        let mut units: BTreeMap<usize, Vec<usize>> = BTreeMap::new();
        for &piece in &own {
            units.entry(top(&group, piece)).or_default().push(piece);
        }
        Self {
            pieces: own.len(),
            units: units.into_values().collect(),
        }
    }

    pub(super) fn count(&self) -> usize {
        self.units.len()
    }

    pub(super) fn df(&self) -> usize {
        self.units.len() - 1
    }

    /// Each unit by its share of the pieces.
    pub(super) fn found(&self, values: &[f64]) -> Found {
        let sum_of = |unit: &Vec<usize>| unit.iter().map(|piece| values[*piece]).sum::<f64>();
        let mean = self.units.iter().map(sum_of).sum::<f64>() / self.pieces as f64;
        let scale = self.units.len() as f64 / self.pieces as f64;
        let squares = self.units.iter().map(|unit| {
            let off = (sum_of(unit) - mean * unit.len() as f64) * scale;
            off * off
        });
        Found {
            mean,
            squares: squares.sum(),
        }
    }
}

fn pieces_of(layout: &Layout, arm: usize) -> Vec<usize> {
    let all = layout.pieces.iter().enumerate();
    all.filter(|(_, piece)| piece.arm == arm)
        .map(|(at, _)| at)
        .collect()
}

/// The piece that stands for a piece's unit.
fn top(group: &BTreeMap<usize, usize>, mut piece: usize) -> usize {
    while group[&piece] != piece {
        piece = group[&piece];
    }
    piece
}
