//! The outline of a hand at the edge of the photo.

use crate::{Hand, camera::Seen};

/// Fingers and palm of a hand as strokes with round ends.
pub(crate) struct HandShape {
    strokes: Vec<Stroke>,
    /// Left, top, right and bottom, px.
    bounds: [f64; 4],
    face: Seen,
}

struct Stroke {
    from: [f64; 2],
    to: [f64; 2],
    radius: f64,
}

impl HandShape {
    pub(crate) fn new(hand: &Hand, size: [f64; 2], face: Seen) -> Self {
        /// Fingers: place across the palm, and how far they fall short of the
        /// longest; in palms.
        const FINGERS: [[f64; 2]; 4] = [[-0.36, 0.16], [-0.13, 0.0], [0.11, 0.04], [0.35, 0.25]];
        let longest = size[0].max(size[1]);
        let (reach, palm) = (hand.reach * longest, hand.palm * longest);
        let (sin, cos) = hand.towards_deg.to_radians().sin_cos();
        let edge = [hand.at[0] * size[0], hand.at[1] * size[1]];
        // From the longest fingertip backwards.
        let place = |across: f64, back: f64| {
            let (across, along) = (across * palm, reach - back * palm);
            [
                edge[0] + along * cos - across * sin,
                edge[1] + along * sin + across * cos,
            ]
        };
        let radius = 0.112;
        let mut strokes: Vec<Stroke> = FINGERS
            .iter()
            .map(|[across, short]| Stroke {
                from: place(across * 0.85, 1.0),
                to: place(across * 1.1, short + radius),
                radius: radius * palm,
            })
            .collect();
        strokes.push(Stroke {
            from: place(0.0, 3.0),
            to: place(0.0, 1.22),
            radius: 0.5 * palm,
        });
        let side = |k: usize, sign: f64| {
            let ends = strokes
                .iter()
                .flat_map(|s| [(s.from, s.radius), (s.to, s.radius)]);
            ends.map(|(p, r)| sign * p[k] + r)
                .fold(f64::NEG_INFINITY, f64::max)
                * sign
        };
        let bounds = [side(0, -1.0), side(1, -1.0), side(0, 1.0), side(1, 1.0)];
        Self {
            strokes,
            bounds,
            face,
        }
    }

    /// The skin at a point of the photo (px) under a share of the second light;
    /// None beside the hand.
    pub(crate) fn at(&self, point: [f64; 2], share: f64) -> Option<[f64; 3]> {
        let [left, top, right, bottom] = self.bounds;
        if !(left..right).contains(&point[0]) || !(top..bottom).contains(&point[1]) {
            return None;
        }
        // Rounded like a cylinder: the nearest stroke's middle is brightest.
        let height = |s: &Stroke| {
            let (dx, dy) = (s.to[0] - s.from[0], s.to[1] - s.from[1]);
            let (px, py) = (point[0] - s.from[0], point[1] - s.from[1]);
            let along = ((px * dx + py * dy) / (dx * dx + dy * dy)).clamp(0.0, 1.0);
            let off = (px - along * dx).hypot(py - along * dy) / s.radius;
            1.0 - off * off
        };
        let highest = self.strokes.iter().map(height).fold(0.0, f64::max);
        (highest > 0.0).then(|| {
            let shade = 0.5 + 0.5 * highest.sqrt();
            self.face.under(share).map(|value| value * shade)
        })
    }
}
