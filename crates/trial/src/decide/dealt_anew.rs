//! A check that takes nothing for granted of how chance scatters: the pieces are
//! dealt out to the two arms in all ways there are.

use super::{
    change::{Against, Change},
    design::{Contrast, Design},
    ruler::Ruler,
};
use crate::text;
use inference::permutation::{Measure, vectors};
use nalgebra::Vector3;
use serde::{Deserialize, Serialize};

/// Pieces of both arms above which it is left out: 2 times 8 can be dealt in 12,870 ways.
const MOST_PIECES: usize = 16;

/// How many ways of dealing the pieces out give as great a difference.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct DealtAnew {
    /// Ways in which the arms differ at least as much, the real one among them.
    pub as_great: u64,
    /// All ways.
    pub ways: u64,
}

impl DealtAnew {
    /// None where pieces aren't the units or have errors in common, which dealing out
    /// does not undo, where an arm has one piece, or where there are too many.
    pub(super) fn of(ruler: &Ruler, contrast: &Contrast, arms: [&Change; 2]) -> Option<Self> {
        let free = |arm: &Change| {
            contrast.in_one_photo || matches!(arm.against, Against::Start) && arm.stated.is_none()
        };
        let count: usize = arms.iter().map(|arm| arm.pieces.len()).sum();
        let fit = contrast.design == Design::Pieces && arms.iter().all(|arm| free(arm));
        if !fit || count > MOST_PIECES || arms.iter().any(|arm| arm.pieces.len() < 2) {
            return None;
        }
        let [a, b] = arms.map(|arm| -> Vec<Vector3<f64>> {
            let changes = arm.pieces.iter();
            changes.map(|(_, change)| ruler.in_de00(*change)).collect()
        });
        let found = vectors(&a, &b, Measure::Length).ok()?;
        Some(Self {
            as_great: found.as_extreme,
            ways: found.splits,
        })
    }

    /// As a sentence of a reason.
    pub(crate) fn in_words(self) -> String {
        text::decide::of_all_ways_of_dealing_the_pieces(
            self.ways,
            match self.as_great {
                1 => text::decide::this_one_alone_gives().to_owned(),
                count => text::decide::give(count),
            },
        )
    }
}
