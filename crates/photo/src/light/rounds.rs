//! The ground told from what else lies in a photo, round by round: light by the ground,
//! ground by the light.

use std::ops::RangeInclusive;

use super::{
    blocks::{Block, Blocks},
    ground::FEWEST,
    shade::{FEW, MANY, Shade},
    smooth::Surface,
    surface::{Frame, Square},
    tiles::SMOOTHEST,
};
use crate::{chart::homography::distance, median::median};

/// How far a block's colour may lie from the ground's once the tint of the light is
/// taken off, as logarithms of ratios.
const NEAR_COLOUR: f64 = 0.2;
/// A block whose colour lies this many times farther off than the ground's usually
/// does is something else: a hand on brown wood.
const OTHER_COLOUR: f64 = 4.0;
/// A ground's colours that lie within this of each other are one.
const ONE_COLOUR: f64 = 0.01;
/// How far a block may lie from the light found in each round, as a logarithm: within
/// so much whatever the scatter, where light is followed, and never farther than so much.
/// All that may be ground in a shadow is let in before it is followed; then often enough
/// that the ground grows to where the light has another tint.
const WINDOWS: [[f64; 2]; 6] = [
    [0.0, 0.3],
    [0.2, 0.2],
    [0.05, 0.2],
    [0.0, 0.2],
    [0.0, 0.2],
    [0.0, 0.2],
];
/// The round from which on light is followed that no smooth surface follows.
const FIRST_SHADED: usize = 1;
/// A block this many times the scatter away is something else.
const OUTLIER: f64 = 3.0;

/// What the rounds go over.
pub(super) struct Rounds<'a> {
    pub blocks: &'a Blocks,
    pub frame: &'a Frame,
    /// Covariance of the surface's terms before the ground is looked at.
    pub prior: Square,
    pub size_px: [usize; 2],
}

/// The ground with the light by it.
pub(super) struct Ground {
    /// The blocks that are ground, by number.
    pub members: Vec<usize>,
    pub surface: Surface,
    pub shade: Shade,
}

impl Rounds<'_> {
    /// The ground where light is followed from neighbourhood to neighbourhood, beginning
    /// with `members`.
    pub fn followed(&self, mut members: Vec<usize>) -> Option<Ground> {
        let mut told: Option<(Surface, Shade)> = None;
        for (round, window) in WINDOWS.into_iter().enumerate() {
            let ground = self.ground(&members);
            let surface = Surface::fit(&ground, &self.blocks.trust, &self.prior)?;
            let is_open = window[0] > 0.0;
            let found = if round < FIRST_SHADED {
                self.near(&members, &surface, |block| surface.at(block), window)
            } else {
                // How uneven the light is shows once the ground is told from the rest.
                let (beside, many) = if is_open { (0, FEW) } else { (1, MANY) };
                let before = told.as_ref().map(|(_, shade)| shade.around(beside));
                let shade = self.shade(&ground, before.unwrap_or(Shade::all()), many)?;
                let (surface, shade) = told.insert((surface, shade));
                self.near(&members, surface, |block| shade.at(block), window)
            }?;
            // From here on rounds would find the same, or nearly so.
            let is_settled = told.is_some() && !is_open && found == members;
            members = found;
            if is_settled {
                break;
            }
        }
        told.map(|(surface, shade)| Ground {
            members,
            surface,
            shade,
        })
    }

    /// The ground where light is a smooth surface, beginning with `members`: how it lies
    /// off that tells how much to doubt it.
    pub fn smooth(&self, mut members: Vec<usize>) -> Option<Ground> {
        let mut told = None;
        for (round, [_, most]) in WINDOWS.into_iter().enumerate() {
            let surface = Surface::fit(&self.ground(&members), &self.blocks.trust, &self.prior)?;
            let found = self.near(&members, &surface, |block| surface.at(block), [0.0, most])?;
            told = Some(surface);
            let is_settled = round > 0 && found == members;
            members = found;
            if is_settled {
                break;
            }
        }
        let shade = self.shade(&self.ground(&members), Shade::all(), MANY)?;
        told.map(|surface| Ground {
            members,
            surface,
            shade: shade.doubted(),
        })
    }

    fn ground(&self, members: &[usize]) -> Vec<&Block> {
        members.iter().map(|&i| &self.blocks.all[i]).collect()
    }

    fn shade(&self, ground: &[&Block], range: RangeInclusive<usize>, many: f64) -> Option<Shade> {
        Shade::fit(ground, self.frame, &self.prior, self.size_px, range, many)
    }

    /// The blocks near the light `there`, and near the colour of those taken for ground
    /// before; none where they are too few.
    fn near(
        &self,
        before: &[usize],
        surface: &Surface,
        there: impl Fn(&Block) -> f64,
        [least, most]: [f64; 2],
    ) -> Option<Vec<usize>> {
        let blocks = &self.blocks.all;
        let beyond = |block: &Block| (block.light - there(block)).abs();
        let beyond: Vec<f64> = blocks.iter().map(beyond).collect();
        let scatter = 1.4826 * median(before.iter().map(|&i| beyond[i]));
        let near = (OUTLIER * scatter.max(SMOOTHEST)).clamp(least, most);
        let mut found = self.of_like_colour(before, surface);
        found.retain(|&i| beyond[i] < near);
        (found.len() >= FEWEST).then_some(found)
    }

    /// The blocks near the colour of those taken for ground before, whatever their light.
    pub fn of_like_colour(&self, before: &[usize], surface: &Surface) -> Vec<usize> {
        let blocks = &self.blocks.all;
        let colours: Vec<[f64; 2]> = blocks.iter().map(|b| surface.untinted(b)).collect();
        let colour = [0, 1].map(|k| median(before.iter().map(|&i| colours[i][k])));
        let usual = median(before.iter().map(|&i| distance(colours[i], colour)));
        let near_colour = (OTHER_COLOUR * usual.max(ONE_COLOUR)).min(NEAR_COLOUR);
        (0..blocks.len())
            .filter(|&i| distance(colours[i], colour) < near_colour)
            .collect()
    }
}
