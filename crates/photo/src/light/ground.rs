//! The light field by the ground that chart and pieces lie on.

use nalgebra::{DMatrix, DVector, SMatrix};

use super::{Light, Source, TERMS};
use crate::{Point, area::contains, decode::Upright};

/// Blocks along the photo's longer side.
const BLOCKS: f64 = 72.0;
/// How far a block's colour may lie from the ground's, as logarithms of ratios.
const NEAR_COLOUR: f64 = 0.07;
/// How far its lightness may, beyond the light already known.
const NEAR_LIGHT: f64 = 0.16;
/// Fewest blocks that make a ground.
const FEWEST: usize = 80;
/// Largest scatter of the ground about its surface, as a logarithm.
const LARGEST_SCATTER: f64 = 0.06;

/// A piece of the photo's ground.
struct Block {
    middle: Point,
    /// Logarithms of red over green and blue over green.
    colour: [f64; 2],
    /// Logarithm of green's light, the known light taken off.
    light: f64,
}

/// The light field from the most common even colour around chart and pieces,
/// or none where no such ground shows around `places`.
///
/// `known` is the light as far as the chart tells it, `hidden` the outlines of
/// chart and pieces, `linear` the scene light of each code value.
pub(crate) fn from_ground(
    photo: &Upright,
    linear: &[[f64; 256]; 3],
    known: &Light,
    hidden: &[Vec<Point>],
    places: &[Point],
) -> Option<Light> {
    let blocks = blocks(photo, linear, known, hidden);
    let mut members = most_common(&blocks)?;
    let mut fit = None;
    for _ in 0..4 {
        let surface = Surface::fit(&blocks, &members, known)?;
        let near = surface.scatter.max(0.006) * 3.0;
        let colour = mean_colour(&blocks, &members);
        members = (0..blocks.len())
            .filter(|&i| {
                let block = &blocks[i];
                distance(block.colour, colour) < NEAR_COLOUR
                    && (block.light - surface.at(known, block.middle)).abs() < near
            })
            .collect();
        if members.len() < FEWEST {
            return None;
        }
        fit = Some(surface);
    }
    let surface = fit?;
    let around = surrounds(&blocks, &members, places);
    if surface.scatter > LARGEST_SCATTER || !around || members.len() * 8 < blocks.len() {
        return None;
    }
    Some(surface.added_to(known))
}

fn blocks(
    photo: &Upright,
    linear: &[[f64; 256]; 3],
    known: &Light,
    hidden: &[Vec<Point>],
) -> Vec<Block> {
    let size = ((photo.width.max(photo.height) as f64 / BLOCKS) as usize).max(4);
    // A few hundred pixels tell a block's mean well enough.
    let step = (size / 16).max(1);
    let mut blocks = Vec::new();
    for top in (0..photo.height.saturating_sub(size)).step_by(size) {
        for left in (0..photo.width.saturating_sub(size)).step_by(size) {
            let (right, bottom) = (left + size, top + size);
            let corners = [
                [left as f64, top as f64],
                [right as f64, top as f64],
                [right as f64, bottom as f64],
                [left as f64, bottom as f64],
            ];
            let covered = |p: Point| hidden.iter().any(|outline| contains(outline, p));
            if corners.into_iter().any(covered) {
                continue;
            }
            let (mut sum, mut n, mut clipped) = ([0.0; 3], 0.0, 0);
            for y in (top..bottom).step_by(step) {
                for x in (left..right).step_by(step) {
                    let codes = photo.at(x, y);
                    clipped += usize::from(codes.iter().any(|&c| c >= 253));
                    for (channel, code) in codes.into_iter().enumerate() {
                        sum[channel] += linear[channel][code as usize];
                    }
                    n += 1.0;
                }
            }
            if clipped as f64 > 0.02 * n || sum.iter().any(|s| s / n < 0.004) {
                continue;
            }
            let middle = [(left + right) as f64 / 2.0, (top + bottom) as f64 / 2.0];
            let [r, g, b] = sum.map(|s| (s / n).ln());
            blocks.push(Block {
                middle,
                colour: [r - g, b - g],
                light: (r + g + b) / 3.0 - known.at(middle).ln(),
            });
        }
    }
    blocks
}

