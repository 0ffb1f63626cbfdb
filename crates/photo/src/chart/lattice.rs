//! Regular lattices of like-sized blobs.

use super::blobs::Blob;
use super::homography::{Homography, distance};
use super::layout::Layout;
use std::collections::{BTreeMap, BTreeSet, VecDeque};

/// How far a lattice is followed from where it was begun, as a share of the
/// chart's longer side; what lies beyond is added once the map is known.
const REACH: f64 = 0.67;
/// Fewer nodes than this don't make a lattice.
const LEAST_NODES: usize = 7;
/// How far a blob may lie from where the lattice expects it, as a share of the pitch.
const TOLERANCE: f64 = 0.15;
/// The least difference of colour within a cell of four blobs, of 255.
const LEAST_CONTRAST: f32 = 16.0;
/// Cells tried about one blob.
const MOST_CELLS: usize = 4;

/// A lattice and the map from its indices to the picture.
#[derive(Debug, Clone)]
pub(crate) struct Lattice {
    /// From lattice coordinates (nodes at whole numbers) to px.
    pub(crate) map: Homography,
    /// Nodes with a blob.
    pub(crate) nodes: BTreeSet<[i32; 2]>,
}

/// Every lattice among the blobs.
pub(crate) fn lattices(blobs: &[Blob], layout: &Layout) -> Vec<Lattice> {
    let longest = layout.columns().max(layout.rows()) as f64;
    let field = Field::new(blobs, (REACH * longest) as i32);
    let mut begun = vec![false; blobs.len()];
    let mut found = Vec::new();
    // What outlasted many steps is the likelier patch.
    let mut order: Vec<usize> = (0..blobs.len()).collect();
    order.sort_by_key(|&k| std::cmp::Reverse(blobs[k].steps));
    for first in order {
        if begun[first] {
            continue;
        }
        for cell in field.cells_at(first) {
            let grown = field.grow(cell);
            if grown.len() < LEAST_NODES {
                continue;
            }
            if let Some((lattice, members)) = field.settle(grown) {
                for k in members {
                    begun[k] = true;
                }
                found.push(lattice);
                // The first blob's other cells lead to the same lattice.
                break;
            }
        }
    }
    found
}

/// Blobs by place.
struct Field<'a> {
    blobs: &'a [Blob],
    cells: BTreeMap<[i32; 2], Vec<usize>>,
    reach: i32,
}

const CELL_PX: f64 = 24.0;

impl<'a> Field<'a> {
    fn new(blobs: &'a [Blob], reach: i32) -> Self {
        let mut cells: BTreeMap<[i32; 2], Vec<usize>> = BTreeMap::new();
        for (k, blob) in blobs.iter().enumerate() {
            cells.entry(cell(blob.centre)).or_default().push(k);
        }
        Self {
            blobs,
            cells,
            reach,
        }
    }

    /// Blobs within a radius about a point.
    fn near(&self, point: [f64; 2], radius: f64) -> impl Iterator<Item = usize> {
        let low = cell(point.map(|p| p - radius));
        let high = cell(point.map(|p| p + radius));
        (low[1]..=high[1])
            .flat_map(move |y| (low[0]..=high[0]).map(move |x| [x, y]))
            .filter_map(|at| self.cells.get(&at))
            .flatten()
            .copied()
            .filter(move |&k| distance(self.blobs[k].centre, point) < radius)
    }

    /// The best blob at an expected place, of about the expected side.
    fn at(&self, point: [f64; 2], pitch: f64, side: f64) -> Option<usize> {
        let strain = |k: usize| {
            let size = (self.blobs[k].side / side).ln().abs();
            distance(self.blobs[k].centre, point) / pitch + 0.3 * size
        };
        self.near(point, TOLERANCE * pitch)
            .filter(|&k| alike(self.blobs[k].side, side))
            .min_by(|&a, &b| strain(a).total_cmp(&strain(b)))
    }

