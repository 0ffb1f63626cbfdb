//! An area cut into cells a little larger than a yarn.

use std::collections::BTreeMap;

/// A small square of an area.
#[derive(Debug, Clone)]
pub(crate) struct Cell {
    /// Its place in the grid, from the left.
    pub column: usize,
    /// Its place in the grid, from the top.
    pub row: usize,
    /// Its mean light as CIELAB.
    pub lab: [f64; 3],
    /// Logarithms of its mean light by channel.
    pub ln: [f64; 3],
}

/// An area's cells, each once.
#[derive(Debug, Clone)]
pub(crate) struct Cells {
    /// Side of a cell, pixels.
    pub size: usize,
    /// The cells.
    pub all: Vec<Cell>,
}

/// How far the rim of an area reaches, cells: an eighth of its longer side.
const RIM: usize = 3;

/// The nearest neighbours and the diagonal ones.
const AROUND: [(isize, isize); 8] = [
    (1, 0),
    (0, 1),
    (-1, 0),
    (0, -1),
    (1, 1),
    (-1, 1),
    (1, -1),
    (-1, -1),
];

impl Cells {
    /// Cells by place.
    fn index(&self) -> BTreeMap<(usize, usize), usize> {
        let place = |(i, cell): (usize, &Cell)| ((cell.column, cell.row), i);
        self.all.iter().enumerate().map(place).collect()
    }

    fn neighbours<'a>(
        &self,
        index: &'a BTreeMap<(usize, usize), usize>,
        i: usize,
        among: &'static [(isize, isize)],
    ) -> impl Iterator<Item = usize> + use<'a> {
        let (column, row) = (self.all[i].column, self.all[i].row);
        among.iter().filter_map(move |(dx, dy)| {
            let place = (
                column.checked_add_signed(*dx)?,
                row.checked_add_signed(*dy)?,
            );
            index.get(&place).copied()
        })
    }

    /// Share of neighbouring pairs that lie on one side, beyond what chance
    /// would give them: 1 for two whole areas, 0 for speckles.
    pub fn coherence(&self, is_first: &[bool]) -> f64 {
        let index = self.index();
        let (mut pairs, mut alike) = (0.0, 0.0);
        for i in 0..self.all.len() {
            for j in self.neighbours(&index, i, &AROUND[..2]) {
                pairs += 1.0;
                alike += f64::from(u8::from(is_first[i] == is_first[j]));
            }
        }
        let first = is_first.iter().filter(|&&f| f).count() as f64 / is_first.len().max(1) as f64;
        let by_chance = first * first + (1.0 - first) * (1.0 - first);
        if pairs == 0.0 || by_chance >= 1.0 {
            return 0.0;
        }
        (alike / pairs - by_chance) / (1.0 - by_chance)
    }

    /// Whether each cell lies well away from the area's rim.
    pub fn away_from_the_rim(&self) -> Vec<bool> {
        let index = self.index();
        let is_inside = |(column, row): (Option<usize>, Option<usize>)| {
            column
                .zip(row)
                .is_some_and(|place| index.contains_key(&place))
        };
        let all = self.all.iter();
        all.map(|cell| {
            let (column, row) = (cell.column, cell.row);
            [
                (column.checked_sub(RIM), Some(row)),
                (Some(column + RIM), Some(row)),
                (Some(column), row.checked_sub(RIM)),
                (Some(column), Some(row + RIM)),
            ]
            .into_iter()
            .all(is_inside)
        })
        .collect()
    }

    /// Whether all neighbours of each cell lie on its side too.
    pub fn inside(&self, is_first: &[bool]) -> Vec<bool> {
        let index = self.index();
        (0..self.all.len())
            .map(|i| {
                self.neighbours(&index, i, &AROUND)
                    .all(|j| is_first[j] == is_first[i])
            })
            .collect()
    }
}
