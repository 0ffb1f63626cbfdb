//! Even-coloured, compact regions: what a patch of a chart looks like.
//!
//! Neighbouring pixels are joined in the order of their likeness, a little more
//! unlike at each step (maximally stable colour regions, Forssén 2007). A patch
//! is whole once its grain is bridged and before its border gives way; each
//! step's regions of a compact shape are taken down.

use super::search::{Kind, Level, even};

/// Unlikeness of neighbours up to which they are joined, step by step, in 1/255
/// of the scale of even steps.
const STEPS: [f32; 10] = [1.2, 2.0, 3.0, 4.5, 6.5, 9.0, 12.5, 17.0, 23.0, 32.0];
/// The fewest pixels of a region.
const LEAST_PX: u32 = 5 * 5;
/// The largest side in the glance and in the first picture, as a share of the longer side: a
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
    let largest = if level.kind == Kind::Finer {
        LARGEST_SIDE_PX
    } else {
        LARGEST_SIDE * w.max(h) as f64
    };
    let steps = {
        let encoded = encoded(level);
        steps(&encoded, w, h)
    };
    let mut regions = Regions::new(w, h, (largest * largest) as u32);
    let mut found: Vec<Blob> = Vec::new();
    for step in steps {
        for at in step.to_right {
            regions.join(at, at + 1);
        }
        for at in step.to_below {
            regions.join(at, at + w as u32);
        }
        regions.grown(|region| {
            let Some(blob) = region.blob() else { return };
            match region.blob {
                // The same region, a little more complete.
                Some(k) if blob.side < 1.16 * found[k as usize].side => {
                    let steps = found[k as usize].steps + 1;
                    found[k as usize] = Blob { steps, ..blob };
                }
                _ => {
                    region.blob = Some(found.len() as u32);
                    found.push(blob);
                }
            }
        });
    }
    let gain = level.gain();
    for blob in &mut found {
        let [x, y] = [0, 1].map(|d| (blob.centre[d] as usize).clamp(1, [w, h][d] - 2));
        blob.colour = [0, 1, 2].map(|c| {
            let row = |y: usize| (x - 1..=x + 1).map(move |x| 3 * (y * w + x) + c);
            let block = row(y - 1).chain(row(y)).chain(row(y + 1));
            block.map(|k| encode(level.rgb[k], gain)).sum::<f32>() / 9.0
        });
    }
    found
}

/// A linear value on the scale of even steps, 0 to about 255.
fn encode(linear: u16, gain: f32) -> f32 {
    // The offset keeps the noise of the blacks from looking like detail.
    255.0 * even(f32::from(linear) / 65_535.0 * gain + 0.004)
}

/// The picture on that scale in parts of a step.
fn encoded(level: &Level) -> Vec<i16> {
    let gain = level.gain();
    let code = |v: &u16| (encode(*v, gain) * PARTS as f32) as i16;
    level.rgb.iter().map(code).collect()
}

/// Parts of a step that are told apart.
const PARTS: usize = 32;

/// Pixels to be joined at one step with the one on the right and the one below.
#[derive(Default, Clone)]
struct Step {
    to_right: Vec<u32>,
    to_below: Vec<u32>,
}

/// Neighbouring pixels by the step at which they are alike enough to be joined.
fn steps(encoded: &[i16], w: usize, h: usize) -> [Step; STEPS.len()] {
    let mut steps: [Step; STEPS.len()] = Default::default();
    for step in &mut steps {
        // About as many as there are where noise alone tells pixels apart.
        step.to_right.reserve(w * h / 8);
        step.to_below.reserve(w * h / 8);
    }
    let most = STEPS[STEPS.len() - 1] as usize * PARTS;
    let step_of: Vec<u8> = (0..=most)
        .map(|parts| STEPS.partition_point(|limit| limit * (PARTS as f32) < parts as f32) as u8)
        .collect();
    let step = |a: &[i16], b: &[i16]| {
        let off = |c: usize| a[c].abs_diff(b[c]);
        let most = off(0).max(off(1)).max(off(2));
        step_of.get(usize::from(most)).copied()
    };
    let rows: Vec<&[i16]> = encoded.chunks_exact(3 * w).collect();
    for (y, row) in rows.iter().enumerate() {
        let start = (y * w) as u32;
        for (x, pair) in row.windows(6).step_by(3).enumerate() {
            if let Some(step) = step(&pair[..3], &pair[3..]) {
                steps[usize::from(step)].to_right.push(start + x as u32);
            }
        }
        let Some(below) = rows.get(y + 1).filter(|_| y + 1 < h) else {
            continue;
        };
        for (x, (a, b)) in row.chunks_exact(3).zip(below.chunks_exact(3)).enumerate() {
            if let Some(step) = step(a, b) {
                steps[usize::from(step)].to_below.push(start + x as u32);
            }
        }
    }
    steps
}

