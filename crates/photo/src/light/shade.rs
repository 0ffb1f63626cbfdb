//! Light by the ground of a whole photo: a smooth surface, and a field about it for
//! what no such surface follows, as a shadow's edge.

use std::ops::RangeInclusive;

use nalgebra::{Cholesky, DVector, Dyn};

use super::{
    blocks::Block,
    grid::Grid,
    surface::{Column, Frame, Square},
    tiles::{ANY_LIGHTNESS, Tile, Tiles},
};
use crate::{Point, bell::bell, chart::homography::distance, likely::unlikely};

/// Neighbourhoods along the longer side, of which each tells one figure: as long as
/// ground is still told from the rest, and then.
pub(super) const FEW: f64 = 10.0;
pub(super) const MANY: f64 = 14.0;
/// How far light about the surface is alike, longer sides.
pub(super) const REACH: f64 = 0.15;
/// Standard deviations of the light about the surface that are tried, logarithms.
const TRIED: [f64; 7] = [0.0, 0.005, 0.01, 0.02, 0.04, 0.08, 0.16];
/// Where it is less, no shadow's edge is looked for.
const STEADY: f64 = 0.02;
/// By how much the ground's own lightness wanders from neighbourhood to neighbourhood
/// beside its grain: planks and worn cloth do, paper does not. As much, for want of
/// knowing better; for rendered photos anything from 0.7 to 1.5 serves about as well.
const WANDER: f64 = 1.0;

/// The light by the ground, beyond the light known before.
///
/// Surface and field are one Gaussian process over the neighbourhoods' medians, its
/// variance the most likely of some. What the ground's grain makes its own lightness
/// wander is taken off the field.
///
/// # Source
/// Rasmussen and Williams, Gaussian Processes for Machine Learning (2006), 2.2, 2.7, 5.4.
#[derive(Debug)]
pub(super) struct Shade {
    frame: Frame,
    /// The most likely surface.
    pub surface: Column,
    /// Which of [`TRIED`] was the most likely.
    most_likely: usize,
    /// Variance of the light about the surface.
    variance: f64,
    /// The ground's own lightness, as a logarithm.
    lightness: f64,
    tiles: Tiles,
    /// The root of the covariance of the neighbourhoods' figures.
    root: Cholesky<f64, Dyn>,
    prior: Square,
    /// How many neighbourhoods the whole photo has, those without ground too.
    all_tiles: f64,
    /// None where what lies about the surface may be anything but light.
    grid: Option<Grid>,
    at_centre: f64,
}

impl Shade {
    /// The light by the ground's blocks, the surface's covariance being `prior` before
    /// they are looked at. Of [`TRIED`] those in the range are; there are so many
    /// `neighbourhoods` along the longer side.
    pub fn fit(
        ground: &[&Block],
        frame: &Frame,
        prior: &Square,
        size_px: [usize; 2],
        range: RangeInclusive<usize>,
        neighbourhoods: f64,
    ) -> Option<Self> {
        let side_px = frame.unit_px / neighbourhoods;
        let tiles = Tiles::new(ground, side_px, prior);
        let reach_px = REACH * frame.unit_px;
        let (smooth, alike) = (tiles.smooth(), tiles.alike(reach_px));
        let light = tiles.light();
        let mut best: Option<(f64, usize, Cholesky<f64, Dyn>)> = None;
        for k in range {
            let sd = TRIED[k];
            let Some(root) = (&smooth + &alike * (sd * sd)).cholesky() else {
                continue;
            };
            let Some(unlikely) = unlikely(&root, &light) else {
                continue;
            };
            if best.as_ref().is_none_or(|(least, ..)| unlikely < *least) {
                best = Some((unlikely, k, root));
            }
        }
        let (_, most_likely, root) = best?;
        let whole = TRIED[most_likely].powi(2);
        let wander = (WANDER * tiles.grain).powi(2);
        let variance = whole * whole / (whole + wander);
        let pull = root.solve(&light);
        let mut surface = Column::zeros();
        for (tile, pull) in tiles.all.iter().zip(pull.iter()) {
            surface += tile.spread * *pull;
        }
        let middles = || tiles.all.iter().map(|tile| tile.middle);
        let pulls = pull.iter().map(|pull| variance * pull);
        let grid = Grid::new(middles().zip(pulls), reach_px, size_px);
        Some(Self {
            frame: *frame,
            surface,
            most_likely,
            variance,
            lightness: ANY_LIGHTNESS * pull.sum(),
            root,
            prior: *prior,
            all_tiles: size_px
                .map(|px| (px as f64 / side_px).ceil())
                .iter()
                .product(),
            at_centre: grid.at(frame.centre),
            grid: Some(grid),
            tiles,
        })
    }

