//! The board's white paper in a photo: what it looks like at each place.

use nalgebra::{SMatrix, SVector};

use crate::{Point, chart::homography::Homography, decode::Upright, median::median};

use super::{Layout, Rect};

/// Terms of the surface: 1, x, y, x², xy, y².
const TERMS: usize = 6;
/// Fewest places of bare paper that make a surface.
const FEWEST: usize = 40;

/// The paper's look as smooth surfaces of the logarithm of red, green and blue.
pub(super) struct PaperLook {
    size_mm: [f64; 2],
    coefficients: [SVector<f64, TERMS>; 3],
}

impl PaperLook {
    /// From the sheet's bare places; those that differ (a shadow, something lying
    /// there) are left out by their distance from what the others say.
    pub fn of(photo: &Upright, sheet: &Homography, layout: &Layout) -> Option<Self> {
        let size_mm = layout.size_mm;
        let places: Vec<(SVector<f64, TERMS>, [f64; 3])> = layout
            .paper()
            .into_iter()
            .filter_map(|strip| {
                let look = mean(photo, sheet, strip, [6, 2])?;
                Some((terms(size_mm, strip.middle()), look.map(f64::ln)))
            })
            .collect();
        let mut kept = vec![true; places.len()];
        let mut found = None;
        for _ in 0..5 {
            let members = || places.iter().zip(&kept).filter(|(_, kept)| **kept);
            if members().count() < FEWEST {
                return None;
            }
            let mut normal = SMatrix::<f64, TERMS, TERMS>::identity() * 1e-9;
            let mut right = [SVector::<f64, TERMS>::zeros(); 3];
            for ((at, look), _) in members() {
                normal += at * at.transpose();
                for (sum, value) in right.iter_mut().zip(look) {
                    *sum += at * *value;
                }
            }
            let solver = normal.cholesky()?;
            let coefficients = right.map(|r| solver.solve(&r));
            let miss: Vec<f64> = places
                .iter()
                .map(|(at, look)| {
                    let green = look[1] - coefficients[1].dot(at);
                    let red = look[0] - coefficients[0].dot(at);
                    let blue = look[2] - coefficients[2].dot(at);
                    green.abs().max(red.abs()).max(blue.abs())
                })
                .collect();
            let far = 3.5 * median(miss.iter().copied()).max(0.004);
            for (kept, miss) in kept.iter_mut().zip(&miss) {
                *kept = *miss < far;
            }
            found = Some(coefficients);
        }
        Some(Self {
            size_mm,
            coefficients: found?,
        })
    }

    /// The logarithm of red, green and blue of paper at a place of the sheet, mm.
    pub fn at(&self, place: Point) -> [f64; 3] {
        let at = terms(self.size_mm, place);
        [0, 1, 2].map(|k| self.coefficients[k].dot(&at))
    }
}

fn terms(size_mm: [f64; 2], place: Point) -> SVector<f64, TERMS> {
    let [u, v] = [0, 1].map(|k| place[k] / size_mm[k] - 0.5);
    SVector::from([1.0, u, v, u * u, u * v, v * v])
}

/// The mean linear light of a rectangle of the sheet by `taps` places across and
/// down; none where it reaches beyond the photo or is black.
pub(super) fn mean(
    photo: &Upright,
    sheet: &Homography,
    place: Rect,
    taps: [usize; 2],
) -> Option<[f64; 3]> {
    let mut sum = [0.0; 3];
    for row in 0..taps[1] {
        for column in 0..taps[0] {
            let share = |i: usize, n: usize| (i as f64 + 0.5) / n as f64;
            let [x, y] = sheet.map([
                place.x + place.width * share(column, taps[0]),
                place.y + place.height * share(row, taps[1]),
            ]);
            let inside = x >= 0.0 && y >= 0.0 && x < photo.width as f64 && y < photo.height as f64;
            if !inside {
                return None;
            }
            let codes = photo.at(x as usize, y as usize);
            for k in 0..3 {
                sum[k] += photo.profile.linear[k][codes[k] as usize];
            }
        }
    }
    let n = (taps[0] * taps[1]) as f64;
    let mean = sum.map(|s| s / n);
    (mean[1] > 1e-4).then(|| mean.map(|v| v.max(1e-4)))
}
