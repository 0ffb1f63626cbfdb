//! One area: its pixels, their mean light, and how sure that is.

use crate::text;
use colour::Lab;

use super::{
    cells::{Sum, Sums},
    shine,
};
use crate::{
    Area, Flag, FlagCode, Point,
    area::{Mask, contains, shoelace},
    correct::Sight,
    decode::Upright,
    matrix::{Matrix3, carry, jacobian},
    patches::CLIPPED_CODE,
    survey::middle,
};

/// Fewest pixels that make a reading.
const FEWEST_PIXELS: usize = 50;
/// Fewest pixels that make a good one.
const FEW_PIXELS: usize = 400;
/// Light above this multiple of the area's middle one shines.
pub(super) const GLARE: f64 = 3.0;
/// Cells along the longer side, for the scatter of their means.
const CELLS: usize = 12;

/// Pixels that tell an area's mean well below what a code value is: of larger areas
/// an even sample of about so many is read.
const ENOUGH_PIXELS: usize = 20_000;
/// The same for an area's median light, which only tells what shines.
const ENOUGH_FOR_MEDIAN: usize = 4_000;

/// The pixels of an area, and those of its pale and its deep part; of cloth of one
/// colour all three are the same.
#[derive(Clone, Copy)]
pub(super) struct Cloth<'a> {
    pub whole: &'a Mask,
    /// By what is usual here it is told what shines.
    pub pale: &'a Mask,
    /// Here it is told whether the cloth is wet: across both parts the pale one looks
    /// like sparks.
    pub deep: &'a Mask,
}

impl<'a> Cloth<'a> {
    /// Cloth of one colour.
    pub const fn even(mask: &'a Mask) -> Self {
        Self {
            whole: mask,
            pale: mask,
            deep: mask,
        }
    }
}

/// An area as read.
pub(super) struct Piece {
    pub id: String,
    pub recorded: Option<Recorded>,
    /// Its pixels, where its outline holds any to be read.
    pub mask: Option<Mask>,
    pub flags: Vec<Flag>,
}

/// What an area recorded and what follows from it.
pub(super) struct Recorded {
    pub lab: Lab,
    /// Covariance of Lab from texture and noise.
    pub pixel_cov: Matrix3,
    /// Mean light as recorded, linear in the file's own space.
    pub recorded: [f64; 3],
    /// Mean light of the scene, tone undone and light field taken off.
    pub scene: [f64; 3],
    /// Change of Lab for a change of the light's logarithm by 1.
    pub by_light: [f64; 3],
    pub middle: Point,
    pub pixels: u64,
}

impl Piece {
    /// Reads an area of a photo on which the chart (or grey card) lies at `corners`.
    pub fn read(photo: &Upright, area: &Area, sight: &Sight, corners: &[Point; 4]) -> Self {
        let mut flags = Vec::new();
        let mask = outline(photo, area, corners, &mut flags);
        let recorded = mask.as_ref().and_then(|mask| {
            Recorded::from_pixels(photo, Cloth::even(mask), sight, Some(&mut flags))
        });
        Self {
            id: area.id.clone(),
            recorded,
            mask,
            flags,
        }
    }

    /// Reads the area once more as cloth with a pale and a deep part: what is bright
    /// beside the rest was no shine, but cloth.
    pub fn read_in_parts(&mut self, photo: &Upright, sight: &Sight, pale: &Mask, deep: &Mask) {
        let Some(whole) = &self.mask else { return };
        self.flags.retain(|flag| is_of_outline(flag.code));
        let cloth = Cloth { whole, pale, deep };
        self.recorded = Recorded::from_pixels(photo, cloth, sight, Some(&mut self.flags));
    }
}

/// Whether a flag is about an area's outline, whatever lies in it.
fn is_of_outline(code: FlagCode) -> bool {
    use FlagCode::{AreaOnChart, AreaOutline, AreaOutside, AreaTooSmall};
    matches!(code, AreaOutline | AreaOutside | AreaTooSmall | AreaOnChart)
}

