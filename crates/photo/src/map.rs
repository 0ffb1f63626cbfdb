//! Where on the photo lies what a reading found: patches, light, troubled spots.

use serde::{Deserialize, Serialize};

use crate::{
    Point,
    chart::{self, Layout},
    light::Light,
};

/// Where on the photo lies what a reading found, to be drawn over it.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
pub struct PhotoMap {
    /// The chart's patches in its order, each by the part of it that was looked at.
    pub patches: Vec<PatchPlace>,
    /// How much light falls where.
    pub light: LightGrid,
    /// Parts of areas whose pixels are at an end of the scale, or shine.
    pub spots: Vec<Spot>,
    /// The corners of the board's sheet: upper left, upper right, lower right, lower
    /// left as it is printed, pixels; none without a board.
    pub board: Option<[Point; 4]>,
}

/// Where a patch of the chart lies.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct PatchPlace {
    /// Corners of the part of it that was looked at, pixels.
    pub corners: [Point; 4],
    /// Whether the photo was corrected by it; it was left aside otherwise.
    pub is_used: bool,
}

/// Light at the crossings of an even grid that reaches from edge to edge of the photo.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
pub struct LightGrid {
    /// Crossings from the left edge to the right one.
    pub columns: usize,
    /// Crossings from the upper edge to the lower one.
    pub rows: usize,
    /// Light of the green channel as a multiple of that in the chart's middle, row by row.
    pub values: Vec<f64>,
}

/// A part of an area with pixels that tell no colour.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Spot {
    /// The name that the caller gave the area.
    pub area: String,
    /// What is the matter there.
    pub trouble: Trouble,
    /// Its upper left and its lower right corner, pixels.
    pub corners: [Point; 2],
    /// The share of its pixels in trouble, 0 to 1.
    pub share: f64,
}

/// What may be the matter with pixels.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Trouble {
    /// At the upper end of the scale, and left out.
    BurntOut,
    /// Far brighter than the cloth around, and left out.
    Shining,
    /// With a channel at 0: deeper than the file can hold. They stay in.
    AtZero,
}

impl LightGrid {
    /// Crossings along the longer and the shorter side.
    const CROSSINGS: [usize; 2] = [19, 14];

    /// The light over a photo of so many pixels.
    pub(crate) fn of(light: &Light, width_px: usize, height_px: usize) -> Self {
        let [long, short] = Self::CROSSINGS;
        let (columns, rows) = if width_px >= height_px {
            (long, short)
        } else {
            (short, long)
        };
        let at = |k: usize, count: usize, side: usize| k as f64 * side as f64 / (count - 1) as f64;
        let values = (0..rows)
            .flat_map(|row| (0..columns).map(move |column| (row, column)))
            .map(|(row, column)| {
                let place = [at(column, columns, width_px), at(row, rows, height_px)];
                rounded(light.at(place)[1], 1000.0)
            })
            .collect();
        Self {
            columns,
            rows,
            values,
        }
    }
}

/// The patches of the chart at `corners`; `misses` has none for patches left aside.
pub(crate) fn patches(
    corners: [Point; 4],
    columns: usize,
    rows: usize,
    misses: &[Option<[f64; 3]>],
) -> Vec<PatchPlace> {
    let quads = chart::patches(corners, columns, rows).unwrap_or_default();
    quads
        .into_iter()
        .zip(misses)
        .map(|(quad, miss)| PatchPlace {
            corners: quad.map(place),
            is_used: miss.is_some(),
        })
        .collect()
}

/// Columns and rows of a chart that photos were read by.
pub(crate) fn columns_and_rows(reference: &crate::ChartReference) -> [usize; 2] {
    Layout::of(reference).map_or([0, 0], |layout| [layout.columns(), layout.rows()])
}

/// A place to a tenth of a pixel, as fine as it is ever drawn.
pub(crate) fn place(point: Point) -> Point {
    point.map(|v| rounded(v, 10.0))
}

fn rounded(value: f64, steps: f64) -> f64 {
    (value * steps).round() / steps
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn light_is_told_from_edge_to_edge() {
        let light = Light::even([300.0, 200.0], 600, 400).with_plane([0.6, 0.0], [[0.0; 2]; 2]);
        let grid = LightGrid::of(&light, 600, 400);
        assert_eq!((grid.columns, grid.rows, grid.values.len()), (19, 14, 266));
        // Half the longer side to either side of the chart's middle: exp(0.3) and its inverse.
        assert!((grid.values[0] - (-0.3f64).exp()).abs() < 1e-3);
        assert!((grid.values[18] - 0.3f64.exp()).abs() < 1e-3);
        let tall = LightGrid::of(&light, 400, 600);
        assert_eq!((tall.columns, tall.rows), (14, 19));
    }

    #[test]
    fn patches_left_aside_are_told_apart() {
        let corners = [[0.0, 0.0], [600.0, 0.0], [600.0, 400.0], [0.0, 400.0]];
        let mut misses = vec![Some([0.0; 3]); 24];
        misses[3] = None;
        let patches = patches(corners, 6, 4, &misses);
        assert_eq!(patches.len(), 24);
        assert!(
            patches
                .iter()
                .enumerate()
                .all(|(k, p)| p.is_used == (k != 3))
        );
    }
}
