//! Even-coloured, compact regions: what a patch of a chart looks like.
//!
//! Neighbouring pixels are joined in the order of their likeness, a little more
//! unlike at each step (maximally stable colour regions, Forssén 2007). A patch
//! is whole once its grain is bridged and before its border gives way; each
//! step's regions of a compact shape are taken down.

use super::search::{Level, even};
use std::collections::HashMap;

/// Unlikeness of neighbours up to which they are joined, step by step, in 1/255
/// of the scale of even steps.
const STEPS: [f32; 10] = [1.2, 2.0, 3.0, 4.5, 6.5, 9.0, 12.5, 17.0, 23.0, 32.0];
/// The least side of a region, px.
const LEAST_SIDE_PX: usize = 5;
/// The largest side in the coarsest picture, as a share of the longer side: a
/// chart fills the photo with patches of a sixth.
const LARGEST_SIDE: f64 = 0.24;
/// The largest side elsewhere, px; wider patches are plain in a coarser picture.
const LARGEST_SIDE_PX: f64 = 100.0;

/// One compact region.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Blob {
    /// Its centre of gravity, px.
    pub(crate) centre: [f64; 2],
    /// The side of a square of its area, px.
    pub(crate) side: f64,
    /// How many steps it outlasted.
    pub(crate) steps: u32,
    /// Its colour at the centre, 0 to 255 on the scale of even steps.
    pub(crate) colour: [f32; 3],
}

/// The compact regions of a picture.
pub(crate) fn blobs(level: &Level) -> Vec<Blob> {
    let (w, h) = (level.width, level.height);
    if w < 8 || h < 8 {
        return Vec::new();
    }
    let encoded = encoded(level);
    let edges = edges(&encoded, w, h);
    let mut regions = Regions::new(w * h);
    let largest = if level.is_coarsest {
        LARGEST_SIDE * w.max(h) as f64
    } else {
        LARGEST_SIDE_PX
    };
    let areas = LEAST_SIDE_PX * LEAST_SIDE_PX..(largest * largest) as usize;
    let mut found: Vec<Blob> = Vec::new();
    let mut known: HashMap<u32, usize> = HashMap::new();
    for step in edges {
        for (at, way) in step
            .to_right
            .into_iter()
            .map(|a| (a, 1))
            .chain(step.to_below.into_iter().map(|a| (a, w)))
        {
            regions.join(at as usize, at as usize + way);
        }
        for (root, moments) in regions.moments(w, &areas) {
            let Some(blob) = moments.blob() else { continue };
            match known.get(&root) {
                // The same region, a little more complete.
                Some(&k) if blob.side < 1.16 * found[k].side => {
                    let steps = found[k].steps + 1;
                    found[k] = Blob { steps, ..blob };
                }
                _ => {
                    known.insert(root, found.len());
                    found.push(blob);
                }
            }
        }
    }
    for blob in &mut found {
        let [x, y] = [0, 1].map(|d| (blob.centre[d] as usize).clamp(1, [w, h][d] - 2));
        blob.colour = [0, 1, 2].map(|c| {
            let row = |y: usize| (x - 1..=x + 1).map(move |x| 3 * (y * w + x) + c);
            let block = row(y - 1).chain(row(y)).chain(row(y + 1));
            block.map(|k| encoded[k]).sum::<f32>() / 9.0
        });
    }
    found
}

/// The picture on the scale of even steps, 0 to 255, dark photos brightened.
fn encoded(level: &Level) -> Vec<f32> {
    let gain = (0.85 / level.bright()).clamp(1.0, 8.0);
    // The offset keeps the noise of the blacks from looking like detail.
    let encode = |v: &f32| 255.0 * even(v * gain + 0.004);
    level.rgb.iter().map(encode).collect()
}

/// Pixels to be joined at one step with the one on the right and the one below.
#[derive(Default, Clone)]
struct Step {
    to_right: Vec<u32>,
    to_below: Vec<u32>,
}

