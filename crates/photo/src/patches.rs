//! What the camera recorded of each patch.

use crate::{
    Point,
    area::Mask,
    chart::{self, Layout},
    decode::Upright,
};

/// A code value from which on a channel counts as burnt out.
pub(crate) const CLIPPED_CODE: usize = 253;

/// Pixels that tell a patch: of larger ones an even sample of about so many is read.
const ENOUGH_PIXELS: usize = 2_500;

/// One patch as recorded.
pub(crate) struct Patch {
    /// How often each code value occurs, by channel.
    histogram: Vec<[u32; 3]>,
    /// How many pixels were looked at.
    count: u32,
    /// The patch's middle, pixels.
    pub middle: Point,
    /// Whether something lies or shines on it.
    pub is_covered: bool,
}

impl Patch {
    fn new(photo: &Upright, quad: &[Point; 4]) -> Self {
        let mut histogram = vec![[0; 3]; 256];
        let mut count = 0;
        if let Some(mask) = Mask::on(photo, quad) {
            mask.each_of(mask.step(ENOUGH_PIXELS), |x, y| {
                for (channel, code) in photo.at(x, y).into_iter().enumerate() {
                    histogram[code as usize][channel] += 1;
                }
                count += 1;
            });
        }
        let middle = [0, 1].map(|k| quad.iter().map(|p| p[k]).sum::<f64>() / 4.0);
        Self {
            histogram,
            count,
            middle,
            is_covered: false,
        }
    }

    /// Mean linear light of each channel, the outer tenth at each end left out
    /// (dust, scratches, a shadow's edge).
    pub fn mean(&self, linear: &[[f64; 256]; 3]) -> [f64; 3] {
        [0, 1, 2].map(|channel| {
            let skip = self.count / 10;
            let (from, to) = (skip, self.count - skip);
            let (mut seen, mut sum, mut used) = (0, 0.0, 0);
            for (code, counts) in self.histogram.iter().enumerate() {
                let n = counts[channel];
                let taken = (seen + n).min(to).saturating_sub(seen.max(from));
                sum += f64::from(taken) * linear[channel][code];
                used += taken;
                seen += n;
            }
            if used == 0 {
                0.0
            } else {
                sum / f64::from(used)
            }
        })
    }

    /// Share of the pixels that are burnt out in any one channel, 0 to 1.
    pub fn clipped_share(&self) -> f64 {
        let of = |channel: usize| -> u32 {
            self.histogram[CLIPPED_CODE..]
                .iter()
                .map(|counts| counts[channel])
                .sum()
        };
        let most = (0..3).map(of).max().unwrap_or(0);
        f64::from(most) / f64::from(self.count.max(1))
    }
}

/// The patches of the chart at `corners`, in its order, those in `covered` marked;
/// none where the corners span no area or a patch lies outside the photo.
pub(crate) fn sample(
    photo: &Upright,
    corners: [Point; 4],
    layout: &Layout,
    covered: &[usize],
) -> Option<Vec<Patch>> {
    let quads = chart::patches(corners, layout.columns(), layout.rows())?;
    let mut patches: Vec<Patch> = quads.iter().map(|quad| Patch::new(photo, quad)).collect();
    for &k in covered {
        patches[k].is_covered = true;
    }
    patches.iter().all(|p| p.count > 0).then_some(patches)
}
