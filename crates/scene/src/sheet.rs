//! A printed sheet lying under chart and pieces.

use crate::Reflectance;

/// A printed sheet of paper on the table. Everything else lies on it.
#[derive(Debug, Clone, PartialEq)]
pub struct Sheet {
    /// Its width, mm.
    pub width_mm: f64,
    /// Its height, mm.
    pub height_mm: f64,
    /// Its middle on the table, mm.
    pub middle_mm: [f64; 2],
    /// Turn about its middle, clockwise, degrees.
    pub turn_deg: f64,
    /// The printed rectangles: x, y, width and height in mm from its upper left corner.
    pub dark: Vec<[f64; 4]>,
    /// What bare paper sends back.
    pub paper: Reflectance,
    /// What the ink sends back.
    pub ink: Reflectance,
}

impl Sheet {
    /// A sheet of office paper in the middle of the table, printed with the given
    /// rectangles. Such paper is brightened: a little bluish, and dull at the
    /// violet end.
    pub fn printed([width_mm, height_mm]: [f64; 2], dark: Vec<[f64; 4]>) -> Self {
        let paper = |nm: f64| {
            let violet_end = 0.25 * (-((nm - 380.0) / 25.0).powi(2)).exp();
            let brightener = 0.05 * (-((nm - 445.0) / 25.0).powi(2)).exp();
            0.845 + 0.00003 * (nm - 550.0) + brightener - violet_end
        };
        Self {
            width_mm,
            height_mm,
            middle_mm: [0.0, 0.0],
            turn_deg: 0.0,
            dark,
            paper: Reflectance::from_fn(paper),
            ink: Reflectance::flat(0.045),
        }
    }

    /// The table's place (mm) of a point of the sheet (mm from its upper left corner).
    pub fn on_table(&self, point: [f64; 2]) -> [f64; 2] {
        let (sin, cos) = self.turn_deg.to_radians().sin_cos();
        let x = point[0] - self.width_mm / 2.0;
        let y = point[1] - self.height_mm / 2.0;
        [
            self.middle_mm[0] + x * cos - y * sin,
            self.middle_mm[1] + x * sin + y * cos,
        ]
    }

    /// Its corners on the table, mm, clockwise from its upper left one.
    pub(crate) fn corners_mm(&self) -> [[f64; 2]; 4] {
        let (w, h) = (self.width_mm, self.height_mm);
        [[0.0, 0.0], [w, 0.0], [w, h], [0.0, h]].map(|p| self.on_table(p))
    }

    /// The point of the sheet (mm from its upper left corner) at a place of the table.
    fn of_table(&self, point: [f64; 2]) -> [f64; 2] {
        let (sin, cos) = self.turn_deg.to_radians().sin_cos();
        let (dx, dy) = (point[0] - self.middle_mm[0], point[1] - self.middle_mm[1]);
        [
            dx * cos + dy * sin + self.width_mm / 2.0,
            dy * cos - dx * sin + self.height_mm / 2.0,
        ]
    }
}

/// The printed rectangles in strips of a few mm, so that a point is found among few.
pub(crate) struct Print<'a> {
    sheet: &'a Sheet,
    strips: Vec<Vec<[f64; 4]>>,
}

/// Height of a strip, mm.
const STRIP_MM: f64 = 1.0;

impl<'a> Print<'a> {
    pub(crate) fn of(sheet: &'a Sheet) -> Self {
        let count = (sheet.height_mm / STRIP_MM).ceil().max(1.0) as usize;
        let mut strips = vec![Vec::new(); count];
        for rect in &sheet.dark {
            let first = (rect[1] / STRIP_MM).max(0.0) as usize;
            let last = ((rect[1] + rect[3]) / STRIP_MM).max(0.0) as usize;
            for strip in strips.iter_mut().take(last + 1).skip(first) {
                strip.push(*rect);
            }
        }
        Self { sheet, strips }
    }

    /// Whether there is ink at a place of the table (mm) inside the sheet.
    pub(crate) fn is_dark(&self, place: [f64; 2]) -> bool {
        let [x, y] = self.sheet.of_table(place);
        let strip = self.strips.get((y / STRIP_MM).max(0.0) as usize);
        strip
            .into_iter()
            .flatten()
            .any(|[left, top, width, height]| {
                (*left..left + width).contains(&x) && (*top..top + height).contains(&y)
            })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn sheet_and_table_are_each_other_s_inverse() {
        let mut sheet = Sheet::printed([210.0, 297.0], vec![[10.0, 20.0, 5.0, 0.5]]);
        sheet.turn_deg = 33.0;
        sheet.middle_mm = [12.0, -7.0];
        let back = sheet.of_table(sheet.on_table([10.2, 20.3]));
        assert!((back[0] - 10.2).hypot(back[1] - 20.3) < 1e-9);
        let print = Print::of(&sheet);
        assert!(print.is_dark(sheet.on_table([10.2, 20.3])));
        assert!(!print.is_dark(sheet.on_table([10.2, 20.6])));
        assert!(!print.is_dark(sheet.on_table([300.0, 20.3])));
    }

    #[test]
    fn office_paper_is_white_and_not_quite_neutral() {
        // From memory: brightened office paper lies near L* 93 to 95, b* -1 to -6.
        let [l, _, b] = Sheet::printed([1.0, 1.0], Vec::new()).paper.lab_d65_10();
        assert!(
            (92.0..96.0).contains(&l) && (-6.0..-0.5).contains(&b),
            "{l} {b}"
        );
    }
}
