//! Whether a mixture is two dyeings, or one that is unevenly lit or coarse.

use colour::{Lab, difference};

use super::{Cells, em::Mixture, surface};
use crate::median::median;

/// Fewest cells that can be split.
pub(super) const FEWEST_CELLS: usize = 80;
/// Fewest cells well inside a part.
pub(super) const FEWEST_INSIDE: usize = 6;
/// Numbers that a mixture of two fits.
const FITTED: f64 = 19.0;
/// Neighbouring cells are alike: as if there were so many times fewer.
const ALIKE: f64 = 4.0;
/// Least difference of pale and deep, CIEDE2000.
const LEAST_DE00: f64 = 4.0;
/// Least share of each in the area.
const LEAST_SHARE: f64 = 0.06;
/// Least distance of the two in standard deviations along their line, each well
/// inside: there borders are gone, and slopes and blotches are not.
const LEAST_APART: f64 = 4.0;
/// Least coherence of the two areas.
const LEAST_COHERENCE: f64 = 0.5;
/// Dye changes the ratio of the channels by at least so much (a logarithm);
/// shade, relief and creases change all alike.
const LEAST_TINT: f64 = 0.08;
/// Shade that takes more than this (a logarithm) of the light is none.
const DEEPEST_SHADE: f64 = 0.9;
/// Fewest cells that make a middle.
const FEWEST_IN_THE_MIDDLE: usize = 20;
/// Least share of a part in the area's middle, for that in the whole area.
const LEAST_IN_THE_MIDDLE: f64 = 0.3;
/// Most cells in the middle third of the line for those of the smaller part, well
/// inside.
const MOST_BETWEEN: f64 = 0.25;

/// Whether the two parts of a mixture are two dyeings. `is_first` tells the part
/// of each cell, `inner` those that lie well inside one.
pub(super) fn is_split(
    cells: &Cells,
    mixture: &Mixture,
    is_first: &[bool],
    inner: &[bool],
) -> bool {
    let [a, b] = &mixture.parts;
    let lab = |v: &nalgebra::Vector3<f64>| Lab::new(v[0], v[1], v[2]);
    let first = is_first.iter().filter(|&&f| f).count() as f64 / is_first.len() as f64;
    first.min(1.0 - first) >= LEAST_SHARE
        && difference::ciede2000(lab(&a.mean), lab(&b.mean)) >= LEAST_DE00
        && is_dye(cells, is_first)
        && reach_the_middle(cells, is_first)
        && is_parted(cells, mixture, is_first, inner)
        && cells.coherence(is_first) >= LEAST_COHERENCE
        && is_likelier(cells, mixture)
}

/// Whether the cells well inside keep to two places on the line between the means.
fn is_parted(cells: &Cells, mixture: &Mixture, is_first: &[bool], inner: &[bool]) -> bool {
    let along = |first: bool| -> Vec<f64> {
        let each = cells.all.iter().zip(is_first).zip(inner);
        each.filter(|((_, f), inner)| **f == first && **inner)
            .map(|((cell, _), _)| mixture.along(cell.lab))
            .collect()
    };
    let parts = [along(true), along(false)];
    let fewest = parts[0].len().min(parts[1].len());
    if fewest < FEWEST_INSIDE {
        return false;
    }
    let middles = [0, 1].map(|k: usize| median(parts[k].iter().copied()));
    let scatter = |k: usize| 1.4826 * median(parts[k].iter().map(|t| (t - middles[k]).abs()));
    let apart = middles[1] - middles[0];
    let third = [1.0, 2.0].map(|k| middles[0] + apart * k / 3.0);
    let between = parts.iter().flatten();
    let between = between.filter(|t| (third[0]..third[1]).contains(t)).count();
    apart >= LEAST_APART * ((scatter(0).powi(2) + scatter(1).powi(2)) / 2.0).sqrt()
        && between as f64 <= MOST_BETWEEN * fewest as f64
}

/// Whether both parts have a share of the area's middle as well: what lies at the rim
/// alone is ground within the outline. Of a narrow area nothing is far from its rim.
fn reach_the_middle(cells: &Cells, is_first: &[bool]) -> bool {
    let share = |of: &[bool]| {
        let first = of.iter().filter(|&&f| f).count();
        first as f64 / of.len().max(1) as f64
    };
    let middle: Vec<bool> = cells
        .away_from_the_rim()
        .into_iter()
        .zip(is_first)
        .filter_map(|(is_middle, first)| is_middle.then_some(*first))
        .collect();
    if middle.len() < FEWEST_IN_THE_MIDDLE {
        return true;
    }
    let (all, middle) = (share(is_first), share(&middle));
    middle >= LEAST_IN_THE_MIDDLE * all && 1.0 - middle >= LEAST_IN_THE_MIDDLE * (1.0 - all)
}