    /// Full cells of four blobs, with the given one as a corner: the blob, its
    /// neighbour along the first axis, the one along the second, and the fourth.
    /// The axes turn clockwise in the picture.
    fn cells_at(&self, first: usize) -> Vec<[usize; 4]> {
        let a = self.blobs[first];
        let beside: Vec<usize> = self
            .near(a.centre, 1.9 * a.side)
            .filter(|&k| {
                let b = self.blobs[k];
                let gap = distance(a.centre, b.centre) / (0.5 * (a.side + b.side));
                k != first && alike(a.side, b.side) && (0.94..1.75).contains(&gap)
            })
            .collect();
        let mut cells = Vec::new();
        for &along in &beside {
            for &across in &beside {
                let u = minus(self.blobs[along].centre, a.centre);
                let v = minus(self.blobs[across].centre, a.centre);
                let (lu, lv) = (u[0].hypot(u[1]), v[0].hypot(v[1]));
                let sine = (u[0] * v[1] - u[1] * v[0]) / (lu * lv);
                if sine < 0.8 || !(0.68..1.47).contains(&(lu / lv)) {
                    continue;
                }
                let fourth = plus(plus(a.centre, u), v);
                if let Some(last) = self.at(fourth, 0.5 * (lu + lv), a.side) {
                    let cell = [first, along, across, last];
                    if self.is_colourful(cell) {
                        cells.push(cell);
                    }
                }
            }
        }
        // The tightest cells first: wider ones may step over blobs.
        let width = |cell: &[usize; 4]| {
            let [a, b, c, _] = cell.map(|k| self.blobs[k].centre);
            distance(a, b) + distance(a, c)
        };
        cells.sort_by(|a, b| width(a).total_cmp(&width(b)));
        cells.truncate(MOST_CELLS);
        cells
    }

    /// Whether a cell's colours differ, as those of any four neighbours on the
    /// chart do; tiles, weaves and keys go no further.
    fn is_colourful(&self, cell: [usize; 4]) -> bool {
        let colours = cell.map(|k| self.blobs[k].colour);
        (0..3).any(|c| {
            let channel = colours.map(|colour| colour[c]);
            let high = channel.into_iter().fold(f32::MIN, f32::max);
            let low = channel.into_iter().fold(f32::MAX, f32::min);
            high - low > LEAST_CONTRAST
        })
    }

    /// Follows a cell outwards, node by node.
    fn grow(&self, cell: [usize; 4]) -> BTreeMap<[i32; 2], usize> {
        let mut nodes: BTreeMap<[i32; 2], usize> = [[0, 0], [1, 0], [0, 1], [1, 1]]
            .into_iter()
            .zip(cell)
            .collect();
        let mut taken: BTreeSet<usize> = cell.into_iter().collect();
        let mut queue: VecDeque<[i32; 2]> = nodes.keys().copied().collect();
        while let Some(at) = queue.pop_front() {
            for step in [[1, 0], [-1, 0], [0, 1], [0, -1]] {
                let next = add(at, step);
                if nodes.contains_key(&next) || next.iter().any(|n| n.abs() > self.reach) {
                    continue;
                }
                let Some(stride) = self.stride(&nodes, at, step) else {
                    continue;
                };
                let here = self.blobs[nodes[&at]];
                let pitch = stride[0].hypot(stride[1]);
                let there = self.at(plus(here.centre, stride), pitch, here.side);
                if let Some(k) = there
                    && taken.insert(k)
                {
                    nodes.insert(next, k);
                    queue.push_back(next);
                }
            }
        }
        nodes
    }