/// The pixels to read, or none with a flag that says why.
fn outline(
    photo: &Upright,
    area: &Area,
    corners: &[Point; 4],
    flags: &mut Vec<Flag>,
) -> Option<Mask> {
    let polygon = &area.polygon;
    let sound = polygon.len() >= 3
        && polygon.iter().flatten().all(|v| v.is_finite())
        && shoelace(polygon).abs() > 0.0;
    if !sound {
        flags.push(Flag::new(
            FlagCode::AreaOutline,
            text::read::the_areas_outline_needs_at_least_three(),
        ));
        return None;
    }
    let Some(mask) = Mask::on(photo, polygon) else {
        flags.push(Flag::new(
            FlagCode::AreaOutside,
            text::read::the_area_lies_outside_the_photo(),
        ));
        return None;
    };
    let found = mask.count();
    if (found as f64) < 0.98 * mask.wanted - 4.0 * mask.reach() as f64 {
        flags.push(Flag::new(
            FlagCode::AreaOutside,
            text::read::part_of_the_area_lies_outside(),
        ));
    }
    if found < FEWEST_PIXELS {
        flags.push(Flag::new(
            FlagCode::AreaTooSmall,
            text::read::the_area_holds_only_pixels_a_reading(found, FEWEST_PIXELS),
        ));
        return None;
    }
    if found < FEW_PIXELS {
        flags.push(Flag::new(
            FlagCode::AreaTooSmall,
            text::read::the_area_holds_only_pixels(found, FEW_PIXELS),
        ));
    }
    if contains(corners, middle(polygon)) {
        flags.push(Flag::new(
            FlagCode::AreaOnChart,
            text::read::the_area_lies_on_the_chart(),
        ));
    }
    // Cloth meets ground at the rim; a few pixels of it are left out.
    let rim = (0.015 * (found as f64).sqrt()).round().min(6.0) as usize;
    Some(mask.eroded(rim))
}

impl Recorded {
    /// Reads the pixels of an area, and remarks on them where `flags` are asked for.
    pub fn from_pixels(
        photo: &Upright,
        cloth: Cloth<'_>,
        sight: &Sight,
        mut flags: Option<&mut Vec<Flag>>,
    ) -> Option<Self> {
        let linear = &sight.linear;
        let mask = cloth.whole;
        let step = mask.step(ENOUGH_PIXELS);
        let glare = GLARE * middle_green(photo, cloth.pale, linear);
        let size = (mask.reach() / CELLS).max(4);
        let mut cells = Sums::new(size, mask);
        let mut recorded = [0.0; 3];
        let (mut burnt, mut shining, mut bottomed, mut seen) = (0u64, 0u64, 0u64, 0u64);
        mask.each_of(step, |x, y| {
            let codes = photo.at(x, y);
            seen += 1;
            bottomed += u64::from(codes.contains(&0));
            if codes.iter().any(|&code| code as usize >= CLIPPED_CODE) {
                burnt += 1;
                return;
            }
            let scene = [0, 1, 2].map(|k| linear[k][codes[k] as usize]);
            if scene[1] > glare {
                shining += 1;
                return;
            }
            cells.add(x, y, scene);
            for k in 0..3 {
                recorded[k] += photo.profile.linear[k][codes[k] as usize];
            }
        });
        let cells: Vec<([usize; 2], Sum)> = cells.finish().collect();
        if let Some(flags) = flags.as_deref_mut() {
            remark(flags, burnt, shining, seen);
            remark_bottom(flags, bottomed, seen);
            flags.extend(shine::remark(photo, cloth.deep, sight));
        }
        let pixels: u64 = cells.iter().map(|(_, cell)| cell.pixels).sum();
        if (pixels as usize) < FEWEST_PIXELS {
            return None;
        }
        // The light changes little inside a cell: it is taken off cell by cell.
        let half = size as f64 / 2.0;
        let middle =
            |[row, column]: [usize; 2]| [column, row].map(|place| (place * size) as f64 + half);
        let n = pixels as f64;
        let mut scene = [0.0; 3];
        let mut centre = [0.0; 2];
        let mut means = Vec::with_capacity(cells.len());
        for (place, cell) in &cells {
            let place = middle(*place);
            let light = sight.light.at(place);
            let share = cell.pixels as f64 / n;
            let mean = [0, 1, 2].map(|k| cell.light[k] / light[k] / cell.pixels as f64);
            for k in 0..3 {
                scene[k] += share * mean[k];
            }
            for k in 0..2 {
                centre[k] += share * place[k];
            }
            means.push((share, mean));
        }
        if let Some(flags) = flags
            && scene[1] < 0.003
        {
            flags.push(Flag::new(
                FlagCode::UnderExposed,
                text::read::the_area_is_so_dark_that_noise(),
            ));
        }
        let lab = sight.lab(scene);
        let to_lab = |v: [f64; 3]| sight.lab(v).to_array();
        let by_channel = jacobian(to_lab, scene, 0.01);
        Some(Self {
            lab,
            pixel_cov: carry(&by_channel, &mean_covariance(&means, scene)),
            recorded: recorded.map(|sum| sum / n),
            scene,
            by_light: [0, 1, 2].map(|row| (0..3).map(|k| by_channel[row][k] * scene[k]).sum()),
            middle: centre,
            pixels,
        })
    }
}

