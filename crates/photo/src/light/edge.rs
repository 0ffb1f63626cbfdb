//! The straight edge of a shadow.

use crate::Point;

/// A straight edge with a rim, as of the shadow of somebody who stands in the light.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Edge {
    /// The way across it: 0 to the right, 90 downwards.
    pub towards_deg: f64,
    /// How far it lies that way from the photo's corner, pixels.
    pub at_px: f64,
    /// How wide its rim is, from a tenth to nine tenths of the step, pixels.
    pub rim_px: f64,
}

/// How far the edge's place may be off, rims, and the rim's width, a logarithm.
const PLACE_SD: f64 = 0.12;
const RIM_SD: f64 = 0.25;

impl Edge {
    /// The share of the step that is made at a place, 0 to 1.
    pub fn at(&self, place: Point) -> f64 {
        1.0 / (1.0 + (-self.rims_beyond(place)).exp())
    }

    /// How far a place lies beyond it, pixels.
    pub fn beyond_px(&self, place: Point) -> f64 {
        let (sin, cos) = self.towards_deg.to_radians().sin_cos();
        cos * place[0] + sin * place[1] - self.at_px
    }

    /// What the logistic curve is taken of: it goes from a tenth to nine tenths within
    /// 2 ln 9.
    fn rims_beyond(&self, place: Point) -> f64 {
        2.0 * 9f64.ln() * self.beyond_px(place) / self.rim_px
    }

    /// By how much that share is off where the edge is by a standard deviation: by its
    /// place, and by its rim.
    pub fn doubt(&self, place: Point) -> [f64; 2] {
        let (share, beyond) = (self.at(place), self.rims_beyond(place));
        let slope = share * (1.0 - share);
        [2.0 * 9f64.ln() * PLACE_SD * slope, RIM_SD * beyond * slope]
    }

    /// The edges a step to either side of it: turned, moved, and of another rim.
    pub fn beside(&self, turn_deg: f64, move_px: f64, widen: f64) -> [Self; 6] {
        let [turn, shift] = [turn_deg, move_px];
        [
            Self {
                towards_deg: self.towards_deg - turn,
                ..*self
            },
            Self {
                towards_deg: self.towards_deg + turn,
                ..*self
            },
            Self {
                at_px: self.at_px - shift,
                ..*self
            },
            Self {
                at_px: self.at_px + shift,
                ..*self
            },
            Self {
                rim_px: self.rim_px / widen,
                ..*self
            },
            Self {
                rim_px: self.rim_px * widen,
                ..*self
            },
        ]
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const EDGE: Edge = Edge {
        towards_deg: 90.0,
        at_px: 500.0,
        rim_px: 200.0,
    };

    #[test]
    fn a_step_is_made_from_a_tenth_to_nine_tenths_within_the_rim() {
        for (y, share) in [(400.0, 0.1), (500.0, 0.5), (600.0, 0.9)] {
            assert!((EDGE.at([77.0, y]) - share).abs() < 1e-9, "{y}");
        }
    }

    #[test]
    fn doubt_is_how_the_share_changes_as_the_edge_does() {
        for y in [420.0, 500.0, 560.0] {
            let here = EDGE.at([0.0, y]);
            let small = 1e-4;
            let moved = Edge {
                at_px: EDGE.at_px - small * PLACE_SD * EDGE.rim_px,
                ..EDGE
            };
            let widened = Edge {
                rim_px: EDGE.rim_px * (-small * RIM_SD).exp(),
                ..EDGE
            };
            for (other, doubt) in [moved, widened].into_iter().zip(EDGE.doubt([0.0, y])) {
                let change = (other.at([0.0, y]) - here) / small;
                assert!((change - doubt).abs() < 1e-3, "{y} {change} {doubt}");
            }
        }
    }
}