/// The Bayesian information criterion of two colours against that of one in
/// uneven light.
///
/// # Source
/// Schwarz, Annals of Statistics 6 (1978).
fn is_likelier(cells: &Cells, mixture: &Mixture) -> bool {
    let n = cells.all.len() as f64 / ALIKE;
    surface::ln_likelihood(cells).is_some_and(|one| {
        let [one, two] = [one, mixture.ln_likelihood].map(|ln| 2.0 * ln / ALIKE);
        two - FITTED * n.ln() > one - surface::FITTED * n.ln() + 10.0
    })
}

/// Whether the channels change unlike, or more than a shade could change them.
fn is_dye(cells: &Cells, is_first: &[bool]) -> bool {
    let looks: Vec<[f64; 4]> = cells
        .all
        .iter()
        .map(|cell| tints_and_light(cell.ln))
        .collect();
    let middle = |first: bool, k: usize| {
        let of = looks.iter().zip(is_first).filter(|(_, f)| **f == first);
        median(of.map(|(look, _)| look[k]))
    };
    let [r, g, b, light] = [0, 1, 2, 3].map(|k| (middle(true, k) - middle(false, k)).abs());
    r.max(g).max(b) >= LEAST_TINT.max(0.1 * light) || light > DEEPEST_SHADE
}

/// Whether there can be two dyeings among cells of such light (logarithms by
/// channel): in each of two parts, at least so large as [`LEAST_SHARE`], a half lies
/// on either side of its middle, so that the middles of both lie within what is left
/// of all cells without half that share at both ends. Most cloth is told to be of one
/// colour by this alone.
pub(super) fn may_be_two(light: impl Iterator<Item = [f64; 3]>) -> bool {
    let looks: Vec<[f64; 4]> = light.map(tints_and_light).collect();
    let ends = ((LEAST_SHARE / 2.0 * looks.len() as f64) as usize).saturating_sub(1);
    let range = |k: usize| {
        let mut values: Vec<f64> = looks.iter().map(|look| look[k]).collect();
        let last = values.len() - 1;
        let low = *values.select_nth_unstable_by(ends, f64::total_cmp).1;
        let high = *values.select_nth_unstable_by(last - ends, f64::total_cmp).1;
        high - low
    };
    !looks.is_empty() && ((0..3).any(|k| range(k) >= LEAST_TINT) || range(3) > DEEPEST_SHADE)
}

/// By how much each channel's logarithm lies above the three's mean, and that mean.
fn tints_and_light(ln: [f64; 3]) -> [f64; 4] {
    let light = ln.iter().sum::<f64>() / 3.0;
    [ln[0] - light, ln[1] - light, ln[2] - light, light]
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::mixture::Cell;
    use proptest::prelude::*;

    proptest! {
        /// Whatever is two dyeings in the end may be two to begin with.
        #[test]
        fn no_two_dyeings_are_given_up(
            first in 6..80usize,
            shift in prop::array::uniform3(-0.4..0.4),
            grain in prop::collection::vec(prop::array::uniform3(-0.05..0.05), 80..100),
        ) {
            let is_first: Vec<bool> = (0..grain.len()).map(|i| i < first).collect();
            let cell = |(i, grain): (usize, &[f64; 3])| Cell {
                column: i,
                row: 0,
                lab: [50.0, 0.0, 0.0],
                ln: [0, 1, 2].map(|k| grain[k] + if i < first { shift[k] } else { 0.0 }),
            };
            let cells = Cells { size: 4, all: grain.iter().enumerate().map(cell).collect() };
            let share = first.min(grain.len() - first) as f64 / grain.len() as f64;
            if share >= LEAST_SHARE && is_dye(&cells, &is_first) {
                prop_assert!(may_be_two(cells.all.iter().map(|cell| cell.ln)));
            }
        }
    }

    #[test]
    fn cloth_of_one_colour_is_not_two() {
        let shade = |i: i32| f64::from(i % 7) * 0.1;
        assert!(!may_be_two((0..200).map(|i| [
            shade(i),
            shade(i) - 1.0,
            shade(i) - 2.0
        ])));
        assert!(may_be_two((0..200).map(|i| [
            shade(i),
            2.0 * shade(i),
            0.0
        ])));
        assert!(!may_be_two(std::iter::empty()));
    }
}
