//! The photo in which a chart is searched, and the pictures made of it.

use std::cmp::Ordering;

/// Longest side of a picture that is searched before the others: large charts are
/// plain in it at a third of the cost, and only a find in it counts.
const GLANCE_PX: usize = 340;
/// Longest side of the first picture that settles what there is, px. A chart of 250
/// px in 4000 has a pitch of 7 px here, the least that the search makes out.
const FIRST_PX: usize = 700;
/// Longest side of the finest picture that is searched as a whole, px.
const FINEST_PX: usize = 2600;
/// Pixels that are averaged along each side of a block, or all where it is smaller.
const PICKED: usize = 3;
/// The same in the glance, whose blocks are the largest.
const PICKED_AT_A_GLANCE: usize = 2;

/// An upright photo in linear light: `pixel(x, y)` gives red, green and blue in
/// linear light, 0 to 1, in any RGB space.
#[derive(Debug, Clone)]
pub struct Search<P> {
    width: usize,
    height: usize,
    pixel: P,
    by_columns: bool,
}

/// What a picture is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Kind {
    /// A glance at the whole photo, for large charts.
    Glance,
    /// The coarsest picture of the whole photo that settles what there is.
    First,
    /// A finer picture of the whole photo or of a part of it.
    Finer,
}

/// A picture of the photo or of a part of it, of blocks of its pixels.
#[derive(Debug, Clone)]
pub(crate) struct Level {
    /// Width, px.
    pub(crate) width: usize,
    /// Height, px.
    pub(crate) height: usize,
    /// Linear light, red, green and blue in turn, row by row, 0 to 65535.
    pub(crate) rgb: Vec<u16>,
    /// Pixels of the photo for one pixel here.
    pub(crate) scale: f64,
    /// Where it begins in the photo, px.
    pub(crate) origin: [f64; 2],
    /// Roughly the brightest value that isn't a speck, 0 to 1.
    pub(crate) bright: f32,
    /// Which of the pictures it is.
    pub(crate) kind: Kind,
}

impl<P: Fn(usize, usize) -> [f32; 3]> Search<P> {
    /// Takes the upright photo, which is looked at where needed.
    pub const fn new(width: usize, height: usize, pixel: P) -> Self {
        Self {
            width,
            height,
            pixel,
            by_columns: false,
        }
    }

    /// Whether the photo is quicker to go along by columns than by rows.
    pub const fn by_columns(mut self, by_columns: bool) -> Self {
        self.by_columns = by_columns;
        self
    }

    /// Width and height of the photo, px.
    pub(crate) fn size(&self) -> [f64; 2] {
        [self.width as f64, self.height as f64]
    }

    /// The pictures of the whole photo, the coarsest first: a chart that fills the
    /// photo is found soonest, and with the least noise, in a small picture.
    pub(crate) fn levels(&self) -> impl Iterator<Item = Level> {
        let longest = self.width.max(self.height);
        let first = longest.div_ceil(FIRST_PX).max(1);
        let finest = longest.div_ceil(FINEST_PX).max(1);
        let second = (first / 2).max(finest);
        let third = (first / 4).max(finest);
        let mut blocks = vec![longest.div_ceil(GLANCE_PX).max(1), first, second, third];
        blocks.dedup();
        blocks.into_iter().map(move |block| {
            let whole = [0, 0, self.width / block, self.height / block];
            let (kind, picked) = match block.cmp(&first) {
                Ordering::Greater => (Kind::Glance, PICKED_AT_A_GLANCE),
                Ordering::Equal => (Kind::First, PICKED),
                Ordering::Less => (Kind::Finer, PICKED),
            };
            let level = self.picture(block, picked, whole);
            Level { kind, ..level }
        })
    }

    /// A picture of the part of the photo between two corners (px of the photo),
    /// of blocks of the given width; none where that part holds no block.
    pub(crate) fn part(&self, block: usize, low: [f64; 2], high: [f64; 2]) -> Option<Level> {
        let ends = [self.width / block, self.height / block];
        let within = |value: f64, end: usize| (value / block as f64).clamp(0.0, end as f64);
        let [left, top] = [0, 1].map(|d| within(low[d], ends[d]).floor() as usize);
        let [right, bottom] = [0, 1].map(|d| within(high[d], ends[d]).ceil() as usize);
        let is_empty = right < left + 2 || bottom < top + 2;
        (!is_empty).then(|| self.picture(block, PICKED, [left, top, right - left, bottom - top]))
    }

