//! Surfaces made of cells, and their outlines.

use crate::{Point, area::contains};

/// A raster of cells that are in or out.
#[derive(Clone)]
pub(super) struct Cells {
    columns: usize,
    rows: usize,
    inside: Vec<bool>,
}

impl Cells {
    /// Cells by their number, row by row.
    pub fn new(columns: usize, rows: usize, inside: impl Fn(usize) -> bool) -> Self {
        Self {
            columns,
            rows,
            inside: (0..columns * rows).map(inside).collect(),
        }
    }

    /// Whether a cell is in.
    pub fn has(&self, i: usize) -> bool {
        self.inside[i]
    }

    /// How many are in.
    pub fn count(&self) -> usize {
        self.inside.iter().filter(|&&inside| inside).count()
    }

    /// The cells that are in either.
    pub fn or(&self, other: &Self) -> Self {
        Self::new(self.columns, self.rows, |i| self.has(i) || other.has(i))
    }

    /// The surface drawn in by `by` cells; what lies beyond the raster counts as
    /// the surface's own continuation, for pieces may be larger than a window.
    pub fn eroded(&self, by: usize) -> Self {
        self.inverted().dilated(by).inverted()
    }

    /// The surface drawn out by `by` cells.
    pub fn dilated(&self, by: usize) -> Self {
        let by = by as isize;
        let square = (-by..=by).flat_map(|y| (-by..=by).map(move |x| [x, y]));
        let disc: Vec<[isize; 2]> = square
            .filter(|[x, y]| x * x + y * y <= by * by + 1)
            .collect();
        let (columns, rows) = (self.columns as isize, self.rows as isize);
        Self::new(self.columns, self.rows, |i| {
            let (x, y) = (i as isize % columns, i as isize / columns);
            disc.iter().any(|[dx, dy]| {
                let (x, y) = (x + dx, y + dy);
                (0..columns).contains(&x)
                    && (0..rows).contains(&y)
                    && self.inside[(y * columns + x) as usize]
            })
        })
    }

    fn inverted(&self) -> Self {
        Self::new(self.columns, self.rows, |i| !self.has(i))
    }

    /// Every connected part: the numbers of its cells.
    fn parts(&self) -> Vec<Vec<usize>> {
        let mut seen = vec![false; self.inside.len()];
        let mut parts = Vec::new();
        for start in 0..self.inside.len() {
            if seen[start] || !self.inside[start] {
                continue;
            }
            seen[start] = true;
            let mut part = vec![start];
            let mut next = 0;
            while let Some(&i) = part.get(next) {
                next += 1;
                for j in self.beside(i) {
                    if self.inside[j] && !seen[j] {
                        seen[j] = true;
                        part.push(j);
                    }
                }
            }
            parts.push(part);
        }
        parts
    }

    fn beside(&self, i: usize) -> impl Iterator<Item = usize> {
        let (columns, rows) = (self.columns, self.rows);
        let (x, y) = (i % columns, i / columns);
        [
            (x > 0).then(|| i - 1),
            (x + 1 < columns).then_some(i + 1),
            (y > 0).then(|| i - columns),
            (y + 1 < rows).then_some(i + columns),
        ]
        .into_iter()
        .flatten()
    }

    fn of(&self, cells: impl IntoIterator<Item = usize>) -> Self {
        let mut inside = vec![false; self.inside.len()];
        for i in cells {
            inside[i] = true;
        }
        Self {
            columns: self.columns,
            rows: self.rows,
            inside,
        }
    }

    /// Without connected parts of fewer than `fewest` cells.
    pub fn without_specks(&self, fewest: usize) -> Self {
        let parts = self.parts().into_iter().filter(|p| p.len() >= fewest);
        self.of(parts.flatten())
    }

    /// The largest connected part alone.
    pub fn largest(&self) -> Self {
        let largest = self.parts().into_iter().max_by_key(Vec::len);
        self.of(largest.into_iter().flatten())
    }

    /// The surface with its holes filled.
    pub fn filled(&self) -> Self {
        let outside = self.inverted();
        let at_rim = |i: &usize| {
            let (x, y) = (i % self.columns, i / self.columns);
            x == 0 || y == 0 || x + 1 == self.columns || y + 1 == self.rows
        };
        let holes = outside
            .parts()
            .into_iter()
            .filter(|part| !part.iter().any(at_rim));
        self.or(&self.of(holes.flatten()))
    }

