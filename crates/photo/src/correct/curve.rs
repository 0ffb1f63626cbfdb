//! A monotone curve through knots.

/// A monotone cubic through knots, straight beyond them.
#[derive(Debug, Clone)]
pub(super) struct Curve {
    x: Vec<f64>,
    y: Vec<f64>,
    slope: Vec<f64>,
}

impl Curve {
    /// Fritsch and Carlson's monotone cubic (SIAM J. Numer. Anal. 17, 1980); none where
    /// the knots don't rise.
    pub fn through(points: impl Iterator<Item = (f64, f64)>) -> Option<Self> {
        let (x, y): (Vec<f64>, Vec<f64>) = points.unzip();
        let rises = |values: &[f64]| values.windows(2).all(|pair| pair[1] > pair[0]);
        if x.len() < 2 || !rises(&x) || !rises(&y) {
            return None;
        }
        let n = x.len();
        let secant: Vec<f64> = (0..n - 1)
            .map(|i| (y[i + 1] - y[i]) / (x[i + 1] - x[i]))
            .collect();
        let mut slope = vec![0.0; n];
        for i in 1..n - 1 {
            // The harmonic mean never overshoots.
            slope[i] = 2.0 * secant[i - 1] * secant[i] / (secant[i - 1] + secant[i]);
        }
        slope[0] = secant[0];
        slope[n - 1] = secant[n - 2];
        Some(Self { x, y, slope })
    }

    pub fn at(&self, x: f64) -> f64 {
        let last = self.x.len() - 1;
        if x <= self.x[0] {
            return self.y[0] + self.slope[0] * (x - self.x[0]);
        }
        if x >= self.x[last] {
            return self.y[last] + self.slope[last] * (x - self.x[last]);
        }
        let k = self.x.partition_point(|&knot| knot <= x) - 1;
        let h = self.x[k + 1] - self.x[k];
        let t = (x - self.x[k]) / h;
        let (t2, t3) = (t * t, t * t * t);
        (2.0 * t3 - 3.0 * t2 + 1.0) * self.y[k]
            + (t3 - 2.0 * t2 + t) * h * self.slope[k]
            + (-2.0 * t3 + 3.0 * t2) * self.y[k + 1]
            + (t3 - t2) * h * self.slope[k + 1]
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_curve_goes_through_its_knots_and_rises_between_them() {
        let knots = [(0.0, 0.0), (1.0, 0.1), (2.0, 3.0), (4.0, 3.1), (5.0, 6.0)];
        let curve = Curve::through(knots.into_iter()).unwrap();
        for (x, y) in knots {
            assert!((curve.at(x) - y).abs() < 1e-12);
        }
        let values: Vec<f64> = (-100..=600)
            .map(|i| curve.at(f64::from(i) / 100.0))
            .collect();
        assert!(values.is_sorted());
    }

    #[test]
    fn knots_that_fall_give_no_curve() {
        for knots in [
            vec![(0.0, 0.0), (1.0, 1.0), (2.0, 0.5)],
            vec![(0.0, 0.0), (0.0, 1.0)],
            vec![(0.0, 0.0)],
        ] {
            assert!(Curve::through(knots.into_iter()).is_none());
        }
    }
}