/// Covariance of the mean from the scatter of the cells' means: cells are large
/// enough to be nearly independent, which single pixels of a cloth are not.
fn mean_covariance(means: &[(f64, [f64; 3])], mean: [f64; 3]) -> Matrix3 {
    let mut sum = [[0.0; 3]; 3];
    let squared: f64 = means.iter().map(|(share, _)| share * share).sum();
    for (share, value) in means {
        let d = [0, 1, 2].map(|k| value[k] - mean[k]);
        crate::matrix::add(&mut sum, &crate::matrix::outer(d), share * share);
    }
    // With equal shares 1/n this is the usual n - 1 in place of n.
    let unbiased = 1.0 / (1.0 - squared).max(0.1);
    sum.map(|row| row.map(|v| v * unbiased))
}

/// The middle (median) green light of an area.
pub(super) fn middle_green(photo: &Upright, mask: &Mask, linear: &[[f64; 256]; 3]) -> f64 {
    let mut counts = [0u32; 256];
    mask.each_of(mask.step(ENOUGH_FOR_MEDIAN), |x, y| {
        counts[photo.at(x, y)[1] as usize] += 1
    });
    let half = counts.iter().sum::<u32>() / 2;
    let mut seen = 0;
    let code = counts.iter().position(|n| {
        seen += n;
        seen > half
    });
    linear[1][code.unwrap_or(255)]
}

fn remark(flags: &mut Vec<Flag>, burnt: u64, shining: u64, seen: u64) {
    let percent = |n: u64| 100.0 * n as f64 / seen.max(1) as f64;
    if percent(burnt) > 0.5 {
        flags.push(Flag::new(
            FlagCode::Clipped,
            text::read::of_the_areas_pixels(format_args!("{:.0}", percent(burnt).max(1.0))),
        ));
    }
    if percent(shining) > 0.5 {
        flags.push(Flag::new(
            FlagCode::Glare,
            text::read::of_the_area_shines_and_was_left(format_args!(
                "{:.0}",
                percent(shining).max(1.0)
            )),
        ));
    }
}

/// Pixels with a channel at 0 stay in: to drop them would lighten the colour.
fn remark_bottom(flags: &mut Vec<Flag>, bottomed: u64, seen: u64) {
    if bottomed * 20 > seen {
        flags.push(Flag::new(
            FlagCode::Clipped,
            text::read::of_the_areas_pixels_have_a_channel(format_args!(
                "{:.0}",
                100.0 * bottomed as f64 / seen as f64
            )),
        ));
    }
}