    /// The same where what lies about the surface may be anything but light: it is not
    /// followed, and all of it is doubt.
    pub fn doubted(self) -> Self {
        Self {
            variance: TRIED[self.most_likely].powi(2),
            grid: None,
            at_centre: 0.0,
            ..self
        }
    }

    /// The share of the photo's neighbourhoods in which ground shows.
    pub fn shows(&self) -> f64 {
        self.tiles.all.len() as f64 / self.all_tiles
    }

    /// Standard deviation of the light about the surface, a logarithm.
    pub fn sd(&self) -> f64 {
        TRIED[self.most_likely]
    }

    /// Whether light hardly varies about the surface: the edge of a shadow would make it.
    pub fn is_steady(&self) -> bool {
        self.sd() < STEADY
    }

    /// Whether light varies less about this surface than about the other's, and little:
    /// where it goes on to vary, what looked like an edge is something else.
    pub fn is_explained_beside(&self, other: &Self) -> bool {
        self.sd() < other.sd() && self.sd() <= STEADY
    }

    /// Every number of [`TRIED`].
    pub const fn all() -> RangeInclusive<usize> {
        0..=TRIED.len() - 1
    }

    /// The most likely number of [`TRIED`], and so many to either side.
    pub fn around(&self, beside: usize) -> RangeInclusive<usize> {
        let last = (self.most_likely + beside).min(TRIED.len() - 1);
        self.most_likely.saturating_sub(beside)..=last
    }

    /// What the field adds to the surface, beside the chart's middle.
    pub fn about_surface(&self, place: Point) -> f64 {
        self.field(place) - self.at_centre
    }

    /// The logarithm of the light that the ground should send from a block.
    pub fn at(&self, block: &Block) -> f64 {
        self.lightness + block.terms.dot(&self.surface) + self.field(block.middle)
    }

    fn field(&self, place: Point) -> f64 {
        self.grid.as_ref().map_or(0.0, |grid| grid.at(place))
    }

