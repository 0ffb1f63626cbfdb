//! The edge of a shadow that lies across the photo.

use nalgebra::{Cholesky, DMatrix, DVector, Dyn};

use super::tiles::Tiles;
use crate::Point;

/// A straight edge with a soft rim, as that of a window's frame or of somebody who
/// stands in the light.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Edge {
    /// The way across it: 0 to the right, 90 downwards.
    towards_deg: f64,
    /// How far it lies that way from the photo's corner, pixels.
    at_px: f64,
    /// How wide its rim is, from a tenth to nine tenths of the step, pixels.
    rim_px: f64,
}

/// Standard deviation of the step, a logarithm.
pub(super) const USUAL_STEP: f64 = 0.3;
/// Ways across and places that are tried, and rims in longer sides; three times as many
/// find the same.
const WAYS: usize = 8;
const PLACES: usize = 11;
const RIMS: [f64; 3] = [0.08, 0.17, 0.35];
/// The finest rim that neighbourhoods show, longer sides.
const FINEST_RIM: f64 = 0.02;
/// How often the best is then looked at more finely, with steps half as wide each time.
const FINER: usize = 4;
/// Least share of the step that has to show between neighbourhoods of the ground.
const LEAST_SHOWN: f64 = 0.5;
/// How much likelier the light has to be with an edge than without, twice a logarithm:
/// of hundreds of edges one fits any ground by chance.
const LEAST_GAIN: f64 = 20.0;

impl Edge {
    /// The share of the step that is made at a place, 0 to 1.
    pub fn at(&self, place: Point) -> f64 {
        let (sin, cos) = self.towards_deg.to_radians().sin_cos();
        let beyond = cos * place[0] + sin * place[1] - self.at_px;
        // The logistic curve goes from a tenth to nine tenths within 2 ln 9.
        1.0 / (1.0 + (-2.0 * 9f64.ln() * beyond / self.rim_px).exp())
    }

    /// The likeliest edge in the light of some ground on a photo of such a size, whose
    /// figures have the `covariance` without one; none where light is hardly likelier
    /// with it.
    pub fn likely(tiles: &Tiles, covariance: DMatrix<f64>, size_px: [usize; 2]) -> Option<Self> {
        let search = Search::new(tiles, covariance, size_px)?;
        let mut best = Found {
            gain: LEAST_GAIN,
            edge: None,
        };
        let half_px = size_px.map(|side| side as f64 / 2.0);
        for way in 0..WAYS {
            let towards_deg = way as f64 * 180.0 / WAYS as f64;
            let (sin, cos) = towards_deg.to_radians().sin_cos();
            let middle_px = cos * half_px[0] + sin * half_px[1];
            let reach_px = cos.abs() * half_px[0] + sin.abs() * half_px[1];
            for place in 0..PLACES {
                let along = 2.0 * (place as f64 + 0.5) / PLACES as f64 - 1.0;
                for rim in RIMS {
                    let edge = Self {
                        towards_deg,
                        at_px: middle_px + along * reach_px,
                        rim_px: rim * search.unit_px,
                    };
                    search.compare(edge, &mut best);
                }
            }
        }
        search.refine(&mut best);
        best.edge
    }
}

/// The likeliest edge so far.
struct Found {
    gain: f64,
    edge: Option<Edge>,
}

/// The ground's light as it would be without an edge.
struct Search<'a> {
    tiles: &'a Tiles,
    root: Cholesky<f64, Dyn>,
    /// The light, such that without an edge it were chance of variance 1.
    plain: DVector<f64>,
    /// The photo's longer side.
    unit_px: f64,
}

impl<'a> Search<'a> {
    fn new(tiles: &'a Tiles, covariance: DMatrix<f64>, size_px: [usize; 2]) -> Option<Self> {
        let root = covariance.cholesky()?;
        let plain = root.l_dirty().solve_lower_triangular(&tiles.light())?;
        Some(Self {
            tiles,
            root,
            plain,
            unit_px: size_px[0].max(size_px[1]) as f64,
        })
    }

