//! The light field: how much light falls where, as a smooth surface.

mod ground;

pub(crate) use ground::from_ground;

use crate::Point;

/// Terms of the surface: x, y, x², xy, y².
const TERMS: usize = 5;

/// Logarithm of the light as a polynomial of place, 0 in the chart's middle.
#[derive(Debug, Clone)]
pub(crate) struct Light {
    centre: Point,
    /// Pixels to one unit of the polynomial: the photo's longer side.
    unit_px: f64,
    coefficients: [f64; TERMS],
    covariance: [[f64; TERMS]; TERMS],
    source: Source,
}

/// What the light was read from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Source {
    Chart,
    Ground,
}

impl Light {
    /// Even light.
    pub fn even(centre: Point, unit_px: f64) -> Self {
        Self {
            centre,
            unit_px,
            coefficients: [0.0; TERMS],
            covariance: [[0.0; TERMS]; TERMS],
            source: Source::Chart,
        }
    }

    /// What the light was read from, a word for the correction's name.
    pub const fn source(&self) -> &'static str {
        match self.source {
            Source::Chart => "chart",
            Source::Ground => "ground",
        }
    }

    /// A plane with its slopes (per longer side of the photo) and their covariance.
    pub fn with_plane(&self, slopes: [f64; 2], covariance: [[f64; 2]; 2]) -> Self {
        let mut light = Self::even(self.centre, self.unit_px);
        light.coefficients[..2].copy_from_slice(&slopes);
        for (row, from) in light.covariance.iter_mut().zip(covariance) {
            row[..2].copy_from_slice(&from);
        }
        light
    }

    fn terms(&self, [x, y]: Point) -> [f64; TERMS] {
        let u = (x - self.centre[0]) / self.unit_px;
        let v = (y - self.centre[1]) / self.unit_px;
        [u, v, u * u, u * v, v * v]
    }

    /// Light at a place as a multiple of that in the chart's middle.
    pub fn at(&self, place: Point) -> f64 {
        let terms = self.terms(place);
        let ln: f64 = (0..TERMS).map(|i| self.coefficients[i] * terms[i]).sum();
        ln.clamp(-3.0, 3.0).exp()
    }

    /// Covariance of the logarithms of the light at two places, each beside that
    /// in the chart's middle.
    pub fn covariance(&self, a: Point, b: Point) -> f64 {
        let (a, b) = (self.terms(a), self.terms(b));
        let mut sum = 0.0;
        for (row, x) in self.covariance.iter().zip(a) {
            for (c, y) in row.iter().zip(b) {
                sum += x * c * y;
            }
        }
        sum
    }

    /// Variance of the logarithm of the light at a place beside the chart's middle.
    pub fn variance(&self, place: Point) -> f64 {
        self.covariance(place, place).max(0.0)
    }

    /// Brightest over darkest of some places.
    pub fn range(&self, places: &[Point]) -> f64 {
        let (mut least, mut most) = (f64::INFINITY, 0.0f64);
        for place in places {
            let light = self.at(*place);
            least = least.min(light);
            most = most.max(light);
        }
        if least > 0.0 { most / least } else { 1.0 }
    }
}
