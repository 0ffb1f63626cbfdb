//! A sum of bells over a photo, made once and looked up often.

use crate::{Point, bell::bell};

/// Crossings to one reach of the bells.
const FINE: f64 = 4.0;

/// A sum of bells, looked up between the crossings of a grid over the photo.
#[derive(Debug)]
pub(super) struct Grid {
    step_px: f64,
    columns: usize,
    rows: usize,
    values: Vec<f64>,
}

impl Grid {
    /// The sum of bells of one reach, each by its middle and height, over a photo.
    pub fn new(
        bells: impl Iterator<Item = (Point, f64)>,
        reach_px: f64,
        [width_px, height_px]: [usize; 2],
    ) -> Self {
        let step_px = reach_px / FINE;
        let [columns, rows] = [width_px, height_px].map(|px| (px as f64 / step_px) as usize + 2);
        let mut values = vec![0.0; columns * rows];
        // From crossing to crossing a bell grows by a factor that itself falls by one
        // that is always the same: two exponentials do for a whole line.
        let step = step_px / reach_px;
        let falls = (-step * step).exp();
        let along = |from: f64, count: usize| -> Vec<f64> {
            let mut height = bell(from / reach_px);
            let mut grows = (step * (from / reach_px) - 0.5 * step * step).exp();
            let mut next = || {
                let here = height;
                height *= grows;
                grows *= falls;
                here
            };
            (0..count).map(|_| next()).collect()
        };
        for ([x, y], height) in bells.filter(|(_, height)| *height != 0.0) {
            let (across, down) = (along(x, columns), along(y, rows));
            for (row, down) in values.chunks_exact_mut(columns).zip(down) {
                for (value, across) in row.iter_mut().zip(&across) {
                    *value += height * down * across;
                }
            }
        }
        Self {
            step_px,
            columns,
            rows,
            values,
        }
    }

    /// The sum at a place.
    pub fn at(&self, [x, y]: Point) -> f64 {
        let between = |px: f64, count: usize| {
            let at = (px / self.step_px).clamp(0.0, (count - 1) as f64);
            let first = (at as usize).min(count - 2);
            (first, at - first as f64)
        };
        let ((column, right), (row, down)) = (between(x, self.columns), between(y, self.rows));
        let along = |row: usize| {
            let [a, b] = [0, 1].map(|k| self.values[row * self.columns + column + k]);
            a + right * (b - a)
        };
        let [above, below] = [row, row + 1].map(along);
        above + down * (below - above)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chart::homography::distance;

    const SIZE_PX: [usize; 2] = [2000, 1500];

    #[test]
    fn the_grid_holds_the_sum_of_the_bells() {
        let bells = [([1900.0, 20.0], 0.3), ([700.0, 1400.0], -0.2)];
        let grid = Grid::new(bells.into_iter(), 300.0, SIZE_PX);
        for (row, column) in [(0, 0), (3, 20), (19, 26), (10, 9)] {
            let crossing = [column, row].map(|k| f64::from(k) * grid.step_px);
            let sum: f64 = bells
                .iter()
                .map(|(middle, height)| height * bell(distance(*middle, crossing) / 300.0))
                .sum();
            let held = grid.at(crossing);
            assert!((held - sum).abs() < 1e-9, "{crossing:?} {held} {sum}");
        }
    }
}
