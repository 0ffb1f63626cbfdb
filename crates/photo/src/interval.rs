//! The 95 % interval of the CIEDE2000 difference of two uncertain colours.

use colour::{Lab, difference};

use crate::matrix::{Matrix3, times};

/// Normal quantile of a two-sided 95 % interval.
const Z: f64 = 1.959964;

/// Lower and upper end for the difference of `a` and `b`, where `cov` is the
/// covariance of b - a in CIELAB.
///
/// The squared length of a noisy vector is on average the true one plus the
/// noise's trace; the ends are the true lengths for which the observed one
/// would lie at the edge of its spread. The lower end reaches 0 where no
/// difference is shown.
pub(crate) fn de00(a: Lab, b: Lab, cov: &Matrix3) -> (f64, f64, f64) {
    let observed = difference::ciede2000(a, b);
    let middle = Lab::new((a.l + b.l) / 2.0, (a.a + b.a) / 2.0, (a.b + b.b) / 2.0);
    let g = difference::ciede2000_metric(middle);
    let gc = times(&g, cov);
    let trace: f64 = (0..3).map(|i| gc[i][i]).sum();
    let gcgc = times(&gc, &gc);
    let trace_squared: f64 = (0..3).map(|i| gcgc[i][i]).sum();
    let d = [b.l - a.l, b.a - a.a, b.b - a.b];
    let along = along_variance(d, &g, cov).unwrap_or(trace / 3.0);
    // (x + trace - observed^2)^2 = Z^2 (4 along x + 2 trace_squared), x = true^2.
    let c = trace - observed * observed;
    let half = c - 2.0 * Z * Z * along;
    let root = (half * half - c * c + 2.0 * Z * Z * trace_squared)
        .max(0.0)
        .sqrt();
    let low = (-half - root).max(0.0).sqrt().min(observed);
    let high = (-half + root).max(0.0).sqrt().max(observed);
    (observed, low, high)
}

/// Variance of the difference along its own direction, in CIEDE2000 units.
fn along_variance(d: [f64; 3], g: &Matrix3, cov: &Matrix3) -> Option<f64> {
    let gd = crate::matrix::apply(g, d);
    let length_squared: f64 = (0..3).map(|i| d[i] * gd[i]).sum();
    if length_squared < 1e-12 {
        return None;
    }
    let cgd = crate::matrix::apply(cov, gd);
    let spread: f64 = (0..3).map(|i| gd[i] * cgd[i]).sum();
    Some(spread / length_squared)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn round(sd: f64) -> Matrix3 {
        [
            [sd * sd, 0.0, 0.0],
            [0.0, sd * sd, 0.0],
            [0.0, 0.0, sd * sd],
        ]
    }

    #[test]
    fn a_clear_difference_has_the_usual_interval() {
        let (a, b) = (Lab::new(50.0, 0.0, 0.0), Lab::new(60.0, 0.0, 0.0));
        let (observed, low, high) = de00(a, b, &round(0.1));
        let scale = observed / 10.0;
        assert!((low - (observed - Z * 0.1 * scale)).abs() < 0.02, "{low}");
        assert!((high - (observed + Z * 0.1 * scale)).abs() < 0.02, "{high}");
    }

    #[test]
    fn equal_colours_may_be_equal() {
        let a = Lab::new(50.0, 10.0, 10.0);
        let (observed, low, high) = de00(a, a, &round(0.3));
        assert_eq!((observed, low), (0.0, 0.0));
        assert!(high > 0.3 && high < 1.5, "{high}");
    }
}
