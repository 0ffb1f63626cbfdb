//! The light field by the ground that chart and pieces lie on.

use std::collections::BTreeMap;

use super::{
    Light, Source,
    blocks::{Block, blocks},
    local_tone,
    surface::{Column, Frame, SLOPES, Square, usual_tint},
};
use crate::{Point, chart::homography::distance, decode::Upright, median::median};

/// How far a block's colour may lie from the ground's, as logarithms of ratios:
/// to begin with, and once the tint of the light is taken off.
const SAME_COLOUR: f32 = 0.09;
const NEAR_COLOUR: f64 = 0.2;
/// A block whose colour lies this many times farther off than the ground's usually
/// does is something else: a hand on brown wood.
const OTHER_COLOUR: f64 = 4.0;
/// A ground's colours that lie within this of each other are one.
const ONE_COLOUR: f64 = 0.01;
/// How far its lightness may, beyond the light already known, to begin with.
const NEAR_LIGHT: f32 = 0.16;
/// How many times more widely the light's slope may differ from the chart's own than
/// the chart says, as variances: its patches are missed by the camera's colours, too,
/// and not by chance alone. By rendered photos; from 9 on, the figure hardly matters.
const SLOPE_DOUBT: f64 = 9.0;
/// How far a block may lie from the surface in each round, as a logarithm: wide
/// at first, so that steep light is followed; then often enough that the ground
/// grows to where the light has another tint.
const WINDOWS: [f64; 9] = [0.3, 0.25, 0.2, 0.2, 0.2, 0.2, 0.2, 0.2, 0.2];
/// A block this many times the scatter away is something else.
const OUTLIER: f64 = 3.0;
/// Fewest blocks that make a ground.
const FEWEST: usize = 60;
/// Neighbouring blocks share their grain: as if there were so many times fewer.
pub(super) const ALIKE: f64 = 10.0;
/// Scatter that no ground gets below, as a logarithm.
const SMOOTHEST: f64 = 0.006;
/// Neighbourhoods along the longer side whose means tell shadows from grain.
const NEIGHBOURHOODS: f64 = 8.0;
/// Inside a neighbourhood of the ground, how many blocks share their grain.
const SHARED: f64 = 3.0;

/// Where to look for the ground.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Whereabouts<'a> {
    /// Outlines of what lies on the ground: chart and pieces.
    pub hidden: &'a [Vec<Point>],
    /// Outlines that surely show bare ground of one colour; empty where the
    /// ground has to be found.
    pub bare: &'a [Vec<Point>],
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
) -> Option<Light> {
    let blocks = blocks(photo, linear, known, whereabouts);
    let mut members: Vec<usize> = if whereabouts.bare.is_empty() {
        most_common(&blocks)?
    } else {
        (0..blocks.len()).collect()
    };
    let prior = doubted(&known.covariance);
    let mut surface = None;
    let narrowest = WINDOWS[WINDOWS.len() - 1];
    for window in WINDOWS {
        let fit = Surface::fit(&blocks, &members, &known.frame, &prior)?;
        let near = (OUTLIER * fit.scatter.max(SMOOTHEST)).min(window);
        let colours: Vec<[f64; 2]> = blocks
            .iter()
            .map(|b| fit.untinted(&known.frame, b))
            .collect();
        let colour = [0, 1].map(|k| median(members.iter().map(|&i| colours[i][k])));
        let usual = median(members.iter().map(|&i| distance(colours[i], colour)));
        let near_colour = (OTHER_COLOUR * usual.max(ONE_COLOUR)).min(NEAR_COLOUR);
        let found: Vec<usize> = (0..blocks.len())
            .filter(|&i| {
                let block = &blocks[i];
                distance(colours[i], colour) < near_colour
                    && (block.light() - fit.light_at(&known.frame, block.middle)).abs() < near
            })
            .collect();
        if found.len() < FEWEST {
            return None;
        }
        surface = Some(fit);
        // From here on every round would find the same.
        let is_settled = near <= narrowest && found == members;
        members = found;
        if is_settled {
            break;
        }
    }
    if members.len() * 8 < blocks.len() {
        return None;
    }
    let surface = surface?;
    let ground: Vec<(Point, f64)> = members
        .iter()
        .map(|&i| {
            let place = blocks[i].middle;
            (
                place,
                blocks[i].light() - surface.light_at(&known.frame, place),
            )
        })
        .collect();
    let scatter = surface.scatter;
    let mut light = surface.added_to(known);
    light.misfit = misfit(&ground, light.frame.unit_px, scatter);
    light.is_mapped = local_tone::is_mapped(photo, linear, &light.frame, &ground);
    Some(light)
}

/// What is known of the light before the ground is looked at, its slope in doubt.
fn doubted(known: &Square) -> Square {
    let mut prior = *known;
    let mut slopes = prior.fixed_view_mut::<SLOPES, SLOPES>(0, 0);
    slopes *= SLOPE_DOUBT;
    prior
}

/// Variance of the logarithm, beyond grain, by which the ground of whole
/// neighbourhoods lies off the surface: shadows that no smooth surface follows.
fn misfit(ground: &[(Point, f64)], unit_px: f64, scatter: f64) -> f64 {
    let mut tiles: BTreeMap<[usize; 2], (f64, f64)> = BTreeMap::new();
    for (place, beyond) in ground {
        let tile = place.map(|v| (v / unit_px * NEIGHBOURHOODS) as usize);
        let (sum, n) = tiles.entry(tile).or_insert((0.0, 0.0));
        *sum += beyond;
        *n += 1.0;
    }
    // A mean of n blocks that share no more than grain has the variance of that
    // of n / SHARED of them alone.
    let (mut squares, mut all) = (0.0, 0.0);
    for (sum, n) in tiles.into_values() {
        squares += sum * sum / n - SHARED * scatter * scatter;
        all += n;
    }
    (squares / f64::max(all, 1.0)).max(0.0)
}

