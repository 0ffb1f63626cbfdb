//! What chart is searched for: its rows, columns and colours.

use super::colours::{Axes, Seen};
use crate::ChartReference;
use colour::View;

/// Fewest and most rows, and columns, of a chart.
const SIDES: std::ops::RangeInclusive<usize> = 2..=20;
/// Fewest and most patches.
const COUNTS: std::ops::RangeInclusive<usize> = 12..=300;
/// The least of the colours' variance that lies across their main direction, for
/// a chart to be told from a wedge of greys: the usual chart has a quarter.
const LEAST_VARIETY: f64 = 0.03;
/// A chart that is explained this well by itself laid in another way can't be
/// told from it.
const MOST_ALIKE: f64 = 0.8;

/// The rows, columns and colours of a chart.
#[derive(Debug, Clone)]
pub struct Layout {
    columns: usize,
    rows: usize,
    axes: Axes,
}

impl Layout {
    /// The layout of a person's or the published chart; none where its size is
    /// beyond 2 to 20 rows and columns or 12 to 300 patches.
    pub fn of(reference: &ChartReference) -> Option<Self> {
        let [columns, rows] = size(reference);
        let xyz = reference.xyz(View::D65_2);
        let colours = xyz.iter().map(|c| linear_srgb([c.x, c.y, c.z])).collect();
        Self::new(columns, rows, colours)
    }

    /// From the patches' linear sRGB, row by row.
    fn new(columns: usize, rows: usize, colours: Vec<[f32; 3]>) -> Option<Self> {
        let fits = SIDES.contains(&columns)
            && SIDES.contains(&rows)
            && COUNTS.contains(&(columns * rows))
            && colours.len() == columns * rows;
        fits.then(|| Self {
            columns,
            rows,
            axes: Axes::new(&colours),
        })
    }

    /// Patches in a row.
    pub fn columns(&self) -> usize {
        self.columns
    }

    /// Rows of patches.
    pub fn rows(&self) -> usize {
        self.rows
    }

    /// Patches in all.
    pub fn count(&self) -> usize {
        self.columns * self.rows
    }

    /// The colours, for comparing.
    pub(crate) fn axes(&self) -> &Axes {
        &self.axes
    }

    /// Column and row of a patch.
    pub(crate) fn place(&self, patch: usize) -> [f64; 2] {
        [(patch % self.columns) as f64, (patch / self.columns) as f64]
    }

    /// The middle of the grid.
    pub(crate) fn middle(&self) -> [f64; 2] {
        [self.columns, self.rows].map(|n| (n as f64 - 1.0) / 2.0)
    }

    /// The corners of the grid, `beyond` pitches outside the centres of the
    /// patches there.
    pub(crate) fn corners(&self, beyond: f64) -> [[f64; 2]; 4] {
        let [right, bottom] = [self.columns, self.rows].map(|n| n as f64 - 1.0 + beyond);
        [
            [-beyond, -beyond],
            [right, -beyond],
            [right, bottom],
            [-beyond, bottom],
        ]
    }

    /// Whether the chart can be told in a photo by its colours, and which way
    /// round it lies.
    pub fn is_recognisable(&self) -> bool {
        let own: Vec<Seen> = self.axes.own().map(Some).collect();
        let is_like = |order: &dyn Fn(usize, usize) -> [usize; 2]| {
            let laid: Vec<Seen> = (0..self.count())
                .map(|k| {
                    let [c, r] = order(k % self.columns, k / self.columns);
                    own[r * self.columns + c]
                })
                .collect();
            self.axes
                .explained(&laid)
                .is_some_and(|share| share > MOST_ALIKE)
        };
        let (last_c, last_r) = (self.columns - 1, self.rows - 1);
        let mut ways: Vec<&dyn Fn(usize, usize) -> [usize; 2]> = Vec::new();
        let half = |c, r| [last_c - c, last_r - r];
        let (flip, flop) = (|c, r| [last_c - c, r], |c, r| [c, last_r - r]);
        ways.extend([&half as &dyn Fn(usize, usize) -> [usize; 2], &flip, &flop]);
        let quarter = |c: usize, r: usize| [r, last_r.saturating_sub(c)];
        let other = |c: usize, r: usize| [last_c.saturating_sub(r), c];
        if self.columns == self.rows {
            ways.extend([&quarter as &dyn Fn(usize, usize) -> [usize; 2], &other]);
        }
        self.axes.variety() > LEAST_VARIETY && !ways.into_iter().any(is_like)
    }
}

/// Columns and rows of a chart.
fn size(reference: &ChartReference) -> [usize; 2] {
    [reference.columns(), reference.rows()]
}

/// Linear sRGB of XYZ at D65, 100 being white; what lies outside the space stops
/// at its border.
///
/// # Source
/// IEC 61966-2-1.
fn linear_srgb([x, y, z]: [f64; 3]) -> [f32; 3] {
    [
        3.2406 * x - 1.5372 * y - 0.4986 * z,
        -0.9689 * x + 1.8758 * y + 0.0415 * z,
        0.0557 * x - 0.2040 * y + 1.0570 * z,
    ]
    .map(|v| (v / 100.0).max(0.0) as f32)
}
