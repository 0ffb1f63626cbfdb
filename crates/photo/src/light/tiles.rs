//! The ground by neighbourhoods, each of which tells one figure of the light.

use nalgebra::{DMatrix, DVector};

use super::{
    blocks::Block,
    surface::{Column, Square},
};
use crate::{Point, bell::bell, chart::homography::distance, median::median};

/// Neighbouring blocks share their grain: as if there were so many times fewer.
pub(super) const ALIKE: f64 = 10.0;
/// Grain that no ground gets below, standard deviation of a block's logarithm.
pub(super) const SMOOTHEST: f64 = 0.006;
/// Variance of the ground's own lightness, as a logarithm: nothing is known of it.
pub(super) const ANY_LIGHTNESS: f64 = 1.0;

/// The neighbourhoods of the ground.
#[derive(Debug)]
pub(super) struct Tiles {
    pub all: Vec<Tile>,
    /// Grain of a block inside them, standard deviation of a logarithm.
    pub grain: f64,
}

/// A neighbourhood of the ground.
#[derive(Debug)]
pub(super) struct Tile {
    pub middle: Point,
    pub terms: Column,
    /// The prior's covariance times the terms.
    pub spread: Column,
    /// The median of its blocks' lights.
    pub light: f64,
    pub blocks: f64,
}

impl Tiles {
    /// The neighbourhoods of so many pixels a side, the surface's covariance being
    /// `prior` before they are looked at.
    pub fn new(ground: &[&Block], side_px: f64, prior: &Square) -> Self {
        let place = |block: &Block| block.middle.map(|v| (v / side_px) as usize);
        let columns = 1 + ground.iter().map(|b| place(b)[0]).max().unwrap_or(0);
        let rows = 1 + ground.iter().map(|b| place(b)[1]).max().unwrap_or(0);
        let mut found: Vec<Vec<&Block>> = vec![Vec::new(); columns * rows];
        for block in ground {
            let [column, row] = place(block);
            found[row * columns + column].push(block);
        }
        let mut beyond = Vec::with_capacity(ground.len());
        let tile = |own: Vec<&Block>| {
            let blocks = own.len() as f64;
            // A thing's shadow at its rim darkens few of the blocks.
            let light = median(own.iter().map(|block| block.light));
            beyond.extend(own.iter().map(|block| (block.light - light).abs()));
            let terms = own.iter().map(|block| block.terms).sum::<Column>() / blocks;
            Tile {
                middle: [0, 1]
                    .map(|k| own.iter().map(|block| block.middle[k]).sum::<f64>() / blocks),
                spread: prior * terms,
                terms,
                light,
                blocks,
            }
        };
        let found = found.into_iter().filter(|own| !own.is_empty());
        let all = found.map(tile).collect();
        Self {
            all,
            grain: (1.4826 * median(beyond)).max(SMOOTHEST),
        }
    }

    /// Covariance of their figures under a smooth surface on ground of any lightness;
    /// the lower half, which is enough.
    pub fn smooth(&self) -> DMatrix<f64> {
        self.half(|r, c| {
            let [row, column] = [r, c].map(|i| &self.all[i]);
            let alone = if r == c {
                ALIKE * self.grain * self.grain / row.blocks
            } else {
                0.0
            };
            row.terms.dot(&column.spread) + ANY_LIGHTNESS + alone
        })
    }

    /// How alike a field is at each two of them; the lower half.
    pub fn alike(&self, reach_px: f64) -> DMatrix<f64> {
        self.half(|r, c| {
            let [row, column] = [r, c].map(|i| self.all[i].middle);
            bell(distance(row, column) / reach_px)
        })
    }

    fn half(&self, value: impl Fn(usize, usize) -> f64) -> DMatrix<f64> {
        let n = self.all.len();
        DMatrix::from_fn(n, n, |r, c| if r < c { 0.0 } else { value(r, c) })
    }

    pub fn light(&self) -> DVector<f64> {
        DVector::from_iterator(self.all.len(), self.all.iter().map(|tile| tile.light))
    }
}
