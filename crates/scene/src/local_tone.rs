//! Local tone mapping: a gain by the brightness of the neighbourhood.

use crate::LocalTone;

/// Cells along the longer side of the map of brightness.
const CELLS: usize = 72;

/// The gain over the photo, one value per cell.
pub(crate) struct Gains {
    values: Vec<f64>,
    columns: usize,
    rows: usize,
    cell_px: f64,
}

impl Gains {
    /// From the linear brightness (1 = white) at points of the photo, px.
    pub(crate) fn new(
        tone: LocalTone,
        size: [f64; 2],
        brightness: impl Fn([f64; 2]) -> f64,
    ) -> Self {
        let cell_px = size[0].max(size[1]) / CELLS as f64;
        let [columns, rows] = size.map(|side| (side / cell_px).ceil().max(1.0) as usize);
        let mut logs = Vec::with_capacity(columns * rows);
        for i in 0..columns * rows {
            // The mean over a few points of the cell.
            let (x, y) = ((i % columns) as f64, (i / columns) as f64);
            let places = [[0.2, 0.3], [0.7, 0.1], [0.4, 0.8], [0.9, 0.6]];
            let sum: f64 = places
                .iter()
                .map(|[u, v]| brightness([(x + u) * cell_px, (y + v) * cell_px]))
                .sum();
            logs.push((sum / 4.0).max(0.01).ln());
        }
        let deviation = tone.reach * CELLS as f64;
        let along = blur(&logs, columns, rows, deviation, [1, 0]);
        let blurred = blur(&along, columns, rows, deviation, [0, 1]);
        let mean = blurred.iter().sum::<f64>() / blurred.len() as f64;
        let gain = |log: &f64| (tone.strength * (mean - log)).exp();
        Self {
            values: blurred.iter().map(gain).collect(),
            columns,
            rows,
            cell_px,
        }
    }

    /// The gain at a point of the photo, px.
    pub(crate) fn at(&self, [x, y]: [f64; 2]) -> f64 {
        let place = |px: f64, cells: usize| {
            let at = (px / self.cell_px - 0.5).clamp(0.0, (cells - 1) as f64);
            let cell = (at as usize).min(cells.saturating_sub(2));
            (cell, at - cell as f64, (cell + 1).min(cells - 1))
        };
        let (left, u, right) = place(x, self.columns);
        let (top, v, bottom) = place(y, self.rows);
        let value = |row: usize, column: usize| self.values[row * self.columns + column];
        let upper = value(top, left) * (1.0 - u) + value(top, right) * u;
        let lower = value(bottom, left) * (1.0 - u) + value(bottom, right) * u;
        upper * (1.0 - v) + lower * v
    }
}

/// A bell-shaped blur of a grid along a direction; its weights sum to 1 at the edges too.
fn blur(
    values: &[f64],
    columns: usize,
    rows: usize,
    deviation: f64,
    [dx, dy]: [i64; 2],
) -> Vec<f64> {
    let reach = (2.5 * deviation).ceil() as i64;
    let at = |x: i64, y: i64| {
        let inside = (0..columns as i64).contains(&x) && (0..rows as i64).contains(&y);
        inside.then(|| values[y as usize * columns + x as usize])
    };
    let blurred = |i: usize| {
        let (x, y) = ((i % columns) as i64, (i / columns) as i64);
        let (mut sum, mut weights) = (0.0, 0.0);
        for step in -reach..=reach {
            if let Some(value) = at(x + dx * step, y + dy * step) {
                let weight = (-0.5 * (step as f64 / deviation).powi(2)).exp();
                sum += weight * value;
                weights += weight;
            }
        }
        sum / weights
    };
    (0..values.len()).map(blurred).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    const TONE: LocalTone = LocalTone {
        strength: 0.5,
        reach: 0.08,
    };

    #[test]
    fn an_even_photo_is_left_alone() {
        let gains = Gains::new(TONE, [400.0, 300.0], |_| 0.4);
        for point in [[0.0, 0.0], [200.0, 150.0], [399.0, 299.0]] {
            assert!((gains.at(point) - 1.0).abs() < 1e-9);
        }
    }

    #[test]
    fn dark_sides_are_raised_and_bright_ones_lowered() {
        let gains = Gains::new(
            TONE,
            [400.0, 300.0],
            |[x, _]| if x < 200.0 { 0.1 } else { 0.8 },
        );
        let (dark, bright) = (gains.at([20.0, 150.0]), gains.at([380.0, 150.0]));
        // Half of the difference, a factor of 8, is taken away.
        assert!(
            (dark / bright / 8.0f64.sqrt() - 1.0).abs() < 0.05,
            "{dark} {bright}"
        );
    }
}