    /// The way from a node to its neighbour, as seen one node back or beside.
    fn stride(
        &self,
        nodes: &BTreeMap<[i32; 2], usize>,
        at: [i32; 2],
        step: [i32; 2],
    ) -> Option<[f64; 2]> {
        let back = [-step[0], -step[1]];
        let side = [step[1], step[0]];
        let other = [-step[1], -step[0]];
        let between = |a: [i32; 2], b: [i32; 2]| {
            let (a, b) = (nodes.get(&a)?, nodes.get(&b)?);
            Some(minus(self.blobs[*b].centre, self.blobs[*a].centre))
        };
        between(add(at, back), at)
            .or_else(|| between(add(at, side), add(add(at, side), step)))
            .or_else(|| between(add(at, other), add(add(at, other), step)))
            .or_else(|| {
                let (a, b) = (add(at, side), add(at, other));
                between(add(a, back), a).or_else(|| between(add(b, back), b))
            })
    }

    /// Fits the map, drops what doesn't lie on it and picks up what does.
    fn settle(&self, mut nodes: BTreeMap<[i32; 2], usize>) -> Option<(Lattice, Vec<usize>)> {
        for round in 0..3 {
            let map = self.fit(&mut nodes)?;
            if round == 2 {
                // Other states of the same patches would lead here again.
                let members = nodes
                    .values()
                    .map(|&k| self.blobs[k])
                    .flat_map(|blob| self.near(blob.centre, 0.2 * blob.side))
                    .collect();
                let nodes = nodes.into_keys().collect();
                return Some((Lattice { map, nodes }, members));
            }
            let mean_side =
                nodes.values().map(|&k| self.blobs[k].side).sum::<f64>() / nodes.len() as f64;
            let low = [0, 1].map(|d| nodes.keys().map(|n| n[d]).min().unwrap_or(0));
            let high = [0, 1].map(|d| nodes.keys().map(|n| n[d]).max().unwrap_or(0));
            for y in low[1] - self.reach..=high[1] + self.reach {
                for x in low[0] - self.reach..=high[0] + self.reach {
                    let at = [f64::from(x), f64::from(y)];
                    let [along, across] = map.steps_at(at);
                    let pitch = 0.5 * (along + across);
                    if nodes.contains_key(&[x, y]) || !pitch.is_finite() || pitch > 5.0 * mean_side
                    {
                        continue;
                    }
                    if let Some(k) = self.at(map.map(at), pitch, mean_side) {
                        nodes.insert([x, y], k);
                    }
                }
            }
        }
        None
    }

    /// The map through the nodes; nodes far off it are dropped, the worst first.
    fn fit(&self, nodes: &mut BTreeMap<[i32; 2], usize>) -> Option<Homography> {
        loop {
            if nodes.len() < LEAST_NODES {
                return None;
            }
            let pairs: Vec<_> = nodes
                .iter()
                .map(|(n, k)| (n.map(f64::from), self.blobs[*k].centre))
                .collect();
            let map = Homography::fit(&pairs)?;
            let off = |(n, k): (&[i32; 2], &usize)| {
                let at = n.map(f64::from);
                let [along, across] = map.steps_at(at);
                (
                    *n,
                    2.0 * distance(map.map(at), self.blobs[*k].centre) / (along + across),
                )
            };
            let worst = nodes.iter().map(off).max_by(|a, b| a.1.total_cmp(&b.1))?;
            if worst.1 < 0.12 {
                return Some(map);
            }
            nodes.remove(&worst.0);
        }
    }
}

fn alike(a: f64, b: f64) -> bool {
    (0.68..1.47).contains(&(a / b))
}

fn cell(point: [f64; 2]) -> [i32; 2] {
    point.map(|p| (p / CELL_PX).floor() as i32)
}

fn plus(a: [f64; 2], b: [f64; 2]) -> [f64; 2] {
    [a[0] + b[0], a[1] + b[1]]
}

fn minus(a: [f64; 2], b: [f64; 2]) -> [f64; 2] {
    [a[0] - b[0], a[1] - b[1]]
}

fn add(a: [i32; 2], b: [i32; 2]) -> [i32; 2] {
    [a[0] + b[0], a[1] + b[1]]
}
