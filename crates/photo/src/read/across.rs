//! Differences of colours in different photos.

use colour::Lab;

use super::{Difference, Parts, PhotoReading, joint};
use crate::{correct::kinship, interval, matrix::Matrix3};

/// A colour of one photo, as far as a comparison with one of another photo needs it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SeenColour<'a> {
    /// The colour.
    pub lab: Lab,
    /// Its covariance by cause.
    pub causes: &'a Parts,
    /// How the photo's chart is missed, as in [`super::ChartFit::misses`].
    pub misses: &'a [Option<[f64; 3]>],
}

/// Covariance of the errors of two colours of different photos; see
/// [`PhotoReading::covariance_across`].
pub fn covariance_of_errors_across(a: &SeenColour<'_>, b: &SeenColour<'_>) -> Matrix3 {
    let alike = likeness(a.misses, b.misses);
    joint::between_roots(
        &a.causes.correction,
        &b.causes.correction,
        alike * kinship(a.lab, b.lab),
    )
}

/// CIEDE2000 of two colours with both ends of its 95 % interval, `cov` being the
/// covariance of b - a in CIELAB. The lower end is 0 where no difference is shown.
pub fn de00_interval(a: Lab, b: Lab, cov: &Matrix3) -> (f64, f64, f64) {
    interval::de00(a, b, cov)
}

impl PhotoReading {
    /// Covariance of the errors of reading `a` of this photo and `b` of another;
    /// none where either was not read.
    ///
    /// One camera misses one dye in nearly the same way under like lamps. How
    /// alike two photos err shows on their charts: the misses of left-out patches
    /// correlate as the misses of cloth do.
    pub fn covariance_across(&self, a: &str, other: &Self, b: &str) -> Option<Matrix3> {
        let (a, b) = (self.reading(a)?, other.reading(b)?);
        Some(covariance_of_errors_across(
            &SeenColour {
                lab: a.lab?,
                causes: &a.parts,
                misses: &self.chart.misses,
            },
            &SeenColour {
                lab: b.lab?,
                causes: &b.parts,
                misses: &other.chart.misses,
            },
        ))
    }

    /// The difference of reading `a` of this photo and `b` of another.
    ///
    /// It is less sure than a difference inside one photo: light, exposure and
    /// white balance don't drop out. None where either was not read.
    pub fn difference_across(&self, a: &str, other: &Self, b: &str) -> Option<Difference> {
        let shared = self.covariance_across(a, other, b)?;
        let (a, b) = (self.reading(a)?, other.reading(b)?);
        let cov = joint::covariance_of_difference(&a.cov, &b.cov, &shared);
        Some(Difference::between((&a.id, a.lab?), (&b.id, b.lab?), &cov))
    }
}

/// Correlation of the charts' misses, 0 where they are unlike or can't be compared.
fn likeness(a: &[Option<[f64; 3]>], b: &[Option<[f64; 3]>]) -> f64 {
    let (mut aa, mut ab, mut bb, mut n) = (0.0, 0.0, 0.0, 0);
    for (a, b) in a.iter().zip(b) {
        if let (Some(a), Some(b)) = (a, b) {
            for k in 0..3 {
                aa += a[k] * a[k];
                ab += a[k] * b[k];
                bb += b[k] * b[k];
            }
            n += 1;
        }
    }
    const FEWEST: usize = 12;
    if n < FEWEST || aa * bb <= 0.0 {
        return 0.0;
    }
    (ab / (aa * bb).sqrt()).clamp(0.0, 1.0)
}

#[cfg(test)]
mod tests {
    use super::likeness;

    #[test]
    fn charts_missed_alike_are_alike() {
        let misses: Vec<Option<[f64; 3]>> = (0..24)
            .map(|i| Some([f64::from(i) - 11.0, 1.0, -0.5]))
            .collect();
        let turned: Vec<_> = misses.iter().map(|m| m.map(|m| m.map(|v| -v))).collect();
        assert!((likeness(&misses, &misses) - 1.0).abs() < 1e-12);
        assert_eq!(likeness(&misses, &turned), 0.0);
        assert_eq!(likeness(&misses, &[]), 0.0);
    }
}