/// The blocks around the colour that most blocks share.
fn most_common(blocks: &[Block]) -> Option<Vec<usize>> {
    let looks: Vec<[f32; 3]> = blocks
        .iter()
        .map(|b| [b.colour()[0], b.colour()[1], b.light()].map(|v| v as f32))
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
        .step_by((looks.len() / 400).max(1))
        .max_by_key(|seed| alike(seed))?;
    let members: Vec<usize> = (0..looks.len())
        .filter(|&i| near([0, 1, 2].map(|k| looks[i][k] - best[k])))
        .collect();
    (members.len() >= FEWEST).then_some(members)
}

/// A surface of the second degree through the members' light, held by what is
/// known of it already.
struct Surface {
    /// The ground's own lightness, as a logarithm.
    level: f64,
    /// What the surface adds to the known light, all channels together.
    common: Column,
    /// The same by channel.
    channels: [Column; 3],
    covariance: Square,
    scatter: f64,
}

impl Surface {
    fn fit(blocks: &[Block], members: &[usize], frame: &Frame, prior: &Square) -> Option<Self> {
        let points = Points::new(blocks, members, frame)?;
        // The grain is not known beforehand: begin with a coarse one.
        let (mut scatter, mut fitted) = (0.1, None);
        for _ in 0..2 {
            let fit = points.common(scatter, prior)?;
            scatter = points.scatter(&fit.0).max(SMOOTHEST);
            fitted = Some(fit);
        }
        let (common, covariance) = fitted?;
        // What a channel has beyond that tells the tint of light from light; it
        // bends little.
        let tint = usual_tint();
        let mut channels = [common; 3];
        for (k, channel) in channels.iter_mut().enumerate() {
            let own = |block: &Block| block.ln[k] - block.light();
            *channel += points.beyond(blocks, members, own, scatter, &tint)?;
        }
        Some(Self {
            level: points.mean_light - (points.mean_terms.transpose() * common)[0],
            common,
            channels,
            covariance,
            scatter,
        })
    }

    fn light_at(&self, frame: &Frame, place: Point) -> f64 {
        self.level + frame.terms(place).dot(&self.common)
    }

    /// A block's colour had the light everywhere the tint that it has in the
    /// chart's middle: under a window and a lamp, one ground has many colours.
    fn untinted(&self, frame: &Frame, block: &Block) -> [f64; 2] {
        let terms = frame.terms(block.middle);
        let [r, g, b] = [0, 1, 2].map(|k| block.ln[k] - terms.dot(&self.channels[k]));
        [r - g, b - g]
    }

    /// The light already known with what this surface found beyond it.
    fn added_to(self, known: &Light) -> Light {
        let mut light = known.clone();
        for (channel, more) in light.coefficients.iter_mut().zip(&self.channels) {
            *channel += more;
        }
        light.covariance = self.covariance;
        light.source = Source::Ground;
        light
    }
}

/// The members about their mean, so that the ground's own lightness drops out.
struct Points {
    terms: Vec<Column>,
    light: Vec<f64>,
    mean_terms: Column,
    mean_light: f64,
    normal: Square,
}

impl Points {
    fn new(blocks: &[Block], members: &[usize], frame: &Frame) -> Option<Self> {
        let n = members.len() as f64;
        if members.is_empty() {
            return None;
        }
        let mut terms: Vec<Column> = members
            .iter()
            .map(|&i| frame.terms(blocks[i].middle))
            .collect();
        let mean_terms = terms.iter().sum::<Column>() / n;
        let mean_light = members.iter().map(|&i| blocks[i].light()).sum::<f64>() / n;
        let mut normal = Square::zeros();
        for t in &mut terms {
            *t -= mean_terms;
            normal += *t * t.transpose();
        }
        let light = members
            .iter()
            .map(|&i| blocks[i].light() - mean_light)
            .collect();
        Some(Self {
            terms,
            light,
            mean_terms,
            mean_light,
            normal,
        })
    }

    /// The most likely surface given the prior's covariance about 0, with its own.
    fn common(&self, scatter: f64, prior: &Square) -> Option<(Column, Square)> {
        self.solve(&self.light, scatter, prior)
    }

    fn solve(&self, values: &[f64], scatter: f64, prior: &Square) -> Option<(Column, Square)> {
        let weight = 1.0 / (ALIKE * scatter * scatter);
        let hold: Square = (prior + Square::identity() * 1e-9).try_inverse()?;
        let covariance = (self.normal * weight + hold).try_inverse()?;
        let mut pull = Column::zeros();
        for (t, value) in self.terms.iter().zip(values) {
            pull += t * (weight * value);
        }
        Some((covariance * pull, covariance))
    }

    /// The surface of another value of the blocks.
    fn beyond(
        &self,
        blocks: &[Block],
        members: &[usize],
        value: impl Fn(&Block) -> f64,
        scatter: f64,
        prior: &Square,
    ) -> Option<Column> {
        let all: Vec<f64> = members.iter().map(|&i| value(&blocks[i])).collect();
        let mean = all.iter().sum::<f64>() / all.len() as f64;
        let values: Vec<f64> = all.iter().map(|v| v - mean).collect();
        Some(self.solve(&values, scatter, prior)?.0)
    }

    /// How far the blocks lie about a surface: a robust standard deviation.
    fn scatter(&self, surface: &Column) -> f64 {
        let residual = |(t, light): (&Column, &f64)| (light - t.dot(surface)).abs();
        1.4826 * median(self.terms.iter().zip(&self.light).map(residual))
    }
}
