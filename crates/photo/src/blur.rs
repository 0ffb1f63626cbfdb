//! Whether the photo is blurred, by the edges of the chart's patches.

use crate::text;
use crate::{
    Flag, FlagCode, Point,
    chart::{self, Layout, homography::distance},
    decode::Upright,
    median::median,
};

/// Lines that are averaged along an edge, against noise.
const LINES: usize = 9;
/// Patches from which on not every pair of neighbours is measured.
const MANY: usize = 24;
/// Least contrast of an edge that is measured, linear light.
const LEAST_CONTRAST: f64 = 0.04;
/// Width of an edge, as a share of the distance of two patches, from which on
/// blur is remarked: well before it reaches the part of a patch that is read.
const BLURRED: f64 = 0.08;
/// Edges narrower than this are sharp in however small a photo, px.
const SHARP_PX: f64 = 3.5;

/// The remark on a blurred photo.
pub(crate) fn remark(photo: &Upright, corners: [Point; 4], layout: &Layout) -> Option<Flag> {
    let (edge, pitch) = edge_and_pitch_px(photo, corners, layout)?;
    (edge > SHARP_PX && edge > BLURRED * pitch).then(|| {
        Flag::new(
            FlagCode::Blurred,
            text::blur::the_photo_is_blurred_the_edges(format_args!("{edge:.0}")),
        )
    })
}

/// The median width of the edges between neighbours in a row, and the median
/// distance of those neighbours, px.
fn edge_and_pitch_px(photo: &Upright, corners: [Point; 4], layout: &Layout) -> Option<(f64, f64)> {
    let quads = chart::patches(corners, layout.columns(), layout.rows())?;
    let (mut widths, mut pitches) = (Vec::new(), Vec::new());
    // Of a chart of many patches every other pair is enough.
    let step = if quads.len() < MANY { 1 } else { 2 };
    for (i, pair) in quads.windows(2).enumerate().step_by(step) {
        if (i + 1) % layout.columns() == 0 {
            continue;
        }
        let [left, right] = [&pair[0], &pair[1]];
        pitches.push(distance(
            mix(left[0], left[2], 0.5),
            mix(right[0], right[2], 0.5),
        ));
        widths.extend(edge_px(&profile(photo, left, right)));
    }
    if widths.len() < 5 {
        return None;
    }
    Some((median(widths), median(pitches)))
}

/// Green light pixel by pixel from the middle of one patch to that of the next.
fn profile(photo: &Upright, left: &[Point; 4], right: &[Point; 4]) -> Vec<f64> {
    let steps = distance(mix(left[0], left[2], 0.5), mix(right[0], right[2], 0.5)).round();
    let mut sums = vec![0.0; steps as usize + 1];
    for line in 0..LINES {
        let down = (line as f64 + 0.5) / LINES as f64;
        let across = |quad: &[Point; 4]| {
            mix(
                mix(quad[0], quad[3], down),
                mix(quad[1], quad[2], down),
                0.5,
            )
        };
        let (from, to) = (across(left), across(right));
        for (k, sum) in sums.iter_mut().enumerate() {
            *sum += green(photo, mix(from, to, k as f64 / steps.max(1.0))) / LINES as f64;
        }
    }
    sums
}

/// Rise over steepest slope: the width of the steepest edge of a profile.
fn edge_px(profile: &[f64]) -> Option<f64> {
    let most = profile.iter().copied().fold(f64::MIN, f64::max);
    let least = profile.iter().copied().fold(f64::MAX, f64::min);
    let slope = profile
        .windows(2)
        .map(|pair| (pair[1] - pair[0]).abs())
        .fold(0.0, f64::max);
    (most - least > LEAST_CONTRAST).then(|| (most - least) / slope)
}

/// Green light between the four nearest pixels.
fn green(photo: &Upright, [x, y]: Point) -> f64 {
    let hold = |v: f64, size: usize| (v - 0.5).clamp(0.0, (size - 1) as f64);
    let (x, y) = (hold(x, photo.width), hold(y, photo.height));
    let (left, top) = (x as usize, y as usize);
    let (right, bottom) = (
        (left + 1).min(photo.width - 1),
        (top + 1).min(photo.height - 1),
    );
    let linear = &photo.profile.linear[1];
    let at = |x, y| linear[usize::from(photo.green(x, y))];
    let (dx, dy) = (x - left as f64, y - top as f64);
    let upper = at(left, top) * (1.0 - dx) + at(right, top) * dx;
    let lower = at(left, bottom) * (1.0 - dx) + at(right, bottom) * dx;
    upper * (1.0 - dy) + lower * dy
}

fn mix(a: Point, b: Point, share: f64) -> Point {
    [0, 1].map(|k| a[k] + share * (b[k] - a[k]))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_width_of_a_ramp_is_its_length() {
        for width in [1.0, 4.0, 10.0] {
            let ramp: Vec<f64> = (0..60)
                .map(|x| 0.1 + 0.5 * ((f64::from(x) - 20.0) / width).clamp(0.0, 1.0))
                .collect();
            let found = edge_px(&ramp).expect("it has contrast");
            assert!((found - width).abs() < 1e-9, "{width} {found}");
        }
        assert!(edge_px(&[0.3; 20]).is_none());
    }
}
