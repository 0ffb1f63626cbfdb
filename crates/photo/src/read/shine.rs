//! Sparks all over a piece: it is wet.

use crate::text;
use crate::{Flag, FlagCode, area::Mask, correct::Sight, decode::Upright, median::median};

/// Light of a spark, as a share of that from a perfect white.
const SPARK: f64 = 0.05;
/// Least share of the cloth that sparks where it is wet.
const LEAST_SHARE: f64 = 0.006;
/// Least share of the cloth's parts that show sparks: a mere shine lies in one place.
const LEAST_SPREAD: f64 = 0.4;
/// Blocks of four pixels that are looked at, about, where an area has more.
const ENOUGH_BLOCKS: usize = 20_000;
/// Of most dry cloth so few tell already that it doesn't sparkle.
const FEW_BLOCKS: usize = 4_000;
/// Parts along the longer side.
const PARTS: usize = 6;
/// Lightest body (green) on which sparks can be told.
const LIGHTEST: f64 = 0.6;

/// What is to be said of cloth that sparkles all over.
///
/// A spark mirrors the lamp: it adds light of the lamp's colour to the cloth's
/// own. Yarns that catch more light only multiply the cloth's own colour. On grey
/// cloth the two look alike, and only sparks brighter than any yarn count. Pixels
/// are taken four by four, as files keep colour no finer than that.
pub(super) fn remark(photo: &Upright, mask: &Mask, sight: &Sight) -> Option<Flag> {
    let few = Sparks::counted(photo, mask, sight, FEW_BLOCKS)?;
    if few.share() < LEAST_SHARE / 3.0 {
        return None;
    }
    let all = Sparks::counted(photo, mask, sight, ENOUGH_BLOCKS)?;
    (all.share() > LEAST_SHARE && all.spread() > LEAST_SPREAD).then(|| {
        Flag::new(
            FlagCode::WetLook,
            text::read::the_piece_sparkles_all_over(format_args!(
                "{:.0}",
                (100.0 * all.share()).max(1.0)
            )),
        )
    })
}

/// How many blocks of cloth were looked at and how many of them spark, part by part.
struct Sparks {
    parts: Vec<(u32, u32)>,
    /// Fewest blocks of a part that lies wholly on the cloth, about.
    full: usize,
}

impl Sparks {
    /// Looks at about `most` blocks at most; none where the cloth is too light.
    fn counted(photo: &Upright, mask: &Mask, sight: &Sight, most: usize) -> Option<Self> {
        let step = mask.step(4 * most);
        let size = (mask.reach() / 2 / PARTS).max(1);
        let ([left, top], [right, bottom]) = mask.bounds();
        let [first, last] = [[left, top], [right, bottom]].map(|p| p.map(|v| v / 2 / size));
        let columns = last[0] - first[0] + 1;
        let mut blocks: Vec<(usize, [f64; 3])> = Vec::new();
        mask.each_block(step, |x, y| {
            let mut sum = [0.0; 3];
            for (x, y) in [(x, y), (x + 1, y), (x, y + 1), (x + 1, y + 1)] {
                for ((sum, code), linear) in sum.iter_mut().zip(photo.at(x, y)).zip(&sight.linear) {
                    *sum += linear[code as usize];
                }
            }
            let part = (y / 2 / size - first[1]) * columns + x / 2 / size - first[0];
            blocks.push((part, sum.map(|s| s / 4.0)));
        });
        let body = [0, 1, 2].map(|k: usize| median(blocks.iter().map(|(_, light)| light[k])));
        if body[1] > LIGHTEST {
            return None;
        }
        let mut parts = vec![(0, 0); columns * (last[1] - first[1] + 1)];
        for (part, light) in &blocks {
            let tally = &mut parts[*part];
            tally.0 += 1;
            tally.1 += u32::from(added_light(*light, body) > SPARK);
        }
        Some(Self {
            parts,
            full: size * size / (2 * step),
        })
    }

    /// Share of the cloth that sparks.
    fn share(&self) -> f64 {
        let all = self.parts.iter();
        let (n, sparks) = all.fold((0, 0), |(n, sparks), part| (n + part.0, sparks + part.1));
        f64::from(sparks) / f64::from(n.max(1))
    }

    /// Share of the parts that show sparks.
    fn spread(&self) -> f64 {
        // Parts at the rim hold few pixels and tell nothing.
        let full = self.parts.iter().filter(|(n, _)| *n as usize > self.full);
        let (mut told, mut sparkling) = (0, 0);
        for (n, bright) in full {
            told += 1;
            sparkling += u32::from(f64::from(*bright) > 0.3 * LEAST_SHARE * f64::from(*n));
        }
        f64::from(sparkling) / f64::from(told.max(1))
    }
}

/// How much light of the lamp's own colour lies on the cloth's.
fn added_light(light: [f64; 3], body: [f64; 3]) -> f64 {
    const BRIGHTER_THAN_YARN: f64 = 1.5;
    let more = [0, 1, 2].map(|k| light[k] - body[k]);
    if more[1] < 0.2 * body[1] {
        return 0.0;
    }
    // more = yarn * body + lamp * white, by least squares.
    let sum = |f: &dyn Fn(usize) -> f64| (0..3).map(f).sum::<f64>();
    let (bb, b1) = (sum(&|k| body[k] * body[k]), sum(&|k| body[k]));
    let (mb, m1) = (sum(&|k| more[k] * body[k]), sum(&|k| more[k]));
    let det = 3.0 * bb - b1 * b1;
    // How far from grey the cloth is decides whether the two can be told apart.
    if det > 0.12 * 3.0 * bb {
        (bb * m1 - b1 * mb) / det
    } else if more[1] > BRIGHTER_THAN_YARN * body[1] {
        m1 / 3.0
    } else {
        0.0
    }
}
