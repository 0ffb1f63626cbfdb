//! Pale and deep: whether an area is a mixture of two dyeings, and where each lies.
//!
//! In: the colours of small cells of an area. Out: for each cell whether it lies
//! well inside the pale or the deep part. Cloth that is evenly dyed, however
//! coarse, creased or unevenly lit, is left whole.

mod cells;
mod em;
mod judge;
mod surface;

pub(crate) use cells::{Cell, Cells};

/// One of the two parts of a resist-dyed piece.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Side {
    /// Where something kept the dye away.
    Pale,
    /// Where nothing did.
    Deep,
}

/// Where an area is pale and where deep.
#[derive(Debug, Clone)]
pub(crate) struct Split {
    /// The part in which a cell well inside one lies; none for those on a border.
    pub inner: Vec<Option<Side>>,
    /// Share of the area that is pale, borders told apart at their middle.
    pub pale_share: f64,
}

/// Whether an area may be split, by the light of its cells alone (logarithms by
/// channel): a quick look, which says no to most of those dyed in one.
pub(crate) fn may_be_two(light: impl Iterator<Item = [f64; 3]>) -> bool {
    judge::may_be_two(light)
}

/// Splits an area; none where it is one piece of colour.
pub(crate) fn split(cells: &Cells) -> Option<Split> {
    let colours: Vec<[f64; 3]> = cells.all.iter().map(|cell| cell.lab).collect();
    if colours.len() < judge::FEWEST_CELLS {
        return None;
    }
    let mixture = em::fit(&colours)?;
    let is_first: Vec<bool> = colours.iter().map(|c| mixture.is_first(*c)).collect();
    let inner = cells.inside(&is_first);
    if !judge::is_split(cells, &mixture, &is_first, &inner) {
        return None;
    }
    let first_is_pale = mixture.parts[0].mean[0] >= mixture.parts[1].mean[0];
    let side = |&first: &bool| {
        if first == first_is_pale {
            Side::Pale
        } else {
            Side::Deep
        }
    };
    let pale = is_first.iter().filter(|&&f| f == first_is_pale).count();
    Some(Split {
        pale_share: pale as f64 / is_first.len() as f64,
        inner: is_first
            .iter()
            .zip(inner)
            .map(|(first, inner)| inner.then(|| side(first)))
            .collect(),
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A grid of 24 x 24 cells coloured by a rule.
    fn grid(colour: impl Fn(f64, f64, f64) -> [f64; 3]) -> Cells {
        let mut state = 7u64;
        let mut noise = move || {
            // A linear congruential generator: Knuth's MMIX constants, from memory.
            state = state
                .wrapping_mul(6_364_136_223_846_793_005)
                .wrapping_add(1_442_695_040_888_963_407);
            (state >> 40) as f64 / f64::from(1u32 << 24) - 0.5
        };
        let all = (0..576)
            .map(|i| {
                let (column, row) = (i % 24, i / 24);
                let lab = colour(column as f64, row as f64, noise());
                // Light in which the three channels are as unlike as the colour.
                let y = ((lab[0] + 16.0) / 116.0).powi(3);
                let ln = [y.ln() + lab[1] / 60.0, y.ln(), y.ln() - lab[2] / 60.0];
                Cell {
                    column,
                    row,
                    lab,
                    ln,
                }
            })
            .collect();
        Cells { size: 4, all }
    }

    #[test]
    fn stripes_are_split_and_borders_left_out() {
        let cells = grid(|_, y, noise| {
            let deep = ((y / 12.0).fract() > 0.5) as u8 as f64;
            [
                80.0 - 40.0 * deep + 2.0 * noise,
                -3.0 * deep,
                -25.0 * deep + noise,
            ]
        });
        let split = split(&cells).expect("two colours");
        assert!((split.pale_share - 0.5).abs() < 0.1, "{}", split.pale_share);
        for (cell, side) in cells.all.iter().zip(&split.inner) {
            match side {
                Some(Side::Pale) => assert!(cell.lab[0] > 60.0),
                Some(Side::Deep) => assert!(cell.lab[0] < 60.0),
                None => {}
            }
        }
        assert!(split.inner.iter().any(Option::is_none));
    }

    /// Paper that an outline takes in beside the cloth is no part of it; a pale half is.
    #[test]
    fn ground_along_the_rim_is_no_part() {
        let beside = |deep: bool, noise: f64| {
            let deep = f64::from(u8::from(deep));
            [90.0 - 40.0 * deep + noise, 13.0 * deep, 15.0 * deep]
        };
        let strips =
            |x: f64, y: f64, noise: f64| beside((2.0..22.0).contains(&y) || x < 8.0, noise);
        assert!(split(&grid(strips)).is_none());
        let half = |_: f64, y: f64, noise: f64| beside(y < 12.0, noise);
        assert!(split(&grid(half)).is_some());
        let rings = |x: f64, y: f64, noise: f64| {
            let r = (x - 11.5).hypot(y - 11.5);
            beside(((r / 4.0) as u32).is_multiple_of(2), noise)
        };
        assert!(split(&grid(rings)).is_some());
        let mut narrow = grid(|x, _, noise| beside(x < 12.0, noise));
        narrow.all.retain(|cell| cell.row < 5);
        assert!(split(&narrow).is_some());
    }

    #[test]
    fn one_colour_stays_whole_in_uneven_light_with_creases_and_coarse_yarn() {
        let even = |x: f64, y: f64, noise: f64| [50.0 + 4.0 * noise + 0.0 * (x + y), 20.0, 10.0];
        let slope = |x: f64, y: f64, noise: f64| [50.0 + 0.8 * x + 0.4 * y + noise, 20.0, 10.0];
        let crease = |x: f64, _: f64, noise: f64| {
            [
                50.0 - 14.0 * f64::from(u8::from((x - 12.0).abs() < 1.0)) + noise,
                20.0,
                10.0,
            ]
        };
        let knit = |x: f64, _: f64, noise: f64| [50.0 + 8.0 * (x * 2.6).sin() + noise, 20.0, 10.0];
        let speckled = |_: f64, _: f64, noise: f64| {
            let n = if noise > 0.0 { 8.0 } else { -8.0 };
            [50.0 + n, 20.0 + n, 10.0]
        };
        assert!(split(&grid(even)).is_none(), "even");
        assert!(split(&grid(slope)).is_none(), "slope");
        assert!(split(&grid(crease)).is_none(), "crease");
        assert!(split(&grid(knit)).is_none(), "knit");
        assert!(split(&grid(speckled)).is_none(), "speckled");
    }
}