    /// Covariance of the logarithms of the light at two places, each beside that in
    /// the chart's middle.
    pub fn covariance(&self, a: Point, b: Point) -> f64 {
        let reach_px = REACH * self.frame.unit_px;
        let centre = self.frame.centre;
        let field = |a: Point, b: Point| self.variance * bell(distance(a, b) / reach_px);
        let [terms_a, terms_b] = [a, b].map(|place| self.frame.terms(place));
        let before = (terms_a.transpose() * self.prior * terms_b)[0]
            + (field(a, b) - field(a, centre) - field(centre, b) + self.variance);
        let told = |place: Point, terms: &Column| {
            let of_field = |tile: &Tile| field(place, tile.middle) - field(centre, tile.middle);
            let of_tile = |tile: &Tile| {
                let about = self.grid.as_ref().map_or(0.0, |_| of_field(tile));
                terms.dot(&tile.spread) + about
            };
            DVector::from_iterator(self.tiles.all.len(), self.tiles.all.iter().map(of_tile))
        };
        before - told(a, &terms_a).dot(&self.root.solve(&told(b, &terms_b)))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::light::surface::usual;

    const SIZE_PX: [usize; 2] = [2000, 1500];
    const CENTRE: Point = [1100.0, 500.0];

    /// A ground with holes where chart and pieces lie, under some light.
    fn ground(frame: &Frame, light: impl Fn(Point) -> f64) -> Vec<Block> {
        let places = (0..74 * 55).map(|i| [i % 74, i / 74].map(|k| f64::from(k) * 27.0 + 13.5));
        let is_hidden = |p: &Point| {
            (900.0..1300.0).contains(&p[0]) && (350.0..650.0).contains(&p[1])
                || (900.0..1300.0).contains(&p[0]) && (750.0..850.0).contains(&p[1])
        };
        places
            .filter(|p| !is_hidden(p))
            .map(|middle| Block {
                place: [0, 0],
                middle,
                terms: frame.terms(middle),
                ln: [light(middle); 3],
                light: light(middle),
            })
            .collect()
    }

    fn shade(light: impl Fn(Point) -> f64) -> Shade {
        let frame = Frame::new(CENTRE, SIZE_PX[0], SIZE_PX[1]);
        let prior = usual([[0.25, 0.0], [0.0, 0.25]]);
        let blocks = ground(&frame, light);
        let ground: Vec<&Block> = blocks.iter().collect();
        Shade::fit(&ground, &frame, &prior, SIZE_PX, Shade::all(), MANY).unwrap()
    }

    fn told(shade: &Shade, place: Point) -> f64 {
        shade.frame.terms(place).dot(&shade.surface) + shade.about_surface(place)
    }

    /// The shadow of something upright: dark on one side of a soft edge.
    fn shadow([x, _]: Point) -> f64 {
        -0.3 / (1.0 + (-(x - 1250.0) / 100.0).exp())
    }

    #[test]
    fn a_soft_shadow_is_followed_between_the_pieces() {
        let shade = shade(|p| -0.7 + shadow(p));
        for place in [
            [600.0, 800.0],
            [1000.0, 800.0],
            [1250.0, 800.0],
            [1700.0, 700.0],
        ] {
            let truth = shadow(place) - shadow(CENTRE);
            let off = told(&shade, place) - truth;
            let sd = shade.covariance(place, place).sqrt();
            assert!(off.abs() < 0.04, "{place:?} {off}");
            assert!(off.abs() < 3.0 * sd + 0.01, "{place:?} {off} {sd}");
        }
    }

    #[test]
    fn even_light_on_even_ground_leaves_nothing_beside_the_surface() {
        let shade = shade(|p| -0.7 + 0.1 * (p[0] - CENTRE[0]) / 2000.0);
        for place in [[100.0, 100.0], [1100.0, 800.0], [1900.0, 1400.0]] {
            let off = told(&shade, place) - 0.1 * (place[0] - CENTRE[0]) / 2000.0;
            assert!(off.abs() < 0.003, "{place:?} {off}");
        }
    }

    /// Planks of unlike lightness with strong grain: their steps are wood's, not light's.
    #[test]
    fn coarse_ground_is_believed_less_than_smooth_ground() {
        let plank = |p: Point| {
            if ((p[1] / 400.0) as u32).is_multiple_of(2) {
                0.08
            } else {
                -0.08
            }
        };
        let grain = |p: Point| 0.15 * (p[0] * 12.9898 + p[1] * 78.233).sin();
        let smooth = shade(plank);
        let coarse = shade(|p| plank(p) + grain(p));
        assert!(coarse.variance < 0.5 * smooth.variance);
        let place = [600.0, 600.0];
        assert!(coarse.covariance(place, place) > 0.0);
    }

    #[test]
    fn what_may_be_anything_but_light_is_doubt_and_not_followed() {
        let followed = shade(shadow);
        assert!(followed.shows() > 0.8 && followed.shows() <= 1.0);
        let place = [1700.0, 700.0];
        let sure = followed.covariance(place, place);
        let doubted = followed.doubted();
        assert_eq!(doubted.about_surface(place), 0.0);
        assert!(doubted.covariance(place, place) > 4.0 * sure);
        // Beside itself the chart's middle is never in doubt.
        assert!(doubted.covariance(CENTRE, CENTRE).abs() < 1e-9);
    }
}
