//! Where a shadow's edge lies on the ground, if one does.

use nalgebra::{Cholesky, DMatrix, DVector, Dyn, SMatrix, SVector};

use super::{
    blocks::Block,
    edge::Edge,
    rounds::{Ground, Rounds},
    shade::{MANY, REACH},
    surface::USUAL_STEP,
    tiles::Tiles,
};

/// How far lightness may lie off the ground's and still be the same ground in shadow or
/// out of it, a logarithm.
const MOST_STEP: f64 = 0.9;
/// Share of the blocks in the open that lies beyond a hard edge at least.
pub(super) const LEAST_BEYOND: f64 = 0.05;
/// How much light varies beside a hard edge, standard deviation of a logarithm.
const BESIDE: f64 = 0.02;
/// Ways across and places that are tried, and rims in longer sides; three times as many
/// find the same.
const WAYS: usize = 8;
const PLACES: usize = 11;
const RIMS: [f64; 3] = [0.08, 0.17, 0.35];
/// Least share of the step that has to show between neighbourhoods of the ground.
const LEAST_SHOWN: f64 = 0.5;
/// How much likelier the light has to be with an edge than without, twice a logarithm,
/// if it otherwise varied by half as much as without one: of hundreds of edges one fits
/// any ground by chance. Less than 16 takes some for edges that are none, more than 24
/// misses some, by rendered photos.
const LEAST_GAIN: f64 = 20.0;
/// Blocks within this of its rim, longer sides, tell where the edge lies.
const NEAR: f64 = 0.2;
/// So many blocks are enough, all over the photo.
const ENOUGH: usize = 800;
/// How far blocks may lie off the light beside it, a logarithm, until they count less.
const OFF: f64 = 0.03;
/// How far the best edge of all is turned (degrees) and moved (longer sides) at first, and
/// by what factor its rim is widened; then half as far, so often.
const FIRST: (f64, f64, f64) = (8.0, 0.02, 1.6);
const FINER: usize = 6;
/// No rim is finer, longer sides: blocks don't show what is.
const FINEST_RIM: f64 = 0.004;

/// The likeliest edge across the ground, which may part it from what has its colour and
/// another lightness, and the blocks of both, by number; none where light is hardly
/// likelier with one.
pub(super) fn find_edge(rounds: &Rounds<'_>, ground: &Ground) -> Option<(Edge, Vec<usize>)> {
    let all = &rounds.blocks.all;
    let mut both = rounds.of_like_colour(&ground.members, &ground.surface);
    both.retain(|&i| (all[i].light - ground.shade.at(&all[i])).abs() < MOST_STEP);
    let beyond = both.len().saturating_sub(ground.members.len()) as f64;
    let is_hard = beyond >= LEAST_BEYOND * all.len() as f64;
    if !is_hard && ground.shade.is_steady() {
        return None;
    }
    // With an edge light varies less.
    let sd = if is_hard {
        BESIDE
    } else {
        ground.shade.sd() / 2.0
    };
    let blocks: Vec<&Block> = both.iter().map(|&i| &all[i]).collect();
    let unit_px = rounds.frame.unit_px;
    let tiles = Tiles::new(&blocks, unit_px / MANY, &rounds.prior);
    let covariance = tiles.smooth() + tiles.alike(REACH * unit_px) * (sd * sd);
    let coarse = Search::new(&tiles, covariance)?.best(rounds.size_px)?;
    // Every few blocks tell it as well as all.
    let every = blocks.len().div_ceil(ENOUGH).max(1);
    let near = Near {
        blocks: blocks.into_iter().step_by(every).collect(),
        unit_px,
        off: OFF.max(tiles.grain),
    };
    Some((near.refined(coarse), both))
}

/// The ground's light by neighbourhoods as it would be without an edge.
struct Search<'a> {
    tiles: &'a Tiles,
    root: Cholesky<f64, Dyn>,
    /// The light, such that without an edge it were chance of variance 1.
    plain: DVector<f64>,
}

impl<'a> Search<'a> {
    fn new(tiles: &'a Tiles, covariance: DMatrix<f64>) -> Option<Self> {
        let root = covariance.cholesky()?;
        let plain = root.l_dirty().solve_lower_triangular(&tiles.light())?;
        Some(Self { tiles, root, plain })
    }

