//! Where a pixel of the upright photo is stored.

/// The way from a place of the upright photo to its three code values.
pub(super) struct Turn {
    width: usize,
    height: usize,
    origin: isize,
    right: isize,
    down: isize,
}

impl Turn {
    /// For a picture stored with `width` and `height` pixels and an orientation.
    ///
    /// # Source
    /// CIPA DC-008 (EXIF), tag 0x0112. What isn't 1 to 8 counts as 1.
    pub fn new(orientation: u8, width: usize, height: usize) -> Self {
        let (w, h) = (width as isize, height as isize);
        let (pixel, row) = (3, 3 * w);
        let (last_in_row, last_row) = ((w - 1) * pixel, (h - 1) * row);
        let (origin, right, down) = match orientation {
            2 => (last_in_row, -pixel, row),
            3 => (last_in_row + last_row, -pixel, -row),
            4 => (last_row, pixel, -row),
            5 => (0, row, pixel),
            6 => (last_row, -row, pixel),
            7 => (last_in_row + last_row, -row, -pixel),
            8 => (last_in_row, row, -pixel),
            _ => (0, pixel, row),
        };
        let lies_on_its_side = (5..=8).contains(&orientation);
        let (width, height) = if lies_on_its_side {
            (height, width)
        } else {
            (width, height)
        };
        Self {
            width,
            height,
            origin,
            right,
            down,
        }
    }

    /// Width and height of the upright photo, pixels.
    pub const fn upright_size(&self) -> (usize, usize) {
        (self.width, self.height)
    }

    /// Whether neighbours of a row of the upright photo lie in different rows as stored.
    pub const fn is_sideways(&self) -> bool {
        self.right.unsigned_abs() > self.down.unsigned_abs()
    }

    /// Index of the first code value of a pixel of the upright photo.
    pub const fn index(&self, x: usize, y: usize) -> usize {
        (self.origin + x as isize * self.right + y as isize * self.down) as usize
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_pixel_has_its_place() {
        for orientation in 0..=9 {
            let turn = Turn::new(orientation, 5, 3);
            let (width, height) = turn.upright_size();
            let mut seen: Vec<usize> = (0..height)
                .flat_map(|y| (0..width).map(move |x| (x, y)))
                .map(|(x, y)| turn.index(x, y))
                .collect();
            seen.sort_unstable();
            let all: Vec<usize> = (0..15).map(|i| 3 * i).collect();
            assert_eq!(seen, all, "{orientation}");
        }
    }

    #[test]
    fn a_photo_on_its_side_is_turned_to_the_right() {
        // Orientation 6: the stored first column is the upright photo's top row.
        let turn = Turn::new(6, 4, 2);
        assert_eq!(turn.upright_size(), (2, 4));
        assert_eq!(turn.index(1, 0), 0);
        assert_eq!(turn.index(0, 0), 3 * 4);
    }
}