fn distance(a: [f64; 2], b: [f64; 2]) -> f64 {
    (a[0] - b[0]).hypot(a[1] - b[1])
}

/// The blocks around the colour that most blocks share.
fn most_common(blocks: &[Block]) -> Option<Vec<usize>> {
    let near = |a: &Block, b: &Block| {
        distance(a.colour, b.colour) < NEAR_COLOUR && (a.light - b.light).abs() < NEAR_LIGHT
    };
    let best = blocks
        .iter()
        .step_by((blocks.len() / 400).max(1))
        .max_by_key(|seed| blocks.iter().filter(|b| near(seed, b)).count())?;
    let members: Vec<usize> = (0..blocks.len())
        .filter(|&i| near(best, &blocks[i]))
        .collect();
    (members.len() >= FEWEST).then_some(members)
}

fn mean_colour(blocks: &[Block], members: &[usize]) -> [f64; 2] {
    [0, 1].map(|k| {
        members.iter().map(|&i| blocks[i].colour[k]).sum::<f64>() / members.len().max(1) as f64
    })
}

/// Whether the ground lies on every side of what is to be read, so that the
/// surface is read off between its points and not beyond them.
fn surrounds(blocks: &[Block], members: &[usize], places: &[Point]) -> bool {
    places.iter().all(|place| {
        [0, 1].into_iter().all(|k| {
            let below = members
                .iter()
                .filter(|&&i| blocks[i].middle[k] < place[k])
                .count();
            let above = members.len() - below;
            below.min(above) * 25 >= members.len()
        })
    })
}

/// A surface of the second degree through the members' light.
struct Surface {
    level: f64,
    coefficients: [f64; TERMS],
    covariance: [[f64; TERMS]; TERMS],
    scatter: f64,
}

impl Surface {
    fn fit(blocks: &[Block], members: &[usize], frame: &Light) -> Option<Self> {
        let rows: Vec<[f64; TERMS + 1]> = members
            .iter()
            .map(|&i| {
                let t = frame.terms(blocks[i].middle);
                [1.0, t[0], t[1], t[2], t[3], t[4]]
            })
            .collect();
        let a = DMatrix::from_fn(rows.len(), TERMS + 1, |r, c| rows[r][c]);
        let b = DVector::from_iterator(members.len(), members.iter().map(|&i| blocks[i].light));
        let normal = a.transpose() * &a + DMatrix::identity(TERMS + 1, TERMS + 1) * 1e-9;
        let inverse = normal.try_inverse()?;
        let c = &inverse * a.transpose() * &b;
        let residual = &b - &a * &c;
        let mut sizes: Vec<f64> = residual.iter().map(|r| r.abs()).collect();
        sizes.sort_by(f64::total_cmp);
        let scatter = 1.4826 * sizes[sizes.len() / 2];
        // Neighbouring blocks share their grain: as if there were a tenth of them.
        let variance = 10.0 * residual.norm_squared() / members.len() as f64;
        let inner: SMatrix<f64, TERMS, TERMS> = inverse.fixed_view::<TERMS, TERMS>(1, 1).into();
        Some(Self {
            level: c[0],
            coefficients: std::array::from_fn(|i| c[i + 1]),
            covariance: std::array::from_fn(|i| std::array::from_fn(|j| variance * inner[(i, j)])),
            scatter,
        })
    }

    fn at(&self, frame: &Light, place: Point) -> f64 {
        let terms = frame.terms(place);
        self.level
            + (0..TERMS)
                .map(|i| self.coefficients[i] * terms[i])
                .sum::<f64>()
    }

    /// The light already known with what this surface found beyond it.
    fn added_to(self, known: &Light) -> Light {
        let mut light = known.clone();
        for i in 0..TERMS {
            light.coefficients[i] += self.coefficients[i];
        }
        light.covariance = self.covariance;
        light.source = Source::Ground;
        light
    }
}
