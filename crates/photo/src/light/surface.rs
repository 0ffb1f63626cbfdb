//! The surface that light is laid through: its terms, and how large each usually is.

use nalgebra::{SMatrix, SVector};

use super::edge::Edge;
use crate::Point;

/// Terms of the surface: two that slope, three that bend, four that twist, the lens's
/// own darkening of the corners, and the step at a shadow's edge.
pub(super) const TERMS: usize = 11;
/// How many of them, the first, slope.
pub(super) const SLOPES: usize = 2;
/// How many of them, the first, slope or bend.
const BENT: usize = 5;
/// The last but one of them.
const CORNERS: usize = TERMS - 2;
/// The last of them.
pub(super) const EDGE: usize = TERMS - 1;

/// A matrix over the terms.
pub(super) type Square = SMatrix<f64, TERMS, TERMS>;
/// A column of the terms.
pub(super) type Column = SVector<f64, TERMS>;

/// How much light usually bends, standard deviations of the logarithm per longer
/// side squared: lenses darken towards every corner alike, lamps and shadows to
/// one side.
const USUAL_FALL_OFF: f64 = 0.3;
const USUAL_BEND: f64 = 0.2;
/// How much it usually twists, per longer side to the third.
const USUAL_TWIST: f64 = 0.5;
/// How much the corners usually lose beyond that, per longer side to the fourth.
const USUAL_CORNERS: f64 = 0.5;
/// How much light usually steps at a shadow's edge, standard deviation of the logarithm.
pub(super) const USUAL_STEP: f64 = 0.3;
/// How much the colour of light may usually change, standard deviation of a
/// channel's logarithm: it slopes as a window and a lamp make it, and bends less.
const USUAL_TINT: f64 = 0.3;

/// Where places on a photo are measured from.
#[derive(Debug, Clone, Copy)]
pub(super) struct Frame {
    /// The chart's middle, where every term is 0.
    pub centre: Point,
    /// The photo's middle, about which a lens darkens.
    middle: Point,
    /// Pixels to one unit: the photo's longer side.
    pub unit_px: f64,
    /// The edge of a shadow across it.
    pub edge: Option<Edge>,
}

impl Frame {
    /// The frame of a photo of so many pixels with the chart's middle at `centre`.
    pub fn new(centre: Point, width_px: usize, height_px: usize) -> Self {
        Self {
            centre,
            middle: [width_px, height_px].map(|side| side as f64 / 2.0),
            unit_px: width_px.max(height_px) as f64,
            edge: None,
        }
    }

    /// The same across which the edge of a shadow lies.
    pub fn with_edge(self, edge: Edge) -> Self {
        Self {
            edge: Some(edge),
            ..self
        }
    }

    /// The terms at a place: x, y, x², xy, y², x³, x²y, xy², y³ from the chart's
    /// middle, the fourth power of the distance from the photo's, and the share of the
    /// step at a shadow's edge.
    ///
    /// Light that bends one way is followed by the second powers, a lamp that stands
    /// near or a shadow's soft side by the third. Lenses darken the corners by more than
    /// the second power of the distance (the cosine to the fourth power).
    pub fn terms(&self, place: Point) -> Column {
        let [u, v] = [0, 1].map(|k| (place[k] - self.centre[k]) / self.unit_px);
        let squared = |p: Point| {
            let [x, y] = [0, 1].map(|k| (p[k] - self.middle[k]) / self.unit_px);
            x * x + y * y
        };
        let (here, at_chart) = (squared(place), squared(self.centre));
        Column::from([
            u,
            v,
            u * u,
            u * v,
            v * v,
            u * u * u,
            u * u * v,
            u * v * v,
            v * v * v,
            here * here - at_chart * at_chart,
            self.edge
                .map_or(0.0, |edge| edge.at(place) - edge.at(self.centre)),
        ])
    }
}

/// Covariance of the terms where no more is known than the slopes' own.
pub(super) fn usual(slopes: [[f64; 2]; 2]) -> Square {
    let mut covariance = Square::zeros();
    for (r, row) in slopes.iter().enumerate() {
        for (c, value) in row.iter().enumerate() {
            covariance[(r, c)] = *value;
        }
    }
    for (r, c) in [(2, 2), (2, 4), (4, 2), (4, 4)] {
        covariance[(r, c)] = USUAL_FALL_OFF.powi(2);
    }
    for k in SLOPES..EDGE {
        let usual = match k {
            CORNERS => USUAL_CORNERS,
            BENT.. => USUAL_TWIST,
            _ => USUAL_BEND,
        };
        covariance[(k, k)] += usual.powi(2);
    }
    covariance
}

/// The same where there is the edge of a shadow.
pub(super) fn with_step(mut covariance: Square) -> Square {
    covariance[(EDGE, EDGE)] = USUAL_STEP.powi(2);
    covariance
}

/// Covariance of what a channel has beyond what all have: the tint of the light.
pub(super) fn usual_tint() -> Square {
    let of = |k: usize| if k < SLOPES { 1.0 } else { 0.25 };
    Square::from_diagonal(&Column::from_fn(|k, _| of(k) * USUAL_TINT.powi(2)))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Source: published, the cosine to the fourth power by which the light of a
    /// plain lens falls off (handbooks of optics); here for 28 mm before a frame of
    /// 36 mm by 27 mm, most of it corrected by the camera as telephones do.
    #[test]
    fn a_lens_that_darkens_corners_is_followed() {
        const LEFT_UNCORRECTED: f64 = 0.4;
        let frame = Frame::new([1100.0, 500.0], 2000, 1500);
        let light = |[x, y]: Point| {
            let (x, y) = ((x - 1000.0) / 2000.0, (y - 750.0) / 2000.0);
            let tangent = (x * x + y * y).sqrt() * 36.0 / 28.0;
            LEFT_UNCORRECTED * 4.0 * tangent.atan().cos().ln()
        };
        let places: Vec<Point> = (0..300)
            .map(|i| {
                [
                    f64::from(i % 20) * 100.0 + 50.0,
                    f64::from(i / 20) * 100.0 + 50.0,
                ]
            })
            .collect();
        // Without an edge its term is 0 everywhere.
        let (mut normal, mut right) = (Square::identity() * 1e-12, Column::zeros());
        for place in &places {
            let terms = frame.terms(*place);
            normal += terms * terms.transpose();
            right += terms * (light(*place) - light(frame.centre));
        }
        let fitted = normal.cholesky().unwrap().solve(&right);
        for place in &places {
            let off = frame.terms(*place).dot(&fitted) - (light(*place) - light(frame.centre));
            assert!(off.abs() < 0.01, "{place:?} {off}");
        }
    }

    #[test]
    fn light_counts_from_the_charts_middle() {
        let frame = Frame::new([1100.0, 500.0], 2000, 1500);
        assert!(frame.terms(frame.centre).iter().all(|term| *term == 0.0));
    }
}
