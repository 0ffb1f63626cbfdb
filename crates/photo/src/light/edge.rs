//! The straight edge of a shadow.

use crate::Point;

/// A straight edge with a rim, as of the shadow of somebody who stands in the light.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Edge {
    /// The way across it: right and down, of length 1.
    across: [f64; 2],
    /// How far it lies that way from the photo's corner, pixels.
    pub at_px: f64,
    /// How wide its rim is, from a tenth to nine tenths of the step, pixels.
    pub rim_px: f64,
}

/// How far the edge's place may be off, rims, and the rim's width, a logarithm.
const PLACE_SD: f64 = 0.12;
const RIM_SD: f64 = 0.25;

impl Edge {
    /// The edge across which the way leads so many degrees from the right downwards.
    pub fn new(towards_deg: f64, at_px: f64, rim_px: f64) -> Self {
        let (sin, cos) = towards_deg.to_radians().sin_cos();
        Self {
            across: [cos, sin],
            at_px,
            rim_px,
        }
    }

    /// The share of the step that is made at a place, 0 to 1.
    pub fn at(&self, place: Point) -> f64 {
        1.0 / (1.0 + (-self.rims_beyond(place)).exp())
    }

    /// How far a place lies beyond it, pixels.
    pub fn beyond_px(&self, place: Point) -> f64 {
        self.across[0] * place[0] + self.across[1] * place[1] - self.at_px
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
        let turned = |turn_deg: f64| {
            let (sin, cos) = turn_deg.to_radians().sin_cos();
            let [x, y] = self.across;
            Self {
                across: [cos * x - sin * y, sin * x + cos * y],
                ..*self
            }
        };
        let moved = |move_px: f64| Self {
            at_px: self.at_px + move_px,
            ..*self
        };
        let widened = |widen: f64| Self {
            rim_px: self.rim_px * widen,
            ..*self
        };
        [
            turned(-turn_deg),
            turned(turn_deg),
            moved(-move_px),
            moved(move_px),
            widened(1.0 / widen),
            widened(widen),
        ]
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn edge() -> Edge {
        Edge::new(90.0, 500.0, 200.0)
    }

    #[test]
    fn a_step_is_made_from_a_tenth_to_nine_tenths_within_the_rim() {
        for (y, share) in [(400.0, 0.1), (500.0, 0.5), (600.0, 0.9)] {
            assert!((edge().at([77.0, y]) - share).abs() < 1e-9, "{y}");
        }
    }

    #[test]
    fn doubt_is_how_the_share_changes_as_the_edge_does() {
        for y in [420.0, 500.0, 560.0] {
            let edge = edge();
            let here = edge.at([0.0, y]);
            let small = 1e-4;
            let moved = Edge {
                at_px: edge.at_px - small * PLACE_SD * edge.rim_px,
                ..edge
            };
            let widened = Edge {
                rim_px: edge.rim_px * (-small * RIM_SD).exp(),
                ..edge
            };
            for (other, doubt) in [moved, widened].into_iter().zip(edge.doubt([0.0, y])) {
                let change = (other.at([0.0, y]) - here) / small;
                assert!((change - doubt).abs() < 1e-3, "{y} {change} {doubt}");
            }
        }
    }
}
