//! Sums of light over square cells of an area.

use std::ops::Range;

use crate::area::Mask;

/// Sum over the pixels of a cell.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub(super) struct Sum {
    pub light: [f64; 3],
    pub pixels: u64,
}

/// Cells by row and column over the photo. Pixels come line by line, so those of one
/// cell that follow each other are summed before the cell is looked up.
pub(super) struct Sums {
    size: usize,
    /// The first cell's row and column.
    first: [usize; 2],
    columns: usize,
    cells: Vec<Sum>,
    /// The cell being summed: its pixels' rows and columns.
    open: [Range<usize>; 2],
    sum: Sum,
}

impl Sums {
    /// Cells of `size` pixels a side over the pixels of a mask.
    pub fn new(size: usize, mask: &Mask) -> Self {
        let (low, high) = mask.bounds();
        let [low, high] = [low, high].map(|[x, y]| [y / size, x / size]);
        let [rows, columns] = [0, 1].map(|k: usize| high[k] - low[k] + 1);
        Self {
            size,
            first: low,
            columns,
            cells: vec![Sum::default(); rows * columns],
            open: [0..0, 0..0],
            sum: Sum::default(),
        }
    }

    /// Adds the light of a pixel of the mask.
    pub fn add(&mut self, x: usize, y: usize, light: [f64; 3]) {
        if !(self.open[0].contains(&y) && self.open[1].contains(&x)) {
            self.close();
            self.open = [y, x].map(|place| {
                let first = place - place % self.size;
                first..first + self.size
            });
        }
        for (sum, light) in self.sum.light.iter_mut().zip(light) {
            *sum += light;
        }
        self.sum.pixels += 1;
    }

    /// Row, column and sum of every cell that got a pixel.
    pub fn finish(mut self) -> impl Iterator<Item = ([usize; 2], Sum)> {
        self.close();
        let ([row, column], columns) = (self.first, self.columns);
        let place = move |i: usize| [row + i / columns, column + i % columns];
        let all = self.cells.into_iter().enumerate();
        all.filter(|(_, sum)| sum.pixels > 0)
            .map(move |(i, sum)| (place(i), sum))
    }

    fn close(&mut self) {
        let sum = std::mem::take(&mut self.sum);
        if sum.pixels == 0 {
            return;
        }
        let [row, column] = [0, 1].map(|k| self.open[k].start / self.size - self.first[k]);
        let cell = &mut self.cells[row * self.columns + column];
        for (all, light) in cell.light.iter_mut().zip(sum.light) {
            *all += light;
        }
        cell.pixels += sum.pixels;
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_pixel_lands_in_its_cell() {
        let square = [[1.0, 0.0], [10.0, 0.0], [10.0, 6.0], [1.0, 6.0]];
        let mask = Mask::of(&square, 20, 20).unwrap();
        let mut sums = Sums::new(4, &mask);
        // A gap in the row, as round areas and shining pixels leave.
        mask.each(|x, y| {
            if x != 5 {
                sums.add(x, y, [1.0, x as f64, y as f64]);
            }
        });
        let cells: Vec<([usize; 2], Sum)> = sums.finish().collect();
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
        assert_eq!(cells[3].1.light, [6.0, 12.0, 27.0]);
    }
}