/// Neighbouring pixels by the step at which they are alike enough to be joined.
fn edges(encoded: &[f32], w: usize, h: usize) -> [Step; STEPS.len()] {
    let mut steps: [Step; STEPS.len()] = Default::default();
    // The step for each unlikeness, in quarters of 1/255.
    let step_of: Vec<u8> = (0..4 * 33)
        .map(|q| STEPS.partition_point(|limit| 4.0 * limit < q as f32) as u8)
        .collect();
    let step = |a: usize, b: usize| {
        let difference = (0..3)
            .map(|c| (encoded[3 * a + c] - encoded[3 * b + c]).abs())
            .fold(0.0, f32::max);
        step_of
            .get((4.0 * difference).ceil() as usize)
            .copied()
            .unwrap_or(u8::MAX) as usize
    };
    for y in 0..h {
        for x in 0..w {
            let at = y * w + x;
            if x + 1 < w
                && let Some(step) = steps.get_mut(step(at, at + 1))
            {
                step.to_right.push(at as u32);
            }
            if y + 1 < h
                && let Some(step) = steps.get_mut(step(at, at + w))
            {
                step.to_below.push(at as u32);
            }
        }
    }
    steps
}

/// Disjoint sets of pixels.
struct Regions {
    parent: Vec<u32>,
    size: Vec<u32>,
    /// Pixels of regions that aren't too large yet.
    small: Vec<u32>,
    /// A region's place in a list being made; `u32::MAX` otherwise.
    slots: Vec<u32>,
}

impl Regions {
    fn new(count: usize) -> Self {
        Self {
            parent: (0..count as u32).collect(),
            size: vec![1; count],
            small: (0..count as u32).collect(),
            slots: vec![u32::MAX; count],
        }
    }

    fn root(&mut self, of: usize) -> u32 {
        let mut at = of as u32;
        while self.parent[at as usize] != at {
            let above = self.parent[self.parent[at as usize] as usize];
            self.parent[at as usize] = above;
            at = above;
        }
        at
    }

    fn join(&mut self, a: usize, b: usize) {
        let (a, b) = (self.root(a), self.root(b));
        if a == b {
            return;
        }
        let (large, small) = if self.size[a as usize] >= self.size[b as usize] {
            (a, b)
        } else {
            (b, a)
        };
        self.parent[small as usize] = large;
        self.size[large as usize] += self.size[small as usize];
    }

    /// Moments of the regions whose area lies in the range.
    fn moments(&mut self, width: usize, areas: &std::ops::Range<usize>) -> Vec<(u32, Moments)> {
        let mut found: Vec<(u32, Moments)> = Vec::new();
        let mut small = std::mem::take(&mut self.small);
        small.retain(|&at| {
            let root = self.root(at as usize);
            let size = self.size[root as usize] as usize;
            if areas.contains(&size) {
                let slot = &mut self.slots[root as usize];
                if *slot == u32::MAX {
                    *slot = found.len() as u32;
                    found.push((root, Moments::default()));
                }
                found[*slot as usize]
                    .1
                    .add(at as usize % width, at as usize / width);
            }
            size < areas.end
        });
        self.small = small;
        for (root, _) in &found {
            self.slots[*root as usize] = u32::MAX;
        }
        found
    }
}

/// Sums over the pixels of a region.
#[derive(Default)]
struct Moments {
    n: f64,
    x: f64,
    y: f64,
    xx: f64,
    xy: f64,
    yy: f64,
}

impl Moments {
    fn add(&mut self, x: usize, y: usize) {
        let (x, y) = (x as f64, y as f64);
        self.n += 1.0;
        self.x += x;
        self.y += y;
        self.xx += x * x;
        self.xy += x * y;
        self.yy += y * y;
    }

    /// A blob, where the region is compact: nearly as wide as high, and filled.
    fn blob(&self) -> Option<Blob> {
        let (mx, my) = (self.x / self.n, self.y / self.n);
        // A square pixel's own spread is 1/12.
        let xx = self.xx / self.n - mx * mx + 1.0 / 12.0;
        let yy = self.yy / self.n - my * my + 1.0 / 12.0;
        let xy = self.xy / self.n - mx * my;
        let determinant = xx * yy - xy * xy;
        let half = (xx + yy) / 2.0;
        let swing = (half * half - determinant).max(0.0).sqrt();
        // Of a filled parallelogram the area is 12 times the root of the
        // determinant of its spread, and a little more of an ellipse.
        let filled = self.n / (12.0 * determinant.sqrt());
        let compact = half + swing < 3.2 * (half - swing) && (0.7..1.12).contains(&filled);
        compact.then(|| Blob {
            centre: [mx + 0.5, my + 0.5],
            side: self.n.sqrt(),
            steps: 1,
            colour: [0.0; 3],
        })
    }
}
