//! The light field by the ground that chart and pieces lie on.

use super::{
    Light,
    blocks::{Block, Blocks, blocks},
    find_edge::{LEAST_BEYOND, find_edge},
    grown::grown,
    local_tone,
    rounds::{Ground, Rounds},
    surface::{Frame, SLOPES, Square, with_step},
};
use crate::{Point, decode::Upright};

/// How far a block's colour may lie from the ground's to begin with, as logarithms of
/// ratios.
const SAME_COLOUR: f32 = 0.09;
/// How far its lightness may, beyond the light already known, to begin with.
const NEAR_LIGHT: f32 = 0.16;
/// How many times more widely the light's slope may differ from the chart's own than
/// the chart says, as variances: its patches are missed by the camera's colours, too,
/// and not by chance alone. By rendered photos; from 9 on, the figure hardly matters.
const SLOPE_DOUBT: f64 = 9.0;
/// Blocks that are asked how common their colour is: a ground has a fair share of them.
const SEEDS: usize = 150;
/// Fewest blocks that make a ground.
pub(super) const FEWEST: usize = 60;
/// Share of the blocks in the open below which what is left is no ground: of striped
/// cloth half in shadow a tenth is.
const LEAST_SHARE: f64 = 0.08;
/// Share of the blocks in the open that are ground, and of the neighbourhoods that show
/// some, from which on what varies from place to place is light. Where less is ground,
/// other things of its colour lie among it; by rendered and by real photos.
const MOSTLY: f64 = 0.6;
const SHOWS: f64 = 0.5;

/// Where to look for the ground.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Whereabouts<'a> {
    /// Outlines of what lies on the ground: chart and pieces.
    pub hidden: &'a [Vec<Point>],
    /// Outlines that surely show bare ground of one colour; empty where the
    /// ground has to be found.
    pub bare: &'a [Vec<Point>],
}

/// The light by the ground.
pub(crate) struct GroundLight {
    /// The light as a smooth surface with what varies about it.
    pub smooth: Light,
    /// The same with the edge of a shadow, where one is likely.
    pub with_edge: Option<Light>,
}

/// The light field from the ground around chart and pieces: what is said to be
/// bare ground, or else the most common colour. None where no ground shows.
///
/// `known` is the light as far as the chart tells it; the ground adds to it as
/// much as its grain allows. `linear` is the scene light of each code value.
pub(crate) fn from_ground(
    photo: &Upright,
    linear: &[[f64; 256]; 3],
    known: &Light,
    whereabouts: Whereabouts<'_>,
) -> Option<GroundLight> {
    let mut blocks = blocks(photo, linear, known, whereabouts);
    let is_bare = !whereabouts.bare.is_empty();
    let first: Vec<usize> = if is_bare {
        (0..blocks.all.len()).collect()
    } else {
        grown(&blocks, &most_common(&blocks.all)?)
    };
    let size_px = [photo.width, photo.height];
    let prior = doubted(&known.covariance);
    let all = blocks.all.len() as f64;
    let light = |blocks: &Blocks, ground: Ground, frame: Frame| {
        let members = ground.members.iter().map(|&i| &blocks.all[i]);
        let about: Vec<(Point, f64)> = members
            .map(|block| (block.middle, block.light - ground.surface.at(block)))
            .collect();
        let mut light = ground.surface.shaded(known, frame, ground.shade);
        light.is_mapped = local_tone::is_mapped(photo, linear, &light.frame, &about);
        light
    };
    let rounds = Rounds {
        blocks: &blocks,
        frame: &known.frame,
        prior,
        size_px,
    };
    let ground = told(&rounds, first, is_bare)?;
    if (ground.members.len() as f64) < LEAST_SHARE * all {
        return None;
    }
    let with_edge = find_edge(&rounds, &ground).and_then(|(edge, both)| {
        let frame = known.frame.with_edge(edge);
        blocks.seen_from(&frame);
        let rounds = Rounds {
            blocks: &blocks,
            frame: &frame,
            prior: with_step(prior),
            size_px,
        };
        let found = told(&rounds, both, is_bare)?;
        let more = found.members.len().saturating_sub(ground.members.len()) as f64;
        let is_likely =
            more >= LEAST_BEYOND * all || found.shade.is_explained_beside(&ground.shade);
        is_likely.then(|| light(&blocks, found, frame))
    });
    blocks.seen_from(&known.frame);
    Some(GroundLight {
        smooth: light(&blocks, ground, known.frame),
        with_edge,
    })
}

/// The ground with the light by it, beginning with `first`.
fn told(rounds: &Rounds<'_>, first: Vec<usize>, is_bare: bool) -> Option<Ground> {
    let ground = rounds.followed(first.clone())?;
    let share = ground.members.len() as f64 / rounds.blocks.all.len() as f64;
    if !is_bare && (share < MOSTLY || ground.shade.shows() < SHOWS) {
        return rounds.smooth(first);
    }
    Some(ground)
}

/// What is known of the light before the ground is looked at, its slope in doubt.
fn doubted(known: &Square) -> Square {
    let mut prior = *known;
    let mut slopes = prior.fixed_view_mut::<SLOPES, SLOPES>(0, 0);
    slopes *= SLOPE_DOUBT;
    prior
}

/// The blocks around the colour that most blocks share.
fn most_common(blocks: &[Block]) -> Option<Vec<usize>> {
    let looks: Vec<[f32; 3]> = blocks
        .iter()
        .map(|b| [b.colour()[0], b.colour()[1], b.light].map(|v| v as f32))
        .collect();
    let near = |[red, blue, light]: [f32; 3]| {
        // Both are always asked: so many blocks are looked at in one step.
        (light.abs() < NEAR_LIGHT) & (red * red + blue * blue < SAME_COLOUR * SAME_COLOUR)
    };
    let [reds, blues, lights] = [0, 1, 2].map(|k| looks.iter().map(|l| l[k]).collect());
    let (reds, blues, lights): (Vec<f32>, Vec<f32>, Vec<f32>) = (reds, blues, lights);
    let alike = |seed: &[f32; 3]| -> u32 {
        let all = reds.iter().zip(&blues).zip(&lights);
        all.map(|((r, b), l)| u32::from(near([r - seed[0], b - seed[1], l - seed[2]])))
            .sum()
    };
    let best = looks
        .iter()
        .step_by((looks.len() / SEEDS).max(1))
        .max_by_key(|seed| alike(seed))?;
    let members: Vec<usize> = (0..looks.len())
        .filter(|&i| near([0, 1, 2].map(|k| looks[i][k] - best[k])))
        .collect();
    (members.len() >= FEWEST).then_some(members)
}
