//! The photo in small blocks: what light each sends where nothing lies on the ground.

use super::{
    Light,
    ground::Whereabouts,
    surface::{Column, Frame},
};
use crate::{Point, area::contains, decode::Upright, median::median, patches::CLIPPED_CODE};

/// Blocks along the photo's longer side.
const ALONG: f64 = 72.0;
/// How many times smaller blocks of bare ground are, which shows in strips.
const FINER: f64 = 2.5;

/// The blocks of a photo.
pub(super) struct Blocks {
    pub all: Vec<Block>,
    /// How much each channel tells of the light; they sum to 1.
    ///
    /// A camera makes its channels from what it sees by taking some of each from the
    /// others. What is left of blue on brown wood, or of red on blue cloth, is little,
    /// and a change of tint makes much of it: a channel counts by how bright it is.
    pub trust: [f64; 3],
    /// Columns and rows.
    pub size: [usize; 2],
    /// The block at each place, row by row; `NONE` where none is.
    at: Vec<u32>,
}

/// No block.
const NONE: u32 = u32::MAX;

impl Blocks {
    /// The blocks on a grid of so many columns and rows.
    pub fn new(mut all: Vec<Block>, size: [usize; 2]) -> Self {
        let bright = [0, 1, 2].map(|k| median(all.iter().map(|block| block.ln[k])).exp());
        let sum: f64 = bright.iter().sum();
        let trust = bright.map(|channel| channel / sum);
        for block in &mut all {
            block.light = (0..3).map(|k| trust[k] * block.ln[k]).sum();
        }
        let mut blocks = Self {
            all,
            trust,
            size,
            at: vec![NONE; size[0] * size[1]],
        };
        for i in 0..blocks.all.len() {
            let number = blocks.number_of(blocks.all[i].place);
            blocks.at[number] = i as u32;
        }
        blocks
    }

    /// Gives the blocks the terms of another frame.
    pub fn seen_from(&mut self, frame: &Frame) {
        for block in &mut self.all {
            block.terms = frame.terms(block.middle);
        }
    }

    /// The number of a place, row by row.
    pub fn number_of(&self, [column, row]: [usize; 2]) -> usize {
        row * self.size[0] + column
    }

    /// The blocks no more than so many places away, that block among them, by number.
    pub fn near(&self, block: &Block, places: usize) -> impl Iterator<Item = usize> {
        let around = |place: usize, count: usize| {
            place.saturating_sub(places)..(place + places + 1).min(count)
        };
        let [column, row] = block.place;
        let columns = around(column, self.size[0]);
        around(row, self.size[1])
            .flat_map(move |row| &self.at[row * self.size[0]..][columns.clone()])
            .filter(|&&i| i != NONE)
            .map(|&i| i as usize)
    }
}

/// A small square of the photo.
pub(super) struct Block {
    /// Its column and row.
    pub place: [usize; 2],
    pub middle: Point,
    /// The surface's terms there.
    pub terms: Column,
    /// Logarithm of each channel's light, the known light taken off.
    pub ln: [f64; 3],
    /// How light it is, as a logarithm: each channel counts by how much it tells.
    pub light: f64,
}

impl Block {
    /// Logarithms of red over green and blue over green.
    pub fn colour(&self) -> [f64; 2] {
        let [r, g, b] = self.ln;
        [r - g, b - g]
    }
}

/// Every block in the open that is neither burnt out nor black.
pub(super) fn blocks(
    photo: &Upright,
    linear: &[[f64; 256]; 3],
    known: &Light,
    Whereabouts { hidden, bare, .. }: Whereabouts<'_>,
) -> Blocks {
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
            place: [column, row],
            middle,
            terms,
            ln: [0, 1, 2].map(|k| mean[k].ln() - there[k]),
            light: 0.0,
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
    let all = places
        .filter_map(|(line, at)| {
            if is_sideways {
                block(line, at)
            } else {
                block(at, line)
            }
        })
        .collect();
    Blocks::new(all, [columns, rows])
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

#[cfg(test)]
mod tests {
    use super::*;

    /// Brown wood, of which little blue is left: a drift of the light's tint in blue
    /// alone hardly makes it lighter or darker.
    #[test]
    fn a_dark_channel_tells_little_of_the_light() {
        let block = |k: usize| Block {
            place: [k, 0],
            middle: [k as f64, 0.0],
            terms: Column::zeros(),
            ln: [-1.0, -1.5, -4.5 + 0.02 * k as f64],
            light: 0.0,
        };
        let blocks = Blocks::new((0..40).map(block).collect(), [40, 1]);
        assert!((blocks.trust.iter().sum::<f64>() - 1.0).abs() < 1e-12);
        let [red, green, blue] = blocks.trust;
        assert!(red > green && green > 10.0 * blue, "{red} {green} {blue}");
        let rise = blocks.all[39].light - blocks.all[0].light;
        assert!(rise > 0.0 && rise < 0.03, "{rise}");
    }

    #[test]
    fn blocks_are_found_by_where_they_lie() {
        let places = [[0, 0], [2, 0], [1, 1], [0, 3], [2, 3]];
        let block = |place: [usize; 2]| Block {
            place,
            middle: place.map(|k| k as f64),
            terms: Column::zeros(),
            ln: [0.0; 3],
            light: 0.0,
        };
        let blocks = Blocks::new(places.into_iter().map(block).collect(), [3, 4]);
        let near =
            |i: usize, places| -> Vec<usize> { blocks.near(&blocks.all[i], places).collect() };
        assert_eq!(near(0, 1), [0, 2]);
        assert_eq!(near(2, 1), [0, 1, 2]);
        assert_eq!(near(2, 3), [0, 1, 2, 3, 4]);
        assert!(Blocks::new(Vec::new(), [0, 0]).all.is_empty());
    }
}