/// Disjoint sets of pixels.
struct Regions {
    width: u32,
    /// Pixels from which on a region is too large for a patch.
    most: u32,
    parent: Vec<u32>,
    /// The next pixel of the same region, going round.
    next: Vec<u32>,
    /// By root: the pixels of a region, and its place among the larger ones.
    sizes: Vec<Size>,
    /// The regions large enough for a patch, not all of them still apart.
    larger: Vec<Region>,
    /// Those that have grown since they were last looked at.
    grown: Vec<u32>,
}

#[derive(Clone, Copy)]
struct Size {
    pixels: u32,
    /// `u32::MAX` for none.
    larger: u32,
}

impl Regions {
    fn new(width: usize, height: usize, most: u32) -> Self {
        let count = (width * height) as u32;
        let size = Size {
            pixels: 1,
            larger: u32::MAX,
        };
        Self {
            width: width as u32,
            most,
            parent: (0..count).collect(),
            next: (0..count).collect(),
            sizes: vec![size; count as usize],
            larger: Vec::new(),
            grown: Vec::new(),
        }
    }

    fn root(&mut self, of: u32) -> u32 {
        let mut at = of;
        while self.parent[at as usize] != at {
            let above = self.parent[self.parent[at as usize] as usize];
            self.parent[at as usize] = above;
            at = above;
        }
        at
    }

    fn join(&mut self, a: u32, b: u32) {
        let (a, b) = (self.root(a), self.root(b));
        if a == b {
            return;
        }
        let (large, small) = if self.sizes[a as usize].pixels >= self.sizes[b as usize].pixels {
            (a, b)
        } else {
            (b, a)
        };
        self.parent[small as usize] = large;
        let [kept, lost] = [large, small].map(|k| self.sizes[k as usize]);
        let pixels = kept.pixels + lost.pixels;
        self.sizes[large as usize].pixels = pixels;
        if let Some(region) = self.larger.get_mut(lost.larger as usize) {
            region.is_whole = false;
        }
        if pixels > self.most {
            if let Some(region) = self.larger.get_mut(kept.larger as usize) {
                region.is_whole = false;
            }
            return;
        }
        let mut added = match self.larger.get(lost.larger as usize) {
            Some(region) => region.moments,
            None if pixels < LEAST_PX => Moments::default(),
            None => self.walked(small),
        };
        if self.larger.get(kept.larger as usize).is_some() {
            let region = &mut self.larger[kept.larger as usize];
            region.moments.add(&added);
            if !region.has_grown {
                region.has_grown = true;
                self.grown.push(kept.larger);
            }
        } else if pixels >= LEAST_PX {
            added.add(&self.walked(large));
            self.sizes[large as usize].larger = self.larger.len() as u32;
            self.grown.push(self.larger.len() as u32);
            self.larger.push(Region {
                moments: added,
                blob: None,
                has_grown: true,
                is_whole: true,
            });
        }
        self.next.swap(large as usize, small as usize);
    }

    /// The moments of a small region, pixel by pixel.
    fn walked(&self, start: u32) -> Moments {
        let mut moments = Moments::default();
        let mut at = start;
        loop {
            moments.add_pixel(at % self.width, at / self.width);
            at = self.next[at as usize];
            if at == start {
                return moments;
            }
        }
    }

    /// Looks at each region that has grown and isn't too large.
    fn grown(&mut self, mut look: impl FnMut(&mut Region)) {
        for k in std::mem::take(&mut self.grown) {
            let region = &mut self.larger[k as usize];
            region.has_grown = false;
            if region.is_whole {
                look(region);
            }
        }
    }
}

/// A region large enough for a patch.
struct Region {
    moments: Moments,
    /// Its place in the list of blobs, once it was one.
    blob: Option<u32>,
    has_grown: bool,
    /// Whether it is no part of another region and not too large.
    is_whole: bool,
}

impl Region {
    fn blob(&self) -> Option<Blob> {
        self.moments.blob()
    }
}

/// Sums over the pixels of a region.
#[derive(Default, Clone, Copy)]
struct Moments {
    n: f64,
    x: f64,
    y: f64,
    xx: f64,
    xy: f64,
    yy: f64,
}

impl Moments {
    fn add(&mut self, other: &Self) {
        self.n += other.n;
        self.x += other.x;
        self.y += other.y;
        self.xx += other.xx;
        self.xy += other.xy;
        self.yy += other.yy;
    }

    fn add_pixel(&mut self, x: u32, y: u32) {
        let (x, y) = (f64::from(x), f64::from(y));
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
