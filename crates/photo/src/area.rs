//! The pixels inside an outline.

use crate::Point;

/// The pixels of a polygon, as runs by row.
pub(crate) struct Mask {
    left: usize,
    top: usize,
    width: usize,
    height: usize,
    inside: Vec<bool>,
    /// Pixels the outline would hold were the photo large enough.
    pub wanted: f64,
}

impl Mask {
    /// The pixels whose middles lie inside (even-odd rule); none where the
    /// outline is no outline or wholly outside the photo.
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
        let mut mask = Self {
            left,
            top,
            width,
            height,
            inside: vec![false; width * height],
            wanted: shoelace(polygon).abs(),
        };
        mask.fill(polygon);
        (mask.count() > 0).then_some(mask)
    }

    fn fill(&mut self, polygon: &[Point]) {
        let mut crossings = Vec::new();
        for row in 0..self.height {
            let y = (self.top + row) as f64 + 0.5;
            crossings.clear();
            for (i, a) in polygon.iter().enumerate() {
                let b = polygon[(i + 1) % polygon.len()];
                if (a[1] <= y) != (b[1] <= y) {
                    crossings.push(a[0] + (y - a[1]) / (b[1] - a[1]) * (b[0] - a[0]));
                }
            }
            crossings.sort_by(f64::total_cmp);
            for pair in crossings.chunks_exact(2) {
                let first = (pair[0] - 0.5).ceil().max(self.left as f64) as usize;
                let end = ((pair[1] - 0.5).ceil().max(0.0) as usize).min(self.left + self.width);
                for x in first..end {
                    self.inside[row * self.width + x - self.left] = true;
                }
            }
        }
    }

    /// The mask without a rim of `rim` pixels, where cloth meets ground.
    pub fn eroded(mut self, rim: usize) -> Self {
        for _ in 0..rim {
            let before = self.inside.clone();
            let at = |x: isize, y: isize| {
                x >= 0
                    && y >= 0
                    && (x as usize) < self.width
                    && (y as usize) < self.height
                    && before[y as usize * self.width + x as usize]
            };
            for y in 0..self.height {
                for x in 0..self.width {
                    let (xi, yi) = (x as isize, y as isize);
                    let kept = at(xi, yi)
                        && at(xi - 1, yi)
                        && at(xi + 1, yi)
                        && at(xi, yi - 1)
                        && at(xi, yi + 1);
                    self.inside[y * self.width + x] = kept;
                }
            }
        }
        self
    }

    /// The mask without the pixels that `keep` says no to, given x and y.
    pub fn only(&self, keep: impl Fn(usize, usize) -> bool) -> Self {
        let place = |i: usize| (self.left + i % self.width, self.top + i / self.width);
        let kept = self.inside.iter().enumerate().map(|(i, &inside)| {
            let (x, y) = place(i);
            inside && keep(x, y)
        });
        Self {
            inside: kept.collect(),
            ..*self
        }
    }

    /// How many pixels it holds.
    pub fn count(&self) -> usize {
        self.inside.iter().filter(|&&inside| inside).count()
    }

    /// Calls `visit` with x and y of each pixel.
    pub fn each(&self, mut visit: impl FnMut(usize, usize)) {
        for row in 0..self.height {
            for column in 0..self.width {
                if self.inside[row * self.width + column] {
                    visit(self.left + column, self.top + row);
                }
            }
        }
    }

    /// The longer side of the box around it, pixels.
    pub fn reach(&self) -> usize {
        self.width.max(self.height)
    }
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

    #[test]
    fn what_is_outside_is_no_mask() {
        let away = [[-20.0, -20.0], [-10.0, -20.0], [-10.0, -10.0]];
        assert!(Mask::of(&away, 100, 100).is_none());
        assert!(Mask::of(&[[0.0, 0.0], [f64::NAN, 1.0], [2.0, 2.0]], 9, 9).is_none());
        assert!(Mask::of(&[[0.0, 0.0], [5.0, 5.0]], 9, 9).is_none());
    }

    proptest! {
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
