//! Sums of light over square cells of an area.

use std::collections::BTreeMap;

/// Sum over the pixels of a cell.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub(super) struct Sum {
    pub light: [f64; 3],
    pub pixels: u64,
}

/// Cells by row and column over the photo. Pixels come row by row, so those of one
/// row in one cell are summed before the cell is looked up.
pub(super) struct Sums {
    size: usize,
    cells: BTreeMap<[usize; 2], Sum>,
    row: usize,
    columns: std::ops::Range<usize>,
    open: Sum,
}

impl Sums {
    /// Cells of `size` pixels a side.
    pub fn new(size: usize) -> Self {
        Self {
            size,
            cells: BTreeMap::new(),
            row: 0,
            columns: 0..0,
            open: Sum::default(),
        }
    }

    /// Adds a pixel's light.
    pub fn add(&mut self, x: usize, y: usize, light: [f64; 3]) {
        if y != self.row || !self.columns.contains(&x) {
            self.close();
            let first = x - x % self.size;
            self.columns = first..first + self.size;
            self.row = y;
        }
        for (sum, light) in self.open.light.iter_mut().zip(light) {
            *sum += light;
        }
        self.open.pixels += 1;
    }

    /// The sum of every cell that got a pixel, by row and column.
    pub fn finish(mut self) -> BTreeMap<[usize; 2], Sum> {
        self.close();
        self.cells
    }

    fn close(&mut self) {
        let open = std::mem::take(&mut self.open);
        if open.pixels == 0 {
            return;
        }
        let place = [self.row / self.size, self.columns.start / self.size];
        let cell = self.cells.entry(place).or_default();
        for (sum, light) in cell.light.iter_mut().zip(open.light) {
            *sum += light;
        }
        cell.pixels += open.pixels;
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_pixel_lands_in_its_cell() {
        let mut sums = Sums::new(4);
        for y in 0..6 {
            // A gap in the row, as round areas and shining pixels leave.
            for x in (1..10).filter(|x| *x != 5) {
                sums.add(x, y, [1.0, x as f64, y as f64]);
            }
        }
        let cells = sums.finish();
        let counts: Vec<([usize; 2], u64)> = cells.iter().map(|(k, s)| (*k, s.pixels)).collect();
        let expected = [
            ([0, 0], 12),
            ([0, 1], 12),
            ([0, 2], 8),
            ([1, 0], 6),
            ([1, 1], 6),
            ([1, 2], 4),
        ];
        assert_eq!(counts, expected);
        assert_eq!(cells[&[1, 0]].light, [6.0, 12.0, 27.0]);
    }
}
