//! Where in an area pixels are at an end of the scale, or shine.

use super::piece::{Cloth, GLARE, middle_green};
use crate::{
    FlagCode,
    correct::Sight,
    decode::Upright,
    map::{Spot, Trouble, place},
    patches::CLIPPED_CODE,
};

/// Spots along an area's longer side.
const ALONG: usize = 16;
/// The share of a spot's pixels from which on it is told.
const LEAST_SHARE: f64 = 0.02;
/// Pixels of an area that are looked at, about.
const ENOUGH_PIXELS: usize = 60_000;

/// Whether a flag has a place within its area.
pub(super) const fn has_a_place(code: FlagCode) -> bool {
    matches!(code, FlagCode::Clipped | FlagCode::Glare)
}

/// The troubled spots of an area.
pub(super) fn of(photo: &Upright, id: &str, cloth: Cloth<'_>, sight: &Sight) -> Vec<Spot> {
    let mask = cloth.whole;
    let glare = GLARE * middle_green(photo, cloth.pale, &sight.linear);
    let size = (mask.reach() / ALONG).max(4);
    let ([left, top], [right, bottom]) = mask.bounds();
    let (first, last) = ([left / size, top / size], [right / size, bottom / size]);
    let columns = last[0] - first[0] + 1;
    let mut seen = vec![[0u32; 4]; columns * (last[1] - first[1] + 1)];
    mask.each_of(mask.step(ENOUGH_PIXELS), |x, y| {
        let codes = photo.at(x, y);
        let cell = &mut seen[(y / size - first[1]) * columns + x / size - first[0]];
        cell[0] += 1;
        if codes.iter().any(|&code| code as usize >= CLIPPED_CODE) {
            cell[1] += 1;
        } else if sight.linear[1][codes[1] as usize] > glare {
            cell[2] += 1;
        } else if codes.contains(&0) {
            cell[3] += 1;
        }
    });
    let mut spots = Vec::new();
    for (k, counts) in seen.iter().enumerate() {
        let corner = [k % columns + first[0], k / columns + first[1]];
        let at = |by: usize| place(corner.map(|v| ((v + by) * size) as f64));
        let kinds = [Trouble::BurntOut, Trouble::Shining, Trouble::AtZero];
        for (trouble, count) in kinds.into_iter().zip(&counts[1..]) {
            let share = f64::from(*count) / f64::from(counts[0].max(1));
            if share >= LEAST_SHARE {
                spots.push(Spot {
                    area: id.to_owned(),
                    trouble,
                    corners: [at(0), at(1)],
                    share: (share * 100.0).round() / 100.0,
                });
            }
        }
    }
    spots
}