    /// The cells whose middles lie in the convex hull of the surface.
    pub fn hull(&self) -> Option<Self> {
        let mut corners: Vec<Point> = (0..self.inside.len())
            .filter(|&i| self.inside[i])
            .flat_map(|i| {
                let (x, y) = ((i % self.columns) as f64, (i / self.columns) as f64);
                [[x, y], [x + 1.0, y], [x, y + 1.0], [x + 1.0, y + 1.0]]
            })
            .collect();
        if corners.is_empty() {
            return None;
        }
        corners.sort_by(|a, b| a[0].total_cmp(&b[0]).then(a[1].total_cmp(&b[1])));
        let mut hull = half_hull(corners.iter());
        hull.extend(half_hull(corners.iter().rev()));
        Some(Self::new(self.columns, self.rows, |i| {
            let middle = [
                (i % self.columns) as f64 + 0.5,
                (i / self.columns) as f64 + 0.5,
            ];
            contains(&hull, middle)
        }))
    }

    /// An outline inside the surface: of each row its longest run, from top to
    /// bottom and back. In cells; at most two corners a row.
    pub fn outline(&self) -> Vec<Point> {
        let mut left = Vec::new();
        let mut right = Vec::new();
        for row in 0..self.rows {
            let Some((from, to)) = self.longest_run(row) else {
                continue;
            };
            let y = row as f64 + 0.5;
            left.push([from as f64 + 0.5, y]);
            right.push([to as f64 + 0.5, y]);
        }
        left.into_iter().chain(right.into_iter().rev()).collect()
    }

    /// First and last cell of the longest run of a row.
    fn longest_run(&self, row: usize) -> Option<(usize, usize)> {
        let mut best: Option<(usize, usize)> = None;
        let mut start = None;
        for x in 0..=self.columns {
            let inside = x < self.columns && self.inside[row * self.columns + x];
            match (inside, start) {
                (true, None) => start = Some(x),
                (false, Some(from)) => {
                    if best.is_none_or(|(a, b)| x - 1 - from > b - a) {
                        best = Some((from, x - 1));
                    }
                    start = None;
                }
                _ => {}
            }
        }
        best
    }
}

/// One side of a convex hull of points in order (Andrew's monotone chain), without its last point.
fn half_hull<'a>(points: impl Iterator<Item = &'a Point>) -> Vec<Point> {
    let mut hull: Vec<Point> = Vec::new();
    for &p in points {
        while let [.., a, b] = hull[..] {
            let turn = (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]);
            if turn > 0.0 {
                break;
            }
            hull.pop();
        }
        hull.push(p);
    }
    hull.pop();
    hull
}

#[cfg(test)]
mod tests {
    use super::*;

    fn drawn(rows: &[&str]) -> Cells {
        let text: Vec<u8> = rows.concat().into_bytes();
        Cells::new(rows[0].len(), rows.len(), |i| text[i] == b'#')
    }

    #[test]
    fn threads_go_and_holes_fill() {
        let piece = drawn(&[
            "..........",
            "..#####...",
            "..##.##.#.",
            "..#####..#",
            "..#####...",
            "..........",
        ]);
        assert_eq!(piece.filled().count(), 5 * 4 + 2);
        assert_eq!(piece.filled().eroded(1).count(), 3 * 2);
        assert_eq!(piece.largest().count(), 19);
        assert_eq!(piece.without_specks(2).count(), 19);
    }

    #[test]
    fn a_surface_goes_on_beyond_the_raster() {
        let full = Cells::new(5, 4, |_| true);
        assert_eq!(full.eroded(2).count(), 20);
    }

    #[test]
    fn the_hull_of_two_bands_holds_what_lies_between() {
        let bands = drawn(&["#####", ".....", ".....", "#####"]);
        assert_eq!(bands.hull().unwrap().count(), 20);
        assert!(drawn(&["....", "...."]).hull().is_none());
    }

    #[test]
    fn an_outline_follows_the_runs() {
        let outline = drawn(&["....", ".##.", ".##."]).outline();
        assert_eq!(outline, [[1.5, 1.5], [1.5, 2.5], [2.5, 2.5], [2.5, 1.5]]);
    }
}