    /// Takes an edge that is likelier than the best.
    fn compare(&self, edge: Edge, best: &mut Found) {
        let middles = self.tiles.all.iter().map(|tile| tile.middle);
        let made = middles.map(|middle| edge.at(middle));
        let made = DVector::from_iterator(self.tiles.all.len(), made);
        if made.max() - made.min() < LEAST_SHOWN || edge.rim_px < FINEST_RIM * self.unit_px {
            return;
        }
        let Some(step) = self.root.l_dirty().solve_lower_triangular(&made) else {
            return;
        };
        // One more column of variance: the determinant lemma and the formula of Sherman
        // and Morrison (Press et al., Numerical Recipes, 2.7).
        let variance = USUAL_STEP * USUAL_STEP;
        let more = 1.0 + variance * step.norm_squared();
        let gain = variance * step.dot(&self.plain).powi(2) / more - more.ln();
        if gain > best.gain {
            *best = Found {
                gain,
                edge: Some(edge),
            };
        }
    }

    /// Looks at the best's neighbours, ever nearer.
    fn refine(&self, best: &mut Found) {
        let turn_deg = 90.0 / WAYS as f64;
        let move_px = 0.5 * self.unit_px / PLACES as f64;
        let widen: f64 = 1.4;
        for finer in 0..FINER {
            let part = 0.5f64.powi(finer as i32);
            loop {
                let (Some(from), before) = (best.edge, best.gain) else {
                    return;
                };
                for part in [-part, part] {
                    let turned = from.towards_deg + part * turn_deg;
                    let moved = from.at_px + part * move_px;
                    let widened = from.rim_px * widen.powf(part);
                    for edge in [
                        Edge {
                            towards_deg: turned,
                            ..from
                        },
                        Edge {
                            at_px: moved,
                            ..from
                        },
                        Edge {
                            rim_px: widened,
                            ..from
                        },
                    ] {
                        self.compare(edge, best);
                    }
                }
                if best.gain <= before {
                    break;
                }
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::light::{
        blocks::Block,
        surface::{Column, Square},
    };

    const SIZE_PX: [usize; 2] = [2000, 1500];
    const SIDE_PX: f64 = 27.0;

    /// Ground all over a photo, with some grain, under some light.
    fn tiles(grain: f64, light: impl Fn(Point) -> f64) -> Tiles {
        let places = (0..74 * 55).map(|i| [i % 74, i / 74].map(|k| (f64::from(k) + 0.5) * SIDE_PX));
        let blocks: Vec<Block> = places
            .map(|middle| {
                let [x, y] = middle;
                let own = grain * (x * 12.9898 + y * 78.233).sin();
                let light = light(middle) + own;
                Block {
                    place: [0, 0],
                    middle,
                    terms: Column::zeros(),
                    ln: [light; 3],
                    light,
                }
            })
            .collect();
        let ground: Vec<&Block> = blocks.iter().collect();
        Tiles::new(&ground, 2000.0 / 14.0, &Square::identity())
    }

    fn likely(tiles: &Tiles) -> Option<Edge> {
        let covariance = tiles.smooth() + tiles.alike(300.0) * (0.04 * 0.04);
        Edge::likely(tiles, covariance, SIZE_PX)
    }

    #[test]
    fn a_step_is_made_from_a_tenth_to_nine_tenths_within_the_rim() {
        let edge = Edge {
            towards_deg: 90.0,
            at_px: 500.0,
            rim_px: 200.0,
        };
        for (y, share) in [(400.0, 0.1), (500.0, 0.5), (600.0, 0.9)] {
            assert!((edge.at([77.0, y]) - share).abs() < 1e-9, "{y}");
        }
    }

    #[test]
    fn the_edge_of_a_shadow_is_found_where_it_lies() {
        for (towards_deg, at_px, rim_px) in [
            (0.0, 900.0, 150.0),
            (50.0, 1300.0, 300.0),
            (130.0, 100.0, 250.0),
        ] {
            let true_edge = Edge {
                towards_deg,
                at_px,
                rim_px,
            };
            let tiles = tiles(0.03, |place| -0.25 * true_edge.at(place));
            let found = likely(&tiles).expect("an edge");
            for place in [
                [300.0, 300.0],
                [1000.0, 750.0],
                [1700.0, 400.0],
                [900.0, 1200.0],
            ] {
                let share = |edge: Edge, place| edge.at(place) - edge.at([1000.0, 100.0]);
                let off = share(found, place).abs() - share(true_edge, place).abs();
                assert!(off.abs() < 0.12, "{true_edge:?} {found:?} {place:?}");
            }
        }
    }

    #[test]
    fn even_light_and_light_that_wanders_softly_have_no_edge() {
        assert_eq!(likely(&tiles(0.03, |_| -0.7)), None);
        let wanders = |[x, y]: Point| 0.03 * (x / 260.0).sin() * (y / 230.0).cos();
        assert_eq!(likely(&tiles(0.03, wanders)), None);
    }
}