    /// The likeliest edge of all that are tried.
    fn best(&self, size_px: [usize; 2]) -> Option<Edge> {
        let mut best = (LEAST_GAIN, None);
        let unit_px = size_px[0].max(size_px[1]) as f64;
        let half_px = size_px.map(|side| side as f64 / 2.0);
        for way in 0..WAYS {
            let towards_deg = way as f64 * 180.0 / WAYS as f64;
            let (sin, cos) = towards_deg.to_radians().sin_cos();
            let middle_px = cos * half_px[0] + sin * half_px[1];
            let reach_px = cos.abs() * half_px[0] + sin.abs() * half_px[1];
            for place in 0..PLACES {
                let along = 2.0 * (place as f64 + 0.5) / PLACES as f64 - 1.0;
                for rim in RIMS {
                    let edge = Edge::new(towards_deg, middle_px + along * reach_px, rim * unit_px);
                    match self.gain(edge) {
                        Some(gain) if gain > best.0 => best = (gain, Some(edge)),
                        _ => {}
                    }
                }
            }
        }
        best.1
    }

    /// How much likelier the light is with an edge; none where it hardly shows.
    fn gain(&self, edge: Edge) -> Option<f64> {
        let made = self.tiles.all.iter().map(|tile| edge.at(tile.middle));
        let made = DVector::from_iterator(self.tiles.all.len(), made);
        if made.max() - made.min() < LEAST_SHOWN {
            return None;
        }
        let step = self.root.l_dirty().solve_lower_triangular(&made)?;
        // One more column of variance: the determinant lemma and the formula of Sherman
        // and Morrison (Press et al., Numerical Recipes, 2.7).
        let variance = USUAL_STEP * USUAL_STEP;
        let more = 1.0 + variance * step.norm_squared();
        Some(variance * step.dot(&self.plain).powi(2) / more - more.ln())
    }
}

/// The ground block by block, which tells where an edge lies and how wide its rim is.
struct Near<'a> {
    blocks: Vec<&'a Block>,
    unit_px: f64,
    off: f64,
}

