//! The pixels inside an outline.

use crate::{Point, decode::Upright};

/// The pixels of a polygon, as runs by row; of a photo stored on its side, as runs by
/// column, for along them it is quicker to go.
pub(crate) struct Mask {
    /// Whether all that is said of rows here holds for columns, and the other way
    /// round.
    by_columns: bool,
    left: usize,
    top: usize,
    width: usize,
    /// The runs of each row from `top` on, in order; no two touch.
    rows: Vec<Vec<Run>>,
    /// Pixels the outline would hold were the photo large enough.
    pub wanted: f64,
}

/// Neighbouring pixels of a row: from the first to before the end.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct Run {
    first: usize,
    end: usize,
}

impl Mask {
    /// The pixels of a photo whose middles lie inside (even-odd rule); none where the
    /// outline is no outline or wholly outside the photo.
    pub fn on(photo: &Upright, polygon: &[Point]) -> Option<Self> {
        if photo.is_sideways() {
            Self::by_columns(polygon, photo.width, photo.height)
        } else {
            Self::of(polygon, photo.width, photo.height)
        }
    }

    fn by_columns(polygon: &[Point], photo_width: usize, photo_height: usize) -> Option<Self> {
        let turned: Vec<Point> = polygon.iter().map(|[x, y]| [*y, *x]).collect();
        Self::of(&turned, photo_height, photo_width).map(|mask| Self {
            by_columns: true,
            ..mask
        })
    }

    /// The same for a photo of that size that is stored upright.
    pub fn of(polygon: &[Point], photo_width: usize, photo_height: usize) -> Option<Self> {
        if polygon.len() < 3 || polygon.iter().flatten().any(|v| !v.is_finite()) {
            return None;
        }
        let bound = |k: usize, size: usize| {
            let low = polygon.iter().map(|p| p[k]).fold(f64::INFINITY, f64::min);
            let high = polygon
                .iter()
                .map(|p| p[k])
                .fold(f64::NEG_INFINITY, f64::max);
            let size = size as f64;
            (
                low.clamp(0.0, size).floor() as usize,
                high.clamp(0.0, size).ceil() as usize,
            )
        };
        let (left, right) = bound(0, photo_width);
        let (top, bottom) = bound(1, photo_height);
        let (width, height) = (right.checked_sub(left)?, bottom.checked_sub(top)?);
        if width == 0 || height == 0 {
            return None;
        }
        let mask = Self {
            by_columns: false,
            left,
            top,
            width,
            rows: runs(polygon, left..right, top..bottom),
            wanted: shoelace(polygon).abs(),
        };
        (mask.count() > 0).then_some(mask)
    }

    /// The mask without a rim of `rim` pixels, where cloth meets ground: pixels stay
    /// that lie more than `rim` steps, across or down, from the nearest outside.
    pub fn eroded(self, rim: usize) -> Self {
        let kept = |row: usize| {
            let around = row.checked_sub(rim)?..=row + rim;
            let mut kept = self.rows[row].clone();
            for (other, row_at) in self.rows.get(around.clone())?.iter().zip(around) {
                let steps_left = rim - row_at.abs_diff(row);
                kept = common(
                    &kept,
                    other.iter().filter_map(|run| run.drawn_in(steps_left)),
                );
            }
            Some(kept)
        };
        let rows = (0..self.rows.len()).map(|row| kept(row).unwrap_or_default());
        Self {
            rows: rows.collect(),
            ..self
        }
    }

    /// The mask without the squares of `size` pixels a side, counted across and down
    /// from the photo's corner, that `keep` says no to.
    pub fn only(&self, size: usize, keep: impl Fn(usize, usize) -> bool) -> Self {
        let pieces = |y: usize, row: &[Run]| {
            let mut pieces = Vec::new();
            for run in row {
                for column in run.first / size..=(run.end - 1) / size {
                    let [x, y] = self.upright(column, y / size);
                    if keep(x, y) {
                        let first = run.first.max(column * size);
                        let end = run.end.min((column + 1) * size);
                        push(&mut pieces, Run { first, end });
                    }
                }
            }
            pieces
        };
        let rows = (self.top..).zip(&self.rows).map(|(y, row)| pieces(y, row));
        Self {
            rows: rows.collect(),
            ..*self
        }
    }

    /// How many pixels it holds.
    pub fn count(&self) -> usize {
        self.rows
            .iter()
            .flatten()
            .map(|run| run.end - run.first)
            .sum()
    }

    /// Column and row of the photo for those here, and the other way round.
    const fn upright(&self, column: usize, row: usize) -> [usize; 2] {
        if self.by_columns {
            [row, column]
        } else {
            [column, row]
        }
    }

