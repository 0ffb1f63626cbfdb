//! Projective maps between two planes.

use nalgebra::{Matrix3, SMatrix, SVector, Vector3};

/// A projective map of the plane and its inverse.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Homography {
    forward: Matrix3<f64>,
    inverse: Matrix3<f64>,
}

impl Homography {
    /// From a matrix; none where it has no inverse.
    pub(crate) fn new(forward: Matrix3<f64>) -> Option<Self> {
        let inverse = forward.try_inverse()?;
        Some(Self { forward, inverse })
    }

    /// Least squares over pairs of (from, to); four pairs at least.
    ///
    /// None where the points lie so that no map is determined.
    pub(crate) fn fit(pairs: &[([f64; 2], [f64; 2])]) -> Option<Self> {
        if pairs.len() < 4 {
            return None;
        }
        let from = normalising(pairs.iter().map(|p| p.0))?;
        let to = normalising(pairs.iter().map(|p| p.1))?;
        let mut normal = SMatrix::<f64, 8, 8>::zeros();
        let mut right = SVector::<f64, 8>::zeros();
        for (a, b) in pairs {
            let [x, y] = apply(&from, *a);
            let [u, v] = apply(&to, *b);
            let rows = [
                ([x, y, 1.0, 0.0, 0.0, 0.0, -u * x, -u * y], u),
                ([0.0, 0.0, 0.0, x, y, 1.0, -v * x, -v * y], v),
            ];
            for (row, value) in rows {
                let row = SVector::<f64, 8>::from(row);
                normal += row * row.transpose();
                right += row * value;
            }
        }
        let h = normal.cholesky()?.solve(&right);
        let middle = Matrix3::new(h[0], h[1], h[2], h[3], h[4], h[5], h[6], h[7], 1.0);
        Self::new(to.try_inverse()? * middle * from)
    }

    /// Where a point goes.
    pub(crate) fn map(&self, point: [f64; 2]) -> [f64; 2] {
        apply(&self.forward, point)
    }

    /// This map after another.
    pub(crate) fn after(&self, first: &Self) -> Self {
        Self {
            forward: self.forward * first.forward,
            inverse: first.inverse * self.inverse,
        }
    }

    /// The inverse map.
    pub(crate) fn inverted(&self) -> Self {
        Self {
            forward: self.inverse,
            inverse: self.forward,
        }
    }

    /// This map with its results stretched by a factor, then shifted.
    pub(crate) fn scaled(&self, k: f64, [x, y]: [f64; 2]) -> Self {
        let placed = Matrix3::new(k, 0.0, x, 0.0, k, y, 0.0, 0.0, 1.0);
        let back = Matrix3::new(1.0 / k, 0.0, -x / k, 0.0, 1.0 / k, -y / k, 0.0, 0.0, 1.0);
        Self {
            forward: placed * self.forward,
            inverse: self.inverse * back,
        }
    }

    /// How long one step along each axis is at a point.
    pub(crate) fn steps_at(&self, [x, y]: [f64; 2]) -> [f64; 2] {
        let along = distance(self.map([x - 0.5, y]), self.map([x + 0.5, y]));
        let across = distance(self.map([x, y - 0.5]), self.map([x, y + 0.5]));
        [along, across]
    }

    /// Whether the horizon stays clear of the given points.
    pub(crate) fn faces(&self, points: &[[f64; 2]]) -> bool {
        let depth = |p: &[f64; 2]| {
            self.forward[(2, 0)] * p[0] + self.forward[(2, 1)] * p[1] + self.forward[(2, 2)]
        };
        points.iter().all(|p| depth(p) > 1e-9) || points.iter().all(|p| depth(p) < -1e-9)
    }
}

/// The distance of two points.
pub(crate) fn distance(a: [f64; 2], b: [f64; 2]) -> f64 {
    let d = [a[0] - b[0], a[1] - b[1]];
    (d[0] * d[0] + d[1] * d[1]).sqrt()
}

fn apply(m: &Matrix3<f64>, [x, y]: [f64; 2]) -> [f64; 2] {
    let p = m * Vector3::new(x, y, 1.0);
    [p[0] / p[2], p[1] / p[2]]
}

/// The map that moves points about 0 at unit spread, for a well-posed fit.
fn normalising(points: impl Iterator<Item = [f64; 2]> + Clone) -> Option<Matrix3<f64>> {
    let count = points.clone().count() as f64;
    let sum = points
        .clone()
        .fold([0.0; 2], |s, p| [s[0] + p[0], s[1] + p[1]]);
    let mean = sum.map(|s| s / count);
    let spread = points.map(|p| distance(p, mean)).sum::<f64>() / count;
    if !(spread > 1e-9 && spread.is_finite()) {
        return None;
    }
    let k = 1.0 / spread;
    Some(Matrix3::new(
        k,
        0.0,
        -k * mean[0],
        0.0,
        k,
        -k * mean[1],
        0.0,
        0.0,
        1.0,
    ))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_fit_returns_the_map_that_made_the_pairs() {
        let made = Homography::new(Matrix3::new(
            40.0, 6.0, 300.0, -4.0, 37.0, 90.0, 1e-3, 2e-3, 1.0,
        ))
        .expect("invertible");
        let pairs: Vec<_> = (0..24)
            .map(|i| {
                let p = [f64::from(i % 6), f64::from(i / 6)];
                (p, made.map(p))
            })
            .collect();
        let fitted = Homography::fit(&pairs).expect("well posed");
        let p = [7.5, -2.0];
        assert!(distance(fitted.map(p), made.map(p)) < 1e-6);
        assert!(distance(fitted.inverted().map(fitted.map(p)), p) < 1e-9);
    }

    #[test]
    fn points_on_one_line_determine_nothing() {
        let pairs: Vec<_> = (0..6)
            .map(|i| ([f64::from(i), 0.0], [f64::from(i) * 9.0, 5.0]))
            .collect();
        assert!(Homography::fit(&pairs).is_none());
    }
}
