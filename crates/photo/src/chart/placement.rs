//! Laying the chart's grid on a lattice so that the colours fit.

use super::colours::{Seen, spread};
use super::homography::Homography;
use super::lattice::Lattice;
use super::layout::Layout;
use super::search::{Level, even};
use nalgebra::Matrix3;

/// The least share of explained colour for a chart of 24 patches or more.
const LEAST_EXPLAINED: f64 = 0.9;
/// The same for a chart of 12, or one of which part lies outside the photo: fewer
/// colours, less proof.
const LEAST_EXPLAINED_OF_FEW: f64 = 0.95;
/// Patches of the grid that must have been seen as blobs.
const LEAST_BLOBS: usize = 6;
/// Share of the patches in sight that tells a chart where the rest is cut off.
const LEAST_IN_SIGHT: f64 = 0.6;
/// The least spread of the colours as a share of their mean.
const LEAST_SPREAD: f64 = 0.12;

/// A grid of patches whose colours are those of the chart.
#[derive(Debug, Clone)]
pub(crate) struct Placement {
    /// From chart coordinates (column and row, at patch centres) to px.
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
    fn node(&self, origin: [i32; 2], [c, r]: [i32; 2]) -> [i32; 2] {
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

/// A patch's colour.
#[derive(Clone, Copy)]
pub(crate) struct Sample {
    /// The mean, on the scale of even steps.
    pub(crate) colour: [f64; 3],
    /// Variance within the patch on that scale.
    pub(crate) grain: f64,
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
    fn new(lattice: &'a Lattice, low: [i32; 2], high: [i32; 2], beyond: i32) -> Self {
        let [width, height] = [0, 1].map(|d| (high[d] - low[d] + 1 + 2 * beyond) as usize);
        let mut field = Self {
            map: &lattice.map,
            low: low.map(|v| v - beyond),
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

/// The placements on a lattice whose colours fit.
pub(crate) fn placements(lattice: &Lattice, level: &Level, layout: &Layout) -> Vec<Placement> {
    let low = [0, 1].map(|d| lattice.nodes.iter().map(|n| n[d]).min().unwrap_or(0));
    let high = [0, 1].map(|d| lattice.nodes.iter().map(|n| n[d]).max().unwrap_or(0));
    let [columns, rows] = [layout.columns(), layout.rows()].map(|n| n as i32);
    let mut field = Field::new(lattice, low, high, columns.max(rows));
    let mut found: Vec<Placement> = Vec::new();
    let mut grid = Grid::default();
    for turn in &TURNS {
        let far = turn.node([0, 0], [columns - 1, rows - 1]);
        // Every origin whose grid overlaps the lattice's nodes.
        let from = [0, 1].map(|d| low[d] - far[d].max(0));
        let to = [0, 1].map(|d| high[d] - far[d].min(0));
        for y in from[1]..=to[1] {
            for x in from[0]..=to[0] {
                let places = (0..rows).flat_map(|r| (0..columns).map(move |c| [c, r]));
                grid.nodes.clear();
                grid.nodes.extend(places.map(|at| turn.node([x, y], at)));
                grid.blobs.clear();
                let is_blob = |n: &[i32; 2]| field.spots[field.index(*n)].is_blob;
                grid.blobs.extend(grid.nodes.iter().map(is_blob));
                if grid.blobs.iter().filter(|b| **b).count() < LEAST_BLOBS {
                    continue;
                }
                grid.samples.clear();
                for node in &grid.nodes {
                    grid.samples.push(field.sample(*node, level));
                }
                let Some((explained, kind)) = grid.judge(turn.is_mirrored(), layout) else {
                    continue;
                };
                let Some(map) = turn.map([x, y], &lattice.map) else {
                    continue;
                };
                if !map.faces(&layout.corners(0.5)) {
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

/// The patches of one grid tried.
#[derive(Default)]
struct Grid {
    nodes: Vec<[i32; 2]>,
    /// Which of them were seen as blobs.
    blobs: Vec<bool>,
    samples: Vec<Option<Sample>>,
}

impl Grid {
    /// Whether the samples are the chart, how well and in which way.
    fn judge(&self, mirrored: bool, layout: &Layout) -> Option<(f64, Kind)> {
        let in_sight = self.samples.iter().flatten().count();
        if (in_sight as f64) < LEAST_IN_SIGHT * layout.count() as f64 {
            return None;
        }
        let whole = in_sight == layout.count();
        if whole && !self.covers(layout) {
            return None;
        }
        let mut colours: Vec<Seen> = Vec::with_capacity(layout.count());
        colours.extend(self.samples.iter().map(|s| s.map(|s| s.colour)));
        let least = least_explained(layout.count());
        let usual = layout.axes().explained(&colours)?;
        let (explained, kind) = if whole && usual >= least {
            let kind = if mirrored {
                Kind::Mirrored
            } else {
                Kind::Whole
            };
            (usual, kind)
        } else if !whole && !mirrored && usual >= least_explained_in_part(in_sight) {
            (usual, Kind::CutOff)
        } else if whole && !mirrored && (layout.columns(), layout.rows()) == (6, 4) {
            colours[..6].reverse();
            colours[12..18].reverse();
            let other = layout.axes().explained(&colours)?;
            (other >= least).then_some((other, Kind::RowsReversed))?
        } else {
            return None;
        };
        self.is_even(&colours).then_some((explained, kind))
    }

    /// Whether the patches are even and differ: their grain is small beside
    /// their differences.
    fn is_even(&self, colours: &[Seen]) -> bool {
        let spread = spread(colours);
        let seen: Vec<&Sample> = self.samples.iter().flatten().collect();
        let mut grains: Vec<f64> = seen.iter().map(|p| p.grain).collect();
        grains.sort_by(f64::total_cmp);
        let grain = grains[grains.len() * 3 / 4].sqrt();
        let sum: f64 = seen.iter().flat_map(|p| p.colour).sum();
        let mean = sum / (3 * seen.len()) as f64;
        spread >= LEAST_SPREAD && grain <= 0.5 * spread * mean
    }

    /// Whether every row and column of the grid has a patch seen as a blob.
    fn covers(&self, layout: &Layout) -> bool {
        let (columns, rows) = (layout.columns(), layout.rows());
        let mut by_row = self.blobs.chunks_exact(columns);
        by_row.all(|row| row.contains(&true))
            && (0..columns).all(|c| (0..rows).any(|r| self.blobs[r * columns + c]))
    }
}

/// The least share of explained colour for a chart of so many patches.
fn least_explained(patches: usize) -> f64 {
    let few = (24.0 - patches as f64).max(0.0) / 12.0;
    LEAST_EXPLAINED + few * (LEAST_EXPLAINED_OF_FEW - LEAST_EXPLAINED)
}

/// The same where only some of the patches are in sight: the fewer, the easier
/// four figures for each channel fit them by chance.
fn least_explained_in_part(in_sight: usize) -> f64 {
    1.0 - (1.0 - LEAST_EXPLAINED_OF_FEW) * (in_sight as f64 - 4.0).min(20.0) / 20.0
}

/// The colour of the middle of a patch; none outside the picture.
fn sample(map: &Homography, level: &Level, node: [i32; 2]) -> Option<Sample> {
    Sample::at(map, level, node.map(f64::from))
}

impl Sample {
    /// The colour of the middle half of a patch; none outside the picture.
    pub(crate) fn at(map: &Homography, level: &Level, centre: [f64; 2]) -> Option<Self> {
        const SIDE: usize = 6;
        let (mut sums, mut evens, mut squares) = ([0.0; 3], [0.0; 3], 0.0);
        for k in 0..SIDE * SIDE {
            let offset = |n: usize| 0.5 * (n as f64 / (SIDE - 1) as f64 - 0.5);
            let at = [centre[0] + offset(k % SIDE), centre[1] + offset(k / SIDE)];
            let colour = level.at(map.map(at))?;
            for c in 0..3 {
                let value = f64::from(even(colour[c]));
                sums[c] += f64::from(colour[c]);
                evens[c] += value;
                squares += value * value;
            }
        }
        let n = (SIDE * SIDE) as f64;
        let means: f64 = evens.iter().map(|e| e * e / n).sum();
        Some(Self {
            colour: sums.map(|sum| (sum / n).sqrt()),
            grain: ((squares - means) / (3.0 * n)).max(0.0),
        })
    }
}
