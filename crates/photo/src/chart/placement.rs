//! Laying the chart's grid on a lattice so that the colours fit.

use super::colours::{PATCHES, explained, spread};
use super::homography::Homography;
use super::lattice::Lattice;
use super::search::Level;
use nalgebra::Matrix3;

/// The least share of explained colour for a chart.
const LEAST_EXPLAINED: f64 = 0.9;
/// The same where part of the grid lies outside the photo: fewer colours, less proof.
const LEAST_EXPLAINED_IN_PART: f64 = 0.95;
/// Patches of the grid that must have been seen as blobs.
const LEAST_BLOBS: usize = 6;
/// Patches in sight that tell a chart even where the rest is cut off.
const LEAST_IN_SIGHT: usize = 12;

/// A grid of 24 patches whose colours are those of the chart.
#[derive(Debug, Clone)]
pub(crate) struct Placement {
    /// From chart coordinates (column 0 to 5, row 0 to 3, at patch centres) to px.
    pub(crate) map: Homography,
    /// Share of the colours' variance that the chart explains, 0 to 1.
    pub(crate) explained: f64,
    /// How the grid lies.
    pub(crate) kind: Kind,
}

/// How a grid lies.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Kind {
    /// Whole and the right way round.
    Whole,
    /// Some patches lie beyond the photo's edge.
    CutOff,
    /// As in a mirror.
    Mirrored,
    /// The first and third row run from right to left, as on some makers' charts.
    RowsReversed,
}

/// A way to lay columns and rows on the lattice's two axes.
struct Turn {
    column: [i32; 2],
    row: [i32; 2],
}

const TURNS: [Turn; 8] = {
    const fn turn(column: [i32; 2], row: [i32; 2]) -> Turn {
        Turn { column, row }
    }
    [
        turn([1, 0], [0, 1]),
        turn([0, 1], [-1, 0]),
        turn([-1, 0], [0, -1]),
        turn([0, -1], [1, 0]),
        turn([-1, 0], [0, 1]),
        turn([0, -1], [-1, 0]),
        turn([1, 0], [0, -1]),
        turn([0, 1], [1, 0]),
    ]
};

impl Turn {
    fn node(&self, origin: [i32; 2], patch: usize) -> [i32; 2] {
        let (c, r) = ((patch % 6) as i32, (patch / 6) as i32);
        [0, 1].map(|d| origin[d] + c * self.column[d] + r * self.row[d])
    }

    fn is_mirrored(&self) -> bool {
        self.column[0] * self.row[1] - self.column[1] * self.row[0] < 0
    }

    fn map(&self, origin: [i32; 2], lattice: &Homography) -> Option<Homography> {
        let m = |v: i32| f64::from(v);
        let laid = Homography::new(Matrix3::new(
            m(self.column[0]),
            m(self.row[0]),
            m(origin[0]),
            m(self.column[1]),
            m(self.row[1]),
            m(origin[1]),
            0.0,
            0.0,
            1.0,
        ))?;
        Some(lattice.after(&laid))
    }
}

/// A node's colour.
#[derive(Clone, Copy)]
struct Sample {
    colour: [f32; 3],
    /// Variance within the patch on the scale of even steps.
    grain: f64,
}

/// A node's place in the picture.
#[derive(Clone, Copy, Default)]
struct Spot {
    is_blob: bool,
    /// Its colour once asked for; none outside the picture.
    sample: Option<Option<Sample>>,
}

/// Every node that a grid overlapping the lattice may touch.
struct Field<'a> {
    map: &'a Homography,
    low: [i32; 2],
    width: usize,
    spots: Vec<Spot>,
}

impl<'a> Field<'a> {
    fn new(lattice: &'a Lattice, low: [i32; 2], high: [i32; 2]) -> Self {
        const BEYOND: i32 = 6;
        let [width, height] = [0, 1].map(|d| (high[d] - low[d] + 1 + 2 * BEYOND) as usize);
        let mut field = Self {
            map: &lattice.map,
            low: low.map(|v| v - BEYOND),
            width,
            spots: vec![Spot::default(); width * height],
        };
        for node in &lattice.nodes {
            let at = field.index(*node);
            field.spots[at].is_blob = true;
        }
        field
    }

    fn index(&self, node: [i32; 2]) -> usize {
        let [x, y] = [0, 1].map(|d| (node[d] - self.low[d]) as usize);
        y * self.width + x
    }

    fn sample(&mut self, node: [i32; 2], level: &Level) -> Option<Sample> {
        let at = self.index(node);
        *self.spots[at]
            .sample
            .get_or_insert_with(|| sample(self.map, level, node))
    }
}