    /// Calls `visit` with x and y of each pixel, in the order of storage.
    pub fn each(&self, visit: impl FnMut(usize, usize)) {
        self.each_of(1, visit);
    }

    /// The least `step` of [`Mask::each_of`] that visits about `most` pixels at most.
    pub fn step(&self, most: usize) -> usize {
        self.count().div_ceil(most).max(1)
    }

    /// Calls `visit` with x and y of one pixel of every `step` of each row, row by
    /// row: an even sample.
    pub fn each_of(&self, step: usize, mut visit: impl FnMut(usize, usize)) {
        for (row, runs) in (self.top..).zip(&self.rows) {
            for run in runs {
                run.sampled(step, row, |column| {
                    let [x, y] = self.upright(column, row);
                    visit(x, y);
                });
            }
        }
    }

    /// Calls `visit` with x and y of the upper left pixel of one in `step` of the
    /// blocks of two by two pixels that lie wholly in the mask, counted from the
    /// photo's corner.
    pub fn each_block(&self, step: usize, mut visit: impl FnMut(usize, usize)) {
        let first = self.top % 2;
        let mut row = self.top + first;
        for pair in self.rows.get(first..).unwrap_or_default().chunks_exact(2) {
            for run in common(&pair[0], pair[1].iter().copied()) {
                let blocks = Run {
                    first: run.first.div_ceil(2),
                    end: run.end / 2,
                };
                blocks.sampled(step, row / 2, |block| {
                    let [x, y] = self.upright(2 * block, row);
                    visit(x, y);
                });
            }
            row += 2;
        }
    }

    /// Calls `visit` with x and y of each pixel whose x and y are multiples of `step`.
    pub fn each_on_grid(&self, step: usize, mut visit: impl FnMut(usize, usize)) {
        for (row, runs) in (self.top..).zip(&self.rows) {
            if row % step != 0 {
                continue;
            }
            for run in runs {
                for column in (run.first.next_multiple_of(step)..run.end).step_by(step) {
                    let [x, y] = self.upright(column, row);
                    visit(x, y);
                }
            }
        }
    }

    /// The longer side of the box around it, pixels.
    pub fn reach(&self) -> usize {
        self.width.max(self.rows.len())
    }

    /// The first and the last column and row of the box around it.
    pub fn bounds(&self) -> ([usize; 2], [usize; 2]) {
        let (right, bottom) = (self.left + self.width - 1, self.top + self.rows.len() - 1);
        (
            self.upright(self.left, self.top),
            self.upright(right, bottom),
        )
    }
}

impl Run {
    /// Without so many pixels at either end; none where nothing is left.
    fn drawn_in(self, steps: usize) -> Option<Self> {
        let (first, end) = (self.first + steps, self.end.checked_sub(steps)?);
        (first < end).then_some(Self { first, end })
    }

    /// One of every `step` pixels. Which one it is jumps about, by a fixed sequence
    /// for each row, so that no weave has the same place in all of them.
    fn sampled(self, step: usize, row: usize, mut visit: impl FnMut(usize)) {
        // A linear congruential generator (Numerical Recipes' constants, from
        // memory), begun by multiples of the golden ratio.
        const GOLDEN: u32 = 0x9E37_79B9;
        let mut state = (row as u32).wrapping_mul(GOLDEN);
        let mut from = self.first - self.first % step;
        while from < self.end {
            state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
            let x = from + ((u64::from(state) * step as u64) >> 32) as usize;
            if (self.first..self.end).contains(&x) {
                visit(x);
            }
            from += step;
        }
    }
}

/// The runs of each row of a box.
fn runs(
    polygon: &[Point],
    columns: std::ops::Range<usize>,
    rows: std::ops::Range<usize>,
) -> Vec<Vec<Run>> {
    let mut crossings = Vec::new();
    let row = |row: usize| {
        let y = row as f64 + 0.5;
        crossings.clear();
        for (i, a) in polygon.iter().enumerate() {
            let b = polygon[(i + 1) % polygon.len()];
            if (a[1] <= y) != (b[1] <= y) {
                crossings.push(a[0] + (y - a[1]) / (b[1] - a[1]) * (b[0] - a[0]));
            }
        }
        crossings.sort_by(f64::total_cmp);
        let mut runs = Vec::new();
        for pair in crossings.chunks_exact(2) {
            let first = (pair[0] - 0.5).ceil().max(columns.start as f64) as usize;
            let end = ((pair[1] - 0.5).ceil().max(0.0) as usize).min(columns.end);
            if first < end {
                push(&mut runs, Run { first, end });
            }
        }
        runs
    };
    rows.map(row).collect()
}

