//! The light field: how much light falls where, as a smooth surface for each channel.

mod blocks;
mod ground;
mod local_tone;

pub(crate) use ground::{Whereabouts, from_ground};

use nalgebra::SMatrix;

use crate::{Flag, FlagCode, Point, chart::homography};

/// Terms of the surface: x, y, x², xy, y².
const TERMS: usize = 5;

type Square = SMatrix<f64, TERMS, TERMS>;

/// Logarithm of the light of each channel as a polynomial of place, 0 in the
/// chart's middle.
#[derive(Debug, Clone)]
pub(crate) struct Light {
    centre: Point,
    /// Pixels to one unit of the polynomial: the photo's longer side.
    unit_px: f64,
    coefficients: [[f64; TERMS]; 3],
    /// Covariance of the terms, one for all channels.
    covariance: Square,
    /// Variance of the logarithm by which the light lies off the surface.
    misfit: f64,
    source: Source,
    is_mapped: bool,
}

/// What the light was read from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Source {
    Chart,
    Ground,
}

/// How much light usually bends, standard deviations of the logarithm per longer
/// side squared: lenses darken towards every corner alike, lamps and shadows to
/// one side.
const USUAL_FALL_OFF: f64 = 0.3;
const USUAL_BEND: f64 = 0.2;

/// How far a shadow reaches that the surface doesn't follow, longer sides.
const MISFIT_REACH: f64 = 0.15;

impl Light {
    /// Even light.
    pub fn even(centre: Point, unit_px: f64) -> Self {
        Self {
            centre,
            unit_px,
            coefficients: [[0.0; TERMS]; 3],
            covariance: Square::zeros(),
            misfit: 0.0,
            source: Source::Chart,
            is_mapped: false,
        }
    }

    /// What is to be said of light that the phone made up.
    pub fn remark(&self) -> Option<Flag> {
        self.is_mapped.then(|| {
            Flag::new(
                FlagCode::LocalToneMapping,
                "The phone seems to have lit up dark places by itself (HDR): the ground is lighter beside dark things than beside light ones, and so may cloth be. Switch HDR off.",
            )
        })
    }

    /// What the light was read from, a word for the correction's name.
    pub const fn source(&self) -> &'static str {
        match self.source {
            Source::Chart => "chart",
            Source::Ground => "ground",
        }
    }

    /// A plane with its slopes (per longer side of the photo) and their
    /// covariance. How the light bends beyond the chart is not known.
    pub fn with_plane(&self, slopes: [f64; 2], covariance: [[f64; 2]; 2]) -> Self {
        let mut light = Self::even(self.centre, self.unit_px);
        for channel in &mut light.coefficients {
            channel[..2].copy_from_slice(&slopes);
        }
        for (r, row) in covariance.iter().enumerate() {
            for (c, value) in row.iter().enumerate() {
                light.covariance[(r, c)] = *value;
            }
        }
        let (fall_off, bend) = (USUAL_FALL_OFF.powi(2), USUAL_BEND.powi(2));
        for (r, c) in [(2, 2), (2, 4), (4, 2), (4, 4)] {
            light.covariance[(r, c)] = fall_off;
        }
        for k in 2..TERMS {
            light.covariance[(k, k)] += bend;
        }
        light
    }

    fn terms(&self, [x, y]: Point) -> [f64; TERMS] {
        let u = (x - self.centre[0]) / self.unit_px;
        let v = (y - self.centre[1]) / self.unit_px;
        [u, v, u * u, u * v, v * v]
    }

    /// Light of each channel at a place as a multiple of that in the chart's middle.
    pub fn at(&self, place: Point) -> [f64; 3] {
        let terms = self.terms(place);
        self.coefficients.map(|channel| {
            let ln: f64 = channel.iter().zip(&terms).map(|(c, t)| c * t).sum();
            ln.clamp(-3.0, 3.0).exp()
        })
    }

    /// Covariance of the logarithms of the light at two places, each beside that
    /// in the chart's middle.
    pub fn covariance(&self, a: Point, b: Point) -> f64 {
        let alike = |a: Point, b: Point| {
            let apart = homography::distance(a, b) / (MISFIT_REACH * self.unit_px);
            (-0.5 * apart * apart).exp()
        };
        // The surface is off in the chart's middle, too, and there it counts as right.
        let off = 1.0 + alike(a, b) - alike(a, self.centre) - alike(b, self.centre);
        let [a, b] = [a, b].map(|p| nalgebra::SVector::from(self.terms(p)));
        (a.transpose() * self.covariance * b)[0] + self.misfit * off
    }

    /// Variance of the logarithm of the light at a place beside the chart's middle.
    pub fn variance(&self, place: Point) -> f64 {
        self.covariance(place, place).max(0.0)
    }

    /// Brightest over darkest of some places, by the green channel.
    pub fn range(&self, places: &[Point]) -> f64 {
        let (mut least, mut most) = (f64::INFINITY, 0.0f64);
        for place in places {
            let [_, light, _] = self.at(*place);
            least = least.min(light);
            most = most.max(light);
        }
        if least > 0.0 { most / least } else { 1.0 }
    }
}