impl Near<'_> {
    /// The edge turned, moved and widened until the blocks near it lie off least.
    fn refined(&self, edge: Edge) -> Edge {
        let (mut turn_deg, along, mut widen) = FIRST;
        let mut move_px = along * self.unit_px;
        let mut best = (self.missed(edge), edge);
        for _ in 0..FINER {
            loop {
                let before = best;
                for other in before.1.beside(turn_deg, move_px, widen) {
                    let missed = self.missed(other);
                    if missed < best.0 && other.rim_px >= FINEST_RIM * self.unit_px {
                        best = (missed, other);
                    }
                }
                if best == before {
                    break;
                }
            }
            turn_deg /= 2.0;
            move_px /= 2.0;
            widen = widen.sqrt();
        }
        best.1
    }

    /// How far blocks near an edge lie off a plane with a step there, those far off
    /// counting less (Huber).
    fn missed(&self, edge: Edge) -> f64 {
        let near = self.blocks.iter().filter_map(|block| {
            let is_near = edge.beyond_px(block.middle).abs() < NEAR * self.unit_px + edge.rim_px;
            is_near.then(|| {
                let [x, y] = block.middle.map(|v| v / self.unit_px - 0.5);
                let terms = [1.0, x, y, edge.at(block.middle)];
                (SVector::<f64, 4>::from(terms), block.light)
            })
        });
        let near: Vec<_> = near.collect();
        let mut weights = vec![1.0; near.len()];
        let mut missed = f64::INFINITY;
        for _ in 0..3 {
            let mut normal = SMatrix::<f64, 4, 4>::identity() * 1e-6;
            let mut right = SVector::<f64, 4>::zeros();
            for ((terms, light), weight) in near.iter().zip(&weights) {
                normal += terms * terms.transpose() * *weight;
                right += terms * (light * weight);
            }
            let Some(root) = normal.cholesky() else {
                return f64::INFINITY;
            };
            let fitted = root.solve(&right);
            missed = 0.0;
            for ((terms, light), weight) in near.iter().zip(&mut weights) {
                let off = (light - terms.dot(&fitted)).abs() / self.off;
                *weight = (1.0 / off).min(1.0);
                missed += if off < 1.0 {
                    off * off / 2.0
                } else {
                    off - 0.5
                };
            }
        }
        missed / near.len().max(1) as f64
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{
        Point,
        light::{
            blocks::Blocks,
            surface::{Frame, usual},
        },
    };

    const SIZE_PX: [usize; 2] = [2000, 1500];
    const SIDE_PX: f64 = 27.0;

    /// Ground of one colour all over a photo, with some grain, under some light.
    fn blocks(frame: &Frame, light: impl Fn(Point) -> f64) -> Blocks {
        let size = [74, 55];
        let places = (0..size[0] * size[1]).map(|i| [i % size[0], i / size[0]]);
        let block = |place: [usize; 2]| {
            let middle = place.map(|k| (k as f64 + 0.5) * SIDE_PX);
            let own = 0.03 * (middle[0] * 12.9898 + middle[1] * 78.233).sin();
            Block {
                place,
                middle,
                terms: frame.terms(middle),
                ln: [light(middle) + own; 3],
                light: 0.0,
            }
        };
        Blocks::new(places.map(block).collect(), size)
    }

    /// The edge that is found where the ground is known on the one side only, `lit`.
    fn found(light: impl Fn(Point) -> f64, lit: impl Fn(Point) -> bool) -> Option<Edge> {
        let frame = Frame::new([1000.0, 750.0], SIZE_PX[0], SIZE_PX[1]);
        let blocks = blocks(&frame, light);
        let rounds = Rounds {
            blocks: &blocks,
            frame: &frame,
            prior: usual([[0.09, 0.0], [0.0, 0.09]]),
            size_px: SIZE_PX,
        };
        let is_lit = |&i: &usize| lit(blocks.all[i].middle);
        let members = (0..blocks.all.len()).filter(is_lit).collect();
        let ground = rounds.followed(members).expect("ground");
        find_edge(&rounds, &ground).map(|(edge, _)| edge)
    }

    fn assert_like(found: Edge, truth: Edge, within: f64) {
        // An edge seen from its other side is the same one.
        let corner = [10.0, 10.0];
        let way = if (found.at(corner) > 0.5) == (truth.at(corner) > 0.5) {
            1.0
        } else {
            -1.0
        };
        for place in [
            [300.0, 300.0],
            [1000.0, 750.0],
            [1700.0, 400.0],
            [900.0, 1200.0],
        ] {
            let from = |edge: Edge| edge.at(place) - edge.at(corner);
            let off = way * from(found) - from(truth);
            assert!(off.abs() < within, "{truth:?} {found:?} {place:?} {off}");
        }
    }

    #[test]
    fn the_soft_edge_of_a_shadow_is_found_where_it_lies() {
        for (towards_deg, at_px, rim_px) in [(0.0, 900.0, 150.0), (50.0, 1300.0, 300.0)] {
            let truth = Edge::new(towards_deg, at_px, rim_px);
            let edge = found(|place| -0.25 * truth.at(place), |_| true).expect("an edge");
            assert_like(edge, truth, 0.1);
        }
    }

    /// Half the ground lies in a shadow so deep that it was taken for something else.
    #[test]
    fn a_hard_edge_is_found_though_ground_ends_there() {
        let truth = Edge::new(70.0, 900.0, 15.0);
        let light = |place| -0.5 * truth.at(place);
        let edge = found(light, |place| truth.at(place) < 0.01).expect("an edge");
        assert_like(edge, truth, 0.05);
        assert!(edge.rim_px < 50.0, "{edge:?}");
    }

    #[test]
    fn even_light_and_a_near_lamp_have_no_edge() {
        assert_eq!(found(|_| -0.7, |_| true), None);
        let lamp = |[x, y]: Point| {
            let [u, v] = [(x - 500.0) / 2000.0, (y - 300.0) / 2000.0];
            -1.5 * (1.0 + 2.0 * (u * u + v * v)).ln()
        };
        assert_eq!(found(lamp, |_| true), None);
    }
}
