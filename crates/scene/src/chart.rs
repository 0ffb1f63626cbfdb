//! The chart of 24 colours.

use crate::Reflectance;

/// The patches row by row, from the brown corner; four rows of six.
pub const PATCHES: [&str; 24] = [
    "dark skin",
    "light skin",
    "blue sky",
    "foliage",
    "blue flower",
    "bluish green",
    "orange",
    "purplish blue",
    "moderate red",
    "purple",
    "yellow green",
    "orange yellow",
    "blue",
    "green",
    "red",
    "yellow",
    "magenta",
    "cyan",
    "white 9.5",
    "neutral 8",
    "neutral 6.5",
    "neutral 5",
    "neutral 3.5",
    "black 2",
];

/// The published average spectra of the 24 patches, in the order of [`PATCHES`].
///
/// # Source
/// The averaged 24-patch set by 10 nm, as shipped by colour-science 0.4.7.
pub fn chart_spectra() -> [Reflectance; 24] {
    const TABLE: &str = include_str!("../data/chart24_spectra_10nm.csv");
    let mut spectra = [const { Reflectance::flat(0.0) }; 24];
    for (spectrum, line) in spectra.iter_mut().zip(TABLE.lines().skip(1)) {
        for (value, text) in spectrum.0.iter_mut().zip(line.split(',').skip(1)) {
            *value = text
                .parse()
                .expect("the table inside the program holds only numbers");
        }
    }
    spectra
}

/// The board around the patches.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Frame {
    /// Black card.
    Dark,
    /// Pale grey card.
    Light,
}

impl Frame {
    /// What the card sends back.
    pub(crate) const fn reflectance(self) -> Reflectance {
        match self {
            Self::Dark => Reflectance::flat(0.045),
            Self::Light => Reflectance::flat(0.74),
        }
    }
}

/// A chart on the table.
#[derive(Debug, Clone, PartialEq)]
pub struct Chart {
    /// Its middle on the table, mm.
    pub middle_mm: [f64; 2],
    /// Turn about its middle, clockwise, degrees.
    pub turn_deg: f64,
    /// Side of a patch, mm.
    pub patch_mm: f64,
    /// Gap between patches, mm; the card shows there.
    pub gap_mm: f64,
    /// Card beyond the outer patches, mm.
    pub margin_mm: f64,
    /// The card.
    pub frame: Frame,
}

impl Default for Chart {
    /// A black card with patches of 20 mm, above the middle of the table.
    fn default() -> Self {
        Self {
            middle_mm: [0.0, -50.0],
            turn_deg: 0.0,
            patch_mm: 20.0,
            gap_mm: 3.0,
            margin_mm: 6.0,
            frame: Frame::Dark,
        }
    }
}

impl Chart {
    /// Half of the width and height of the patch grid, mm.
    fn half_mm(&self) -> [f64; 2] {
        [6.0, 4.0].map(|n| (n * self.patch_mm + (n - 1.0) * self.gap_mm) / 2.0)
    }

    /// The outer corners of the patch grid on the table (mm), at the brown,
    /// bluish green, black and white patch, moved outwards by `beyond_mm`.
    pub(crate) fn corners_mm(&self, beyond_mm: f64) -> [[f64; 2]; 4] {
        let [w, h] = self.half_mm().map(|half| half + beyond_mm);
        let (sin, cos) = self.turn_deg.to_radians().sin_cos();
        [[-w, -h], [w, -h], [w, h], [-w, h]].map(|[x, y]| {
            [
                self.middle_mm[0] + x * cos - y * sin,
                self.middle_mm[1] + x * sin + y * cos,
            ]
        })
    }

    /// The patch at a point of the table (mm); None on the card and beyond it.
    pub(crate) fn patch_at(&self, point: [f64; 2]) -> Option<usize> {
        let (sin, cos) = self.turn_deg.to_radians().sin_cos();
        let (dx, dy) = (point[0] - self.middle_mm[0], point[1] - self.middle_mm[1]);
        let [w, h] = self.half_mm();
        let step = self.patch_mm + self.gap_mm;
        let column = (dx * cos + dy * sin + w) / step;
        let row = (dy * cos - dx * sin + h) / step;
        let fill = self.patch_mm / step;
        let inside = (0.0..6.0).contains(&column)
            && (0.0..4.0).contains(&row)
            && column.fract() < fill
            && row.fract() < fill;
        inside.then_some(row as usize * 6 + column as usize)
    }
}
