//! The ground reached block by block, which follows light and tint wherever they go in
//! small steps.

use std::collections::VecDeque;

use super::blocks::{Block, Blocks};

/// How far from a block the ground beside it is looked for, places: across a stripe.
const BESIDE: usize = 3;
/// Fewest blocks of ground beside it.
const FEWEST_BESIDE: f32 = 4.0;
/// How far a block's colour may lie from that of the ground beside it, as logarithms of
/// ratios, and its lightness. By rendered photos; half as much and half as much again
/// serve about as well.
const LIKE_COLOUR: f32 = 0.06;
const LIKE_LIGHT: f32 = 0.15;

/// Red over green, blue over green and lightness of blocks summed up, and how many.
type Sum = [f32; 4];

/// The blocks, by number, that are reached from `members` in small steps.
pub(super) fn grown(blocks: &Blocks, members: &[usize]) -> Vec<usize> {
    let mut is_in = vec![false; blocks.all.len()];
    for &i in members {
        is_in[i] = true;
    }
    let mut beside = around(blocks, members);
    let is_like = |i: usize, [red, blue, light, count]: Sum| {
        let here = look(&blocks.all[i]);
        let [red, blue, light] = [
            here[0] - red / count,
            here[1] - blue / count,
            here[2] - light / count,
        ];
        count >= FEWEST_BESIDE
            && red * red + blue * blue < LIKE_COLOUR * LIKE_COLOUR
            && light.abs() < LIKE_LIGHT
    };
    let place = |i: usize| blocks.number_of(blocks.all[i].place);
    let mut waiting: VecDeque<usize> = (0..blocks.all.len()).filter(|&i| !is_in[i]).collect();
    let mut is_waiting: Vec<bool> = is_in.iter().map(|is_in| !is_in).collect();
    while let Some(i) = waiting.pop_front() {
        is_waiting[i] = false;
        if !is_like(i, beside[place(i)]) {
            continue;
        }
        is_in[i] = true;
        // Those near it are asked again.
        for near in blocks.near(&blocks.all[i], BESIDE) {
            add(&mut beside[place(near)], look(&blocks.all[i]));
            if !is_in[near] && !is_waiting[near] {
                is_waiting[near] = true;
                waiting.push_back(near);
            }
        }
    }
    (0..blocks.all.len()).filter(|&i| is_in[i]).collect()
}

fn look(block: &Block) -> Sum {
    let [red, blue] = block.colour();
    [red as f32, blue as f32, block.light as f32, 1.0]
}

fn add(sum: &mut Sum, more: Sum) {
    for (sum, more) in sum.iter_mut().zip(more) {
        *sum += more;
    }
}

/// What the members near each place sum up to: along rows first, then along columns.
fn around(blocks: &Blocks, members: &[usize]) -> Vec<Sum> {
    let [columns, rows] = blocks.size;
    let mut own = vec![Sum::default(); columns * rows];
    for &i in members {
        let block = &blocks.all[i];
        own[blocks.number_of(block.place)] = look(block);
    }
    let near = |at: usize, count: usize| at.saturating_sub(BESIDE)..(at + BESIDE + 1).min(count);
    let mut along = own.clone();
    for (from, to) in own
        .chunks_exact(columns)
        .zip(along.chunks_exact_mut(columns))
    {
        for (column, to) in to.iter_mut().enumerate() {
            *to = Sum::default();
            for from in &from[near(column, columns)] {
                add(to, *from);
            }
        }
    }
    for (row, to) in own.chunks_exact_mut(columns).enumerate() {
        to.fill(Sum::default());
        for from in near(row, rows) {
            for (to, from) in to.iter_mut().zip(&along[from * columns..]) {
                add(to, *from);
            }
        }
    }
    own
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::light::surface::Column;

    /// Blocks of a photo with as many columns and rows, by colour and lightness; none
    /// where `look` gives none.
    fn blocks(size: [usize; 2], look: impl Fn([usize; 2]) -> Option<[f64; 2]>) -> Blocks {
        let places = (0..size[0] * size[1]).map(|i| [i % size[0], i / size[0]]);
        let block = |place: [usize; 2]| {
            let [red, light] = look(place)?;
            Some(Block {
                place,
                middle: place.map(|k| k as f64),
                terms: Column::zeros(),
                ln: [light + red, light, light],
                light,
            })
        };
        Blocks::new(places.filter_map(block).collect(), size)
    }

    fn at(blocks: &Blocks, place: [usize; 2]) -> usize {
        (0..blocks.all.len())
            .find(|&i| blocks.all[i].place == place)
            .expect("a block")
    }

    #[test]
    fn ground_is_followed_where_its_light_and_tint_drift_and_across_stripes() {
        // Tint and lightness drift by far more than may lie between neighbours; every
        // tenth column and the one beside it is a stripe of another colour.
        let look = |[x, y]: [usize; 2]| {
            let drift = x as f64 / 60.0;
            Some(if x % 10 > 7 {
                [1.0, -1.0]
            } else {
                [0.4 * drift, -0.9 * drift + 0.002 * y as f64]
            })
        };
        let blocks = blocks([60, 40], look);
        let first = [
            at(&blocks, [0, 0]),
            at(&blocks, [1, 0]),
            at(&blocks, [0, 1]),
            at(&blocks, [1, 1]),
        ];
        let ground = grown(&blocks, &first);
        assert_eq!(ground.len(), 60 * 40 * 8 / 10);
        assert!(ground.iter().all(|&i| blocks.all[i].place[0] % 10 < 8));
    }

    #[test]
    fn a_thing_of_another_colour_or_lightness_is_not_reached() {
        let is_thing = |[x, y]: [usize; 2]| (10..20).contains(&x) && (10..20).contains(&y);
        for thing in [[0.3, 0.0], [0.0, 0.4], [-0.2, -0.3]] {
            let blocks = blocks([40, 30], |place| {
                Some(if is_thing(place) { thing } else { [0.0, 0.0] })
            });
            let first: Vec<usize> = (0..200).collect();
            let ground = grown(&blocks, &first);
            assert_eq!(ground.len(), 40 * 30 - 100, "{thing:?}");
        }
    }

    #[test]
    fn what_lies_around_sums_up_as_block_by_block() {
        let look = |[x, y]: [usize; 2]| {
            let hole = (x * 7 + y * 3) % 5 == 0;
            (!hole).then(|| [(x as f64 * 0.7).sin(), (y as f64 * 0.3).cos()])
        };
        let blocks = blocks([11, 9], look);
        let members: Vec<usize> = (0..blocks.all.len()).step_by(2).collect();
        let sums = around(&blocks, &members);
        for i in 0..blocks.all.len() {
            let mut slow = Sum::default();
            for near in blocks.near(&blocks.all[i], BESIDE) {
                if near % 2 == 0 {
                    add(&mut slow, super::look(&blocks.all[near]));
                }
            }
            let fast = sums[blocks.number_of(blocks.all[i].place)];
            assert!(fast.iter().zip(slow).all(|(a, b)| (a - b).abs() < 1e-4));
        }
    }
}
