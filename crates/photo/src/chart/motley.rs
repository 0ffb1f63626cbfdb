//! Whether a place of a picture is as many-coloured as a chart.
//!
//! Where two things meet, colours lie on a line between theirs; a chart's fill a
//! surface. So a photo with one large chart need not be searched finely for a small
//! second one where nothing else in it is motley.

use super::search::Level;
use crate::{Point, area::contains};

/// Side of a tile, px of the picture.
const TILE: usize = 4;
/// Tiles along the side of a window: within the smallest chart that is to be seen.
const WINDOW: usize = 3;
/// Share of the found chart's spread from which on a window is motley. A small
/// chart's patches run into one another and a window doesn't hold all of them.
const MOTLEY: f64 = 0.08;

/// Sums over the chromaticities of pixels.
#[derive(Debug, Clone, Copy, Default)]
struct Sums {
    n: f64,
    of: [f64; 2],
    squares: [f64; 3],
}

impl Sums {
    fn add_pixel(&mut self, [r, g, b]: [f64; 3]) {
        // The dark has no colour to speak of, only noise.
        const DARK: f64 = 0.03 * 65_535.0;
        let all = r + g + b + DARK;
        let [x, y] = [r / all, b / all];
        self.n += 1.0;
        self.of[0] += x;
        self.of[1] += y;
        self.squares[0] += x * x;
        self.squares[1] += x * y;
        self.squares[2] += y * y;
    }

    fn add(&mut self, other: &Self) {
        self.n += other.n;
        for k in 0..2 {
            self.of[k] += other.of[k];
        }
        for k in 0..3 {
            self.squares[k] += other.squares[k];
        }
    }

    /// Variance of the chromaticities across their main direction.
    fn across(&self) -> f64 {
        if self.n < 2.0 {
            return 0.0;
        }
        let [x, y] = self.of.map(|v| v / self.n);
        let [xx, xy, yy] = self.squares.map(|v| v / self.n);
        let (xx, xy, yy) = (xx - x * x, xy - x * y, yy - y * y);
        let half = (xx + yy) / 2.0;
        half - ((xx - yy).powi(2) / 4.0 + xy * xy).sqrt()
    }
}

/// Whether anything beside the chart at `corners` (px of the picture) is as
/// many-coloured as one.
pub(crate) fn elsewhere(level: &Level, corners: &[Point; 4]) -> bool {
    const WITH_FRAME: f64 = 1.35;
    let centre = crate::survey::middle(corners);
    let grown = corners.map(|p| [0, 1].map(|k| centre[k] + WITH_FRAME * (p[k] - centre[k])));
    let (columns, rows) = (level.width / TILE, level.height / TILE);
    let mut chart = Sums::default();
    let mut tiles = vec![Sums::default(); columns * rows];
    for row in 0..rows {
        for column in 0..columns {
            let middle = [column, row].map(|k| (k as f64 + 0.5) * TILE as f64);
            let tile = tile(level, column, row);
            if contains(corners, middle) {
                chart.add(&tile);
            } else if !contains(&grown, middle) {
                tiles[row * columns + column] = tile;
            }
        }
    }
    let least = MOTLEY * chart.across();
    let window = |row: usize, column: usize| {
        let mut sums = Sums::default();
        for y in row..row + WINDOW {
            for x in column..column + WINDOW {
                sums.add(&tiles[y * columns + x]);
            }
        }
        sums.across()
    };
    (0..(rows + 1).saturating_sub(WINDOW)).any(|row| {
        (0..(columns + 1).saturating_sub(WINDOW)).any(|column| window(row, column) > least)
    })
}

fn tile(level: &Level, column: usize, row: usize) -> Sums {
    let mut sums = Sums::default();
    for y in row * TILE..(row + 1) * TILE {
        let start = 3 * (y * level.width + column * TILE);
        for rgb in level.rgb[start..start + 3 * TILE].chunks_exact(3) {
            sums.add_pixel([rgb[0], rgb[1], rgb[2]].map(f64::from));
        }
    }
    sums
}
