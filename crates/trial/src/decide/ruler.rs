//! From CIELAB to lengths in CIEDE2000 units.

use colour::{
    Lab,
    difference::{ciede2000, ciede2000_metric},
};
use inference::{length::Length, scatter::Error};
use nalgebra::{Matrix3, Vector3};

/// Below this a length is rounding, not colour.
const NOTHING_DE00: f64 = 1e-6;

/// The difference of two colours with the measure of small differences about them.
pub(super) struct Ruler {
    /// CIEDE2000 of the two.
    pub de00: f64,
    /// The step from one to the other in a space whose lengths are CIEDE2000.
    step: Vector3<f64>,
    /// CIELAB to that space.
    transform: Matrix3<f64>,
}

impl Ruler {
    /// The measure half-way between two colours, stretched so that their own
    /// difference comes out as exactly its CIEDE2000.
    pub fn between(from: Vector3<f64>, to: Vector3<f64>) -> Self {
        let de00 = ciede2000(lab(from), lab(to));
        let metric = Matrix3::from(ciede2000_metric(lab((from + to) / 2.0)));
        let root = match metric.cholesky() {
            Some(cholesky) => cholesky.l().transpose(),
            None => Matrix3::from_diagonal(&metric.diagonal().map(|v| v.max(0.0).sqrt())),
        };
        let plain = (root * (to - from)).norm();
        let stretch = if plain > NOTHING_DE00 && de00 > NOTHING_DE00 {
            de00 / plain
        } else {
            1.0
        };
        let transform = root * stretch;
        Self {
            de00,
            step: transform * (to - from),
            transform,
        }
    }

    /// The length of the difference, given its errors in CIELAB; none of no errors.
    pub fn length(&self, errors: &[Error]) -> Option<Length> {
        let errors: Vec<_> = errors
            .iter()
            .map(|error| Error {
                covariance: self.transform * error.covariance * self.transform.transpose(),
                df: error.df,
            })
            .collect();
        Error::of_sum(&errors).map(|error| Length::new(self.step, &error))
    }

    /// A step in CIELAB as one whose length is CIEDE2000.
    pub fn in_de00(&self, step: Vector3<f64>) -> Vector3<f64> {
        self.transform * step
    }

    /// How far a step goes along a way, both in CIELAB; none of no way.
    pub fn along_way(&self, way: Vector3<f64>, step: Vector3<f64>) -> Option<f64> {
        let unit = (self.transform * way).try_normalize(NOTHING_DE00)?;
        Some(unit.dot(&(self.transform * step)))
    }

    /// The difference along a way given in CIELAB, with its errors; none of no
    /// errors or no way.
    ///
    /// # Source
    /// Degrees of freedom by Welch and Satterthwaite, Biometrics Bulletin 2 (1946) 110-114.
    pub fn along(&self, way: Vector3<f64>, errors: &[Error]) -> Option<Step> {
        let unit = (self.transform * way).try_normalize(NOTHING_DE00)?;
        let across = self.transform.transpose() * unit;
        let variances = errors
            .iter()
            .map(|error| (across.dot(&(error.covariance * across)), error.df));
        let (sum, spread) = variances.fold((0.0, 0.0), |(sum, spread), (variance, df)| {
            (sum + variance, spread + variance * variance / df)
        });
        (spread > 0.0).then(|| Step {
            de00: unit.dot(&self.step),
            standard_error: sum.sqrt(),
            df: sum * sum / spread,
        })
    }
}

/// The difference of two colours along one way, with its error.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Step {
    /// The difference, CIEDE2000 units; negative against the way.
    pub de00: f64,
    /// Its standard error.
    pub standard_error: f64,
    /// Degrees of freedom of that.
    pub df: f64,
}

/// A vector of L*, a*, b* as a colour.
pub(super) fn lab(v: Vector3<f64>) -> Lab {
    Lab::new(v.x, v.y, v.z)
}
