//! The photo in small blocks: what light each sends where nothing lies on the ground.

use super::{Light, ground::Whereabouts, surface::Column};
use crate::{Point, area::contains, decode::Upright, patches::CLIPPED_CODE};

/// Blocks along the photo's longer side.
const ALONG: f64 = 72.0;
/// How many times smaller blocks of bare ground are, which shows in strips.
const FINER: f64 = 2.5;

/// A small square of the photo.
pub(super) struct Block {
    pub middle: Point,
    /// The surface's terms there.
    pub terms: Column,
    /// Logarithm of each channel's light, the known light taken off.
    pub ln: [f64; 3],
}

impl Block {
    /// Logarithms of red over green and blue over green.
    pub fn colour(&self) -> [f64; 2] {
        let [r, g, b] = self.ln;
        [r - g, b - g]
    }

    /// How light it is, as a logarithm.
    pub fn light(&self) -> f64 {
        self.ln.iter().sum::<f64>() / 3.0
    }
}

/// Every block in the open that is neither burnt out nor black.
pub(super) fn blocks(
    photo: &Upright,
    linear: &[[f64; 256]; 3],
    known: &Light,
    Whereabouts { hidden, bare, .. }: Whereabouts<'_>,
) -> Vec<Block> {
    let along = if bare.is_empty() {
        ALONG
    } else {
        FINER * ALONG
    };
    let size = ((photo.width.max(photo.height) as f64 / along) as usize).max(4);
    let [hidden, bare] = [hidden, bare].map(|outlines| -> Vec<Boxed<'_>> {
        outlines.iter().map(|outline| Boxed::new(outline)).collect()
    });
    let [columns, rows] = [photo.width, photo.height].map(|side| side.saturating_sub(size));
    let [columns, rows] = [columns, rows].map(|side| side.div_ceil(size));
    // Blocks share their corners: which of them are covered is asked once.
    let is_covered: Vec<bool> = (0..(columns + 1) * (rows + 1))
        .map(|i| {
            let corner = [i % (columns + 1), i / (columns + 1)].map(|k| (k * size) as f64);
            hidden.iter().any(|outline| outline.holds(corner))
        })
        .collect();
    let block = |column: usize, row: usize| -> Option<Block> {
        let around = [[0, 0], [1, 0], [1, 1], [0, 1]].map(|[x, y]| [column + x, row + y]);
        if around
            .iter()
            .any(|[x, y]| is_covered[y * (columns + 1) + x])
        {
            return None;
        }
        let corners = around.map(|p| p.map(|k| (k * size) as f64));
        let open = |outline: &Boxed<'_>| corners.into_iter().all(|p| outline.holds(p));
        if !(bare.is_empty() || bare.iter().any(open)) {
            return None;
        }
        let mean = mean(photo, linear, [column, row].map(|k| k * size), size)?;
        let middle = [column, row].map(|k| (k as f64 + 0.5) * size as f64);
        let terms = known.frame.terms(middle);
        let there = known.ln(middle, &terms);
        Some(Block {
            middle,
            terms,
            ln: [0, 1, 2].map(|k| mean[k].ln() - there[k]),
        })
    };
    // Line by line as the photo is stored.
    let is_sideways = photo.is_sideways();
    let (lines, along) = if is_sideways {
        (columns, rows)
    } else {
        (rows, columns)
    };
    let places = (0..lines).flat_map(|line| (0..along).map(move |at| (line, at)));
    places
        .filter_map(|(line, at)| {
            if is_sideways {
                block(line, at)
            } else {
                block(at, line)
            }
        })
        .collect()
}

/// An outline with the box around it, since most places are far from most outlines.
struct Boxed<'a> {
    outline: &'a [Point],
    low: Point,
    high: Point,
}

impl<'a> Boxed<'a> {
    fn new(outline: &'a [Point]) -> Self {
        let end = |from: f64, pick: fn(f64, f64) -> f64| {
            [0, 1].map(|k| outline.iter().map(|p| p[k]).fold(from, pick))
        };
        Self {
            outline,
            low: end(f64::INFINITY, f64::min),
            high: end(f64::NEG_INFINITY, f64::max),
        }
    }

    fn holds(&self, p: Point) -> bool {
        (0..2).all(|k| (self.low[k]..=self.high[k]).contains(&p[k])) && contains(self.outline, p)
    }
}

/// Mean light of a square; none where it is burnt out or nearly black.
fn mean(
    photo: &Upright,
    linear: &[[f64; 256]; 3],
    [left, top]: [usize; 2],
    size: usize,
) -> Option<[f64; 3]> {
    const MOST_CLIPPED: f64 = 0.02;
    const DARKEST: f64 = 0.004;
    // About sixty pixels tell a block's mean well enough.
    let step = size.div_ceil(8);
    let (mut sum, mut n, mut clipped) = ([0.0; 3], 0.0, 0);
    let sideways = photo.is_sideways();
    let along = size.div_ceil(step);
    for i in 0..along {
        for j in 0..along {
            let (across, down) = if sideways { (i, j) } else { (j, i) };
            let codes = photo.at(left + across * step, top + down * step);
            clipped += usize::from(codes.iter().any(|&c| c as usize >= CLIPPED_CODE));
            for (channel, code) in codes.into_iter().enumerate() {
                sum[channel] += linear[channel][code as usize];
            }
            n += 1.0;
        }
    }
    let mean = sum.map(|s| s / n);
    let usable = clipped as f64 <= MOST_CLIPPED * n && mean.iter().all(|&v| v >= DARKEST);
    usable.then_some(mean)
}
