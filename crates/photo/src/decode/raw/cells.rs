//! From samples to pixels of three channels.

use super::{
    frame::Frame,
    levels::{Levels, is_saturated},
    segments::Samples,
    tags::Directory,
    unreadable,
};
use crate::text;
use crate::{Refusal, decode::profile::Profile, patches::CLIPPED_CODE};

/// The code of a saturated channel.
const SATURATED_CODE: u8 = 255;
/// Most linear light that rounding hands on to the next pixel.
const MOST_CARRY: f32 = 0.05;

/// The channels of a cell of two by two sites: 0 red, 1 green, 2 blue.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Filters([usize; 4]);

impl Filters {
    /// By CFAPattern; refuses what is no Bayer pattern.
    pub fn of(raw: &Directory<'_>) -> Result<Self, Refusal> {
        let unusual = || unreadable(text::decode::whose_colour_filters_are_laid_in_another());
        let plain = raw.numbers(33_421, 2)? == [2.0, 2.0]
            && raw.whole(50_711, 1)? == 1
            && matches!(raw.numbers(50_710, 4)?[..], [] | [0.0, 1.0, 2.0]);
        if !plain {
            return Err(unusual());
        }
        let pattern = raw.numbers(33_422, 64)?;
        match pattern[..] {
            [a, b, c, d] => match [a, b, c, d].map(|v| v as usize) {
                order @ ([0, 1, 1, 2] | [2, 1, 1, 0] | [1, 0, 2, 1] | [1, 2, 0, 1]) => {
                    Ok(Self(order))
                }
                _ => Err(unusual()),
            },
            _ => Err(unusual()),
        }
    }
}

/// Width and height in pixels of what a frame gives.
pub(super) fn size(filters: Option<&Filters>, frame: &Frame) -> (usize, usize) {
    let sites = if filters.is_some() { 2 } else { 1 };
    (frame.size[0] / sites, frame.size[1] / sites)
}

/// A picture as shares of saturation.
pub(super) struct Light<'a> {
    samples: &'a Samples,
    levels: &'a Levels,
    frame: &'a Frame,
    filters: Option<Filters>,
}

/// A pixel: shares of saturation, and which channels are saturated.
type Pixel = ([f32; 3], [bool; 3]);

impl<'a> Light<'a> {
    pub const fn new(
        samples: &'a Samples,
        levels: &'a Levels,
        frame: &'a Frame,
        filters: Option<Filters>,
    ) -> Self {
        Self {
            samples,
            levels,
            frame,
            filters,
        }
    }

    fn size(&self) -> (usize, usize) {
        size(self.filters.as_ref(), self.frame)
    }

    /// The share of saturation at a site of the frame.
    fn share(&self, x: usize, y: usize, channel: usize) -> f32 {
        let at = [x + self.frame.skip[0], y + self.frame.skip[1]];
        let (column, row) = (at[0] + self.frame.origin[0], at[1] + self.frame.origin[1]);
        let i = (row * self.samples.width + column) * self.samples.channels + channel;
        self.levels.share(self.samples.values[i], at, channel)
    }

    fn pixel(&self, x: usize, y: usize) -> Pixel {
        let Some(Filters(order)) = self.filters else {
            let shares = [0, 1, 2].map(|k| self.share(x, y, k));
            return (shares, shares.map(is_saturated));
        };
        let (mut shares, mut saturated) = ([0.0; 3], [false; 3]);
        for (i, channel) in order.into_iter().enumerate() {
            let share = self.share(2 * x + i % 2, 2 * y + i / 2, 0);
            saturated[channel] |= is_saturated(share);
            // Two of the four sites are green.
            shares[channel] += if channel == 1 { share / 2.0 } else { share };
        }
        (shares, saturated)
    }

    /// The mean of each channel over the pixels that are not saturated.
    pub fn mean(&self) -> [f64; 3] {
        let (width, height) = self.size();
        let (mut sum, mut n) = ([0.0; 3], 0.0);
        // Every fourth pixel each way is enough for a mean.
        for y in (0..height).step_by(4) {
            for x in (0..width).step_by(4) {
                let (shares, saturated) = self.pixel(x, y);
                if saturated == [false; 3] {
                    for k in 0..3 {
                        sum[k] += f64::from(shares[k]);
                    }
                    n += 1.0;
                }
            }
        }
        sum.map(|total| total / f64::max(n, 1.0))
    }

    /// Code values along the curve of sRGB, row by row, each channel multiplied
    /// by its balance.
    pub fn codes(&self, balance: [f32; 3]) -> Vec<u8> {
        let (width, height) = self.size();
        let curve = Curve::new();
        let mut codes = vec![0; width * height * 3];
        // What noise put below black is owed till it is paid, so rows are gone
        // through to and fro and nothing is lost at their ends.
        let mut carry = [0.0; 3];
        for (y, row) in codes.chunks_exact_mut(width * 3).enumerate() {
            for i in 0..width {
                let x = if y % 2 == 0 { i } else { width - 1 - i };
                let (shares, saturated) = self.pixel(x, y);
                for k in 0..3 {
                    if saturated[k] {
                        carry[k] = 0.0;
                        row[3 * x + k] = SATURATED_CODE;
                        continue;
                    }
                    let wanted = shares[k] * balance[k] * curve.top() + carry[k];
                    let code = curve.code(wanted);
                    carry[k] = (wanted - curve.light[code]).clamp(-MOST_CARRY, MOST_CARRY);
                    row[3 * x + k] = code as u8;
                }
            }
        }
        codes
    }
}

/// Linear light of the codes that don't count as burnt out.
struct Curve {
    light: [f32; CLIPPED_CODE],
}

impl Curve {
    fn new() -> Self {
        let [_, green, _] = Profile::srgb().linear;
        Self {
            light: std::array::from_fn(|code| green[code] as f32),
        }
    }

    /// The light of the highest code.
    const fn top(&self) -> f32 {
        self.light[CLIPPED_CODE - 1]
    }

    /// The nearest code.
    fn code(&self, light: f32) -> usize {
        let above = self
            .light
            .partition_point(|&known| known < light)
            .min(CLIPPED_CODE - 1);
        let below = above.saturating_sub(1);
        if light - self.light[below] < self.light[above] - light {
            below
        } else {
            above
        }
    }
}