/// Adds a run, or draws out the one before to it where they touch.
fn push(runs: &mut Vec<Run>, run: Run) {
    match runs.last_mut() {
        Some(last) if run.first <= last.end => last.end = last.end.max(run.end),
        _ => runs.push(run),
    }
}

/// What two rows of runs have in common.
fn common(row: &[Run], other: impl Iterator<Item = Run>) -> Vec<Run> {
    let mut both = Vec::new();
    for b in other {
        for a in row {
            let (first, end) = (a.first.max(b.first), a.end.min(b.end));
            if first < end {
                both.push(Run { first, end });
            }
        }
    }
    both
}

/// The signed area of a polygon, square pixels.
pub(crate) fn shoelace(polygon: &[Point]) -> f64 {
    let n = polygon.len();
    (0..n)
        .map(|i| {
            let (a, b) = (polygon[i], polygon[(i + 1) % n]);
            (a[0] * b[1] - b[0] * a[1]) / 2.0
        })
        .sum()
}

/// Whether a point lies inside a polygon (even-odd rule).
pub(crate) fn contains(polygon: &[Point], [x, y]: Point) -> bool {
    let n = polygon.len();
    let mut inside = false;
    for i in 0..n {
        let (a, b) = (polygon[i], polygon[(i + 1) % n]);
        if (a[1] <= y) != (b[1] <= y) && x < a[0] + (y - a[1]) / (b[1] - a[1]) * (b[0] - a[0]) {
            inside = !inside;
        }
    }
    inside
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn a_square_holds_its_pixels() {
        let square = [[2.0, 3.0], [12.0, 3.0], [12.0, 9.0], [2.0, 9.0]];
        let mask = Mask::of(&square, 100, 100).unwrap();
        assert_eq!(mask.count(), 60);
        assert_eq!(mask.eroded(1).count(), 8 * 4);
    }

    /// A sample's mean and standard deviation are the whole's, whatever the weave.
    #[test]
    fn a_sample_has_the_mean_and_spread_of_the_whole() {
        let square = [[0.5, 0.5], [600.0, 8.0], [590.0, 500.0], [3.0, 490.0]];
        let mask = Mask::of(&square, 600, 500).unwrap();
        let figures = |step: usize, light: &dyn Fn(f64, f64) -> f64| {
            let (mut n, mut sum, mut squares) = (0.0, 0.0, 0.0);
            mask.each_of(step, |x, y| {
                let v = light(x as f64, y as f64);
                (n, sum, squares) = (n + 1.0, sum + v, squares + v * v);
            });
            let mean: f64 = sum / n;
            (mean, (squares / n - mean * mean).sqrt())
        };
        // Threads of 2 to 9 pixels upright, across and askew, as twill has them.
        for period in 2..=9 {
            for (across, down) in [(1.0, 0.0), (0.0, 1.0), (1.0, 1.0), (1.0, -2.0), (3.0, 1.0)] {
                let weave = |x: f64, y: f64| {
                    let phase = (across * x + down * y) / f64::from(period) + 0.1;
                    0.4 + 0.2 * (phase * std::f64::consts::TAU).sin() + 0.0002 * (x - y)
                };
                let (mean, sd) = figures(1, &weave);
                for step in 2..=8 {
                    let (sampled, spread) = figures(step, &weave);
                    let what = format!("{period} {across} {down} {step}");
                    assert!((sampled - mean).abs() < 0.004, "{what}: {sampled} {mean}");
                    assert!((spread / sd - 1.0).abs() < 0.01, "{what}: {spread} {sd}");
                }
            }
        }
    }

    #[test]
    fn what_is_outside_is_no_mask() {
        let away = [[-20.0, -20.0], [-10.0, -20.0], [-10.0, -10.0]];
        assert!(Mask::of(&away, 100, 100).is_none());
        assert!(Mask::of(&[[0.0, 0.0], [f64::NAN, 1.0], [2.0, 2.0]], 9, 9).is_none());
        assert!(Mask::of(&[[0.0, 0.0], [5.0, 5.0]], 9, 9).is_none());
    }

    /// A pixel is kept where the photo's pixels so many steps around are inside.
    fn kept(mask: &[Vec<bool>], x: usize, y: usize, rim: isize) -> bool {
        let (x, y) = (x as isize, y as isize);
        let at = |x: isize, y: isize| {
            x >= 0
                && y >= 0
                && mask
                    .get(y as usize)
                    .and_then(|row| row.get(x as usize))
                    .is_some_and(|&inside| inside)
        };
        (-rim..=rim).all(|dy| {
            let reach = rim - dy.abs();
            (-reach..=reach).all(|dx| at(x + dx, y + dy))
        })
    }

    /// Which pixels of a small photo are visited.
    fn visited(visit: impl FnOnce(&mut dyn FnMut(usize, usize))) -> Vec<Vec<bool>> {
        let mut inside = vec![vec![false; 40]; 30];
        visit(&mut |x, y| {
            assert!(!inside[y][x], "{x} {y} twice");
            inside[y][x] = true;
        });
        inside
    }

    proptest! {
        #[test]
        fn a_rim_is_so_many_steps_wide(
            points in prop::collection::vec([-10.0..50.0, -10.0..40.0], 3..7),
            rim in 0..7usize,
        ) {
            let Some(mask) = Mask::of(&points, 40, 30) else { return Ok(()) };
            let inside = visited(|visit| mask.each(visit));
            let found = visited(|visit| mask.eroded(rim).each(visit));
            for (y, row) in found.iter().enumerate() {
                for (x, &found) in row.iter().enumerate() {
                    prop_assert_eq!(found, kept(&inside, x, y, rim as isize));
                }
            }
        }

        #[test]
        fn blocks_squares_and_grids_are_those_of_the_pixels(
            points in prop::collection::vec([-10.0..50.0, -10.0..40.0], 3..7),
            size in 1..9usize,
        ) {
            let Some(mask) = Mask::of(&points, 40, 30) else { return Ok(()) };
            let inside = visited(|visit| mask.each(visit));
            let blocks = visited(|visit| mask.each_block(1, visit));
            let grid = visited(|visit| mask.each_on_grid(size, visit));
            let is_kept = |column: usize, row: usize| (column + row) % 3 == 1;
            let squares = visited(|visit| mask.only(size, is_kept).each(visit));
            for y in 0..30 {
                for x in 0..40 {
                    let whole = || [(0, 0), (1, 0), (0, 1), (1, 1)]
                        .iter()
                        .all(|(dx, dy)| inside[y + dy][x + dx]);
                    let is_block = x % 2 == 0 && y % 2 == 0 && whole();
                    prop_assert_eq!(blocks[y][x], is_block);
                    prop_assert_eq!(grid[y][x], inside[y][x] && x % size == 0 && y % size == 0);
                    prop_assert_eq!(squares[y][x], inside[y][x] && is_kept(x / size, y / size));
                }
            }
        }

        #[test]
        fn going_by_columns_meets_the_same_pixels(
            points in prop::collection::vec([-10.0..50.0, -10.0..40.0], 3..7),
            size in 1..9usize,
            rim in 0..4usize,
        ) {
            let Some(rows) = Mask::of(&points, 40, 30) else { return Ok(()) };
            // Points on an outline itself may fall to either side.
            let columns = Mask::by_columns(&points, 40, 30).expect("it holds pixels");
            prop_assert_eq!(rows.bounds(), columns.bounds());
            let is_kept = |column: usize, row: usize| (2 * column + row) % 3 == 1;
            let seen = |mask: &Mask| [
                visited(|visit| mask.each(visit)),
                visited(|visit| mask.each_block(1, visit)),
                visited(|visit| mask.each_on_grid(size, visit)),
                visited(|visit| mask.only(size, is_kept).each(visit)),
            ];
            prop_assert_eq!(seen(&rows), seen(&columns));
            let [rows, columns] = [rows, columns].map(|mask| mask.eroded(rim));
            prop_assert_eq!(visited(|visit| rows.each(visit)), visited(|visit| columns.each(visit)));
        }

        #[test]
        fn a_sample_is_even(step in 1..9usize) {
            let square = [[10.0, 20.0], [310.0, 20.0], [310.0, 260.0], [10.0, 260.0]];
            let mask = Mask::of(&square, 400, 300).unwrap();
            let mut quarters = [0.0; 4];
            mask.each_of(step, |x, y| {
                quarters[usize::from(x >= 160) + 2 * usize::from(y >= 140)] += 1.0;
            });
            let expected = (150 * 120 / step) as f64;
            for quarter in quarters {
                prop_assert!((quarter - expected).abs() < 0.02 * expected, "{:?}", quarters);
            }
        }

        #[test]
        fn any_polygon_stays_in_the_photo(
            points in prop::collection::vec([-50.0..150.0, -50.0..150.0], 3..9)
        ) {
            if let Some(mask) = Mask::of(&points, 100, 80) {
                mask.each(|x, y| {
                    assert!(x < 100 && y < 80);
                    assert!(contains(&points, [x as f64 + 0.5, y as f64 + 0.5]));
                });
            }
        }
    }
}