    /// Blocks of pixels averaged: `left`, `top`, `width` and `height` in blocks.
    fn picture(
        &self,
        block: usize,
        picked: usize,
        [left, top, width, height]: [usize; 4],
    ) -> Level {
        let offsets = offsets(block, picked);
        let mut looks: Vec<[usize; 2]> = Vec::with_capacity(offsets.len() * offsets.len());
        for i in &offsets {
            // Neighbours in storage one after the other.
            let pair = |j: &usize| if self.by_columns { [*i, *j] } else { [*j, *i] };
            looks.extend(offsets.iter().map(pair));
        }
        let share = 65_535.0 / looks.len() as f32;
        let mut rgb = vec![0; 3 * width * height];
        let mut counts = [0usize; 1024];
        let mean = |x: usize, y: usize| {
            let (left, top) = ((left + x) * block, (top + y) * block);
            let mut sum = [0.0f32; 3];
            for [dx, dy] in &looks {
                let pixel = (self.pixel)(left + dx, top + dy);
                for c in 0..3 {
                    sum[c] += pixel[c];
                }
            }
            // A cast to whole numbers stops at the ends and turns a NaN into 0.
            sum.map(|v| (v * share + 0.5) as u16)
        };
        let mut put = |x: usize, y: usize| {
            let [r, g, b] = mean(x, y);
            counts[usize::from(r.max(g).max(b)) >> 6] += 1;
            rgb[3 * (y * width + x)..][..3].copy_from_slice(&[r, g, b]);
        };
        if self.by_columns {
            (0..width).for_each(|x| (0..height).for_each(|y| put(x, y)));
        } else {
            (0..height).for_each(|y| (0..width).for_each(|x| put(x, y)));
        }
        Level {
            width,
            height,
            rgb,
            scale: block as f64,
            origin: [left, top].map(|v| (v * block) as f64),
            bright: bright(&counts, width * height),
            kind: Kind::Finer,
        }
    }
}

/// The pixels of a block that are averaged, along either side: all, or so many that
/// lie evenly in it.
fn offsets(block: usize, picked: usize) -> Vec<usize> {
    if block <= picked {
        return (0..block).collect();
    }
    (0..picked)
        .map(|k| (2 * k + 1) * block / (2 * picked))
        .collect()
}

/// The 99th percentile of counted values, 0 to 1.
fn bright(counts: &[usize; 1024], seen: usize) -> f32 {
    let mut above = 0;
    for (value, count) in counts.iter().enumerate().rev() {
        above += count;
        if above * 100 >= seen {
            return (value as f32 + 0.5) / 1024.0;
        }
    }
    1.0
}

impl Level {
    /// The linear colour between pixels, 0 to 1; none outside the picture.
    pub(crate) fn at(&self, [x, y]: [f64; 2]) -> Option<[f32; 3]> {
        let (x, y) = (x as f32 - 0.5, y as f32 - 0.5);
        let (last_x, last_y) = ((self.width - 1) as f32, (self.height - 1) as f32);
        let inside = x >= -0.5 && y >= -0.5 && x <= last_x + 0.5 && y <= last_y + 0.5;
        if !inside {
            return None;
        }
        let (x, y) = (x.clamp(0.0, last_x), y.clamp(0.0, last_y));
        let (left, top) = (x as usize, y as usize);
        let (fx, fy) = (x - left as f32, y - top as f32);
        let next = usize::from(left + 1 < self.width);
        let below = usize::from(top + 1 < self.height);
        let row = |y: usize| {
            let start = 3 * (y * self.width + left);
            let (a, b) = (&self.rgb[start..start + 3], &self.rgb[start + 3 * next..]);
            [0, 1, 2].map(|c| f32::from(a[c]) * (1.0 - fx) + f32::from(b[c]) * fx)
        };
        let (upper, lower) = (row(top), row(top + below));
        Some([0, 1, 2].map(|c| (upper[c] * (1.0 - fy) + lower[c] * fy) / 65_535.0))
    }

    /// The factor that brings a dark photo to the usual brightness.
    pub(crate) fn gain(&self) -> f32 {
        (0.85 / self.bright).clamp(1.0, 8.0)
    }

    /// A place of the photo in this picture's pixels.
    pub(crate) fn shift(&self) -> [f64; 2] {
        self.origin.map(|v| -v / self.scale)
    }
}

/// A linear value on a scale of even steps to the eye, 0 to about 1.
pub(crate) fn even(linear: f32) -> f32 {
    linear.max(0.0).sqrt()
}