/// The placements on a lattice whose colours fit on a lattice.
pub(crate) fn placements(lattice: &Lattice, level: &Level) -> Vec<Placement> {
    let low = [0, 1].map(|d| lattice.nodes.iter().map(|n| n[d]).min().unwrap_or(0));
    let high = [0, 1].map(|d| lattice.nodes.iter().map(|n| n[d]).max().unwrap_or(0));
    let mut field = Field::new(lattice, low, high);
    let mut found: Vec<Placement> = Vec::new();
    for turn in &TURNS {
        let far = turn.node([0, 0], PATCHES - 1);
        // Every origin whose grid overlaps the lattice's nodes.
        let from = [0, 1].map(|d| low[d] - far[d].max(0));
        let to = [0, 1].map(|d| high[d] - far[d].min(0));
        for y in from[1]..=to[1] {
            for x in from[0]..=to[0] {
                let nodes: [[i32; 2]; PATCHES] = std::array::from_fn(|k| turn.node([x, y], k));
                let seen = nodes.map(|n| field.spots[field.index(n)].is_blob);
                if seen.iter().filter(|s| **s).count() < LEAST_BLOBS {
                    continue;
                }
                let patches = nodes.map(|n| field.sample(n, level));
                let Some((explained, kind)) = judge(&patches, &seen, turn.is_mirrored()) else {
                    continue;
                };
                let Some(map) = turn.map([x, y], &lattice.map) else {
                    continue;
                };
                let corners = [[-0.5, -0.5], [5.5, -0.5], [5.5, 3.5], [-0.5, 3.5]];
                if !map.faces(&corners) {
                    continue;
                }
                found.push(Placement {
                    map,
                    explained,
                    kind,
                });
            }
        }
    }
    found
}

/// Whether 24 samples are the chart, how well and in which way.
fn judge(
    patches: &[Option<Sample>; PATCHES],
    blobs: &[bool; PATCHES],
    mirrored: bool,
) -> Option<(f64, Kind)> {
    let in_sight = patches.iter().flatten().count();
    if in_sight < LEAST_IN_SIGHT {
        return None;
    }
    let colours = patches.map(|p| p.map(|p| p.colour));
    let spread = spread(&colours);
    if spread < 0.12 {
        return None;
    }
    // Patches are even: their grain is small beside their differences.
    let mut grains: Vec<f64> = patches.iter().flatten().map(|p| p.grain).collect();
    grains.sort_by(f64::total_cmp);
    let grain = grains[grains.len() * 3 / 4].sqrt();
    let mean = {
        let all: Vec<f32> = colours.iter().flatten().flatten().copied().collect();
        all.iter().map(|v| f64::from(v.sqrt())).sum::<f64>() / all.len() as f64
    };
    if grain > 0.5 * spread * mean {
        return None;
    }
    let whole = in_sight == PATCHES;
    if whole && !covers(blobs) {
        return None;
    }
    let usual = explained(&colours, |k| k)?;
    if whole && usual >= LEAST_EXPLAINED {
        let kind = if mirrored {
            Kind::Mirrored
        } else {
            Kind::Whole
        };
        return Some((usual, kind));
    }
    if !whole && !mirrored && usual >= LEAST_EXPLAINED_IN_PART {
        return Some((usual, Kind::CutOff));
    }
    let reversed = |k: usize| match k {
        0..6 => 5 - k,
        12..18 => 29 - k,
        _ => k,
    };
    let other = explained(&colours, reversed)?;
    (whole && !mirrored && other >= LEAST_EXPLAINED).then_some((other, Kind::RowsReversed))
}

/// Whether every row and column of the grid has a patch seen as a blob.
fn covers(blobs: &[bool; PATCHES]) -> bool {
    let any = |mut line: std::ops::Range<usize>, step: usize| {
        line.by_ref().step_by(step).any(|k| blobs[k])
    };
    (0..4).all(|r| any(6 * r..6 * r + 6, 1)) && (0..6).all(|c| any(c..PATCHES, 6))
}

/// The colour of the middle of a patch; none outside the picture.
fn sample(map: &Homography, level: &Level, node: [i32; 2]) -> Option<Sample> {
    const SIDE: usize = 7;
    let mut colours = [[0.0f32; 3]; SIDE * SIDE];
    for (k, colour) in colours.iter_mut().enumerate() {
        let offset = |n: usize| 0.5 * (n as f64 / (SIDE - 1) as f64 - 0.5);
        let x = f64::from(node[0]) + offset(k % SIDE);
        let y = f64::from(node[1]) + offset(k / SIDE);
        *colour = level.at(map.map([x, y]))?;
    }
    let n = colours.len() as f32;
    let mut grain = 0.0;
    let colour = [0, 1, 2].map(|c| {
        let mean = colours.iter().map(|p| p[c]).sum::<f32>() / n;
        let even = colours.iter().map(|p| p[c].sqrt()).sum::<f32>() / n;
        grain += colours
            .iter()
            .map(|p| f64::from((p[c].sqrt() - even).powi(2)))
            .sum::<f64>()
            / f64::from(n)
            / 3.0;
        mean
    });
    Some(Sample { colour, grain })
}
