//! A mixture of two Gaussians by expectation and maximisation.
//!
//! # Source
//! Dempster, Laird and Rubin, J. Royal Statistical Society B 39 (1977).

use nalgebra::{Matrix3, Vector3};

/// Rounds of expectation and maximisation.
const ROUNDS: usize = 60;
/// Variance of each of L*, a*, b* that no part gets below.
const FLOOR: f64 = 0.09;

/// One Gaussian of a mixture.
#[derive(Debug, Clone)]
pub(super) struct Part {
    pub mean: Vector3<f64>,
    inverse: Matrix3<f64>,
    ln_scale: f64,
}

impl Part {
    /// The Gaussian of weighted values; none where hardly any weight is left.
    fn of(values: &[Vector3<f64>], weights: &[f64]) -> Option<Self> {
        let total: f64 = weights.iter().sum();
        if total < 4.0 {
            return None;
        }
        let mean = values
            .iter()
            .zip(weights)
            .map(|(v, w)| v * *w)
            .sum::<Vector3<f64>>()
            / total;
        let mut covariance = Matrix3::identity() * FLOOR;
        for (v, w) in values.iter().zip(weights) {
            let d = v - mean;
            covariance += d * d.transpose() * (w / total);
        }
        let inverse = covariance.try_inverse()?;
        let share = total / values.len() as f64;
        Some(Self {
            mean,
            inverse,
            ln_scale: share.ln() - 0.5 * covariance.determinant().ln(),
        })
    }

    /// Logarithm of share times density, but for a constant.
    fn ln_weight(&self, v: &Vector3<f64>) -> f64 {
        let d = v - self.mean;
        self.ln_scale - 0.5 * d.dot(&(self.inverse * d))
    }
}

/// Two Gaussians that make up an area's colours.
#[derive(Debug, Clone)]
pub(super) struct Mixture {
    pub parts: [Part; 2],
    /// Logarithm of the likelihood, but for the constant of (2 pi).
    pub ln_likelihood: f64,
}

impl Mixture {
    /// How far along from the first mean (0) to the other (1) a colour lies.
    pub fn along(&self, colour: [f64; 3]) -> f64 {
        let [a, b] = &self.parts;
        let way = b.mean - a.mean;
        (Vector3::from(colour) - a.mean).dot(&way) / way.norm_squared().max(1e-12)
    }

    /// Whether a colour is nearer to the first: borders are told apart at their
    /// middle, however wide each part scatters.
    pub fn is_first(&self, colour: [f64; 3]) -> bool {
        self.along(colour) < 0.5
    }
}

/// Fits two Gaussians, begun from the best cut along the longest axis.
pub(super) fn fit(colours: &[[f64; 3]]) -> Option<Mixture> {
    let values: Vec<Vector3<f64>> = colours.iter().map(|c| Vector3::from(*c)).collect();
    let mut first = cut(&values)?;
    let mut ln_likelihood = f64::NEG_INFINITY;
    let mut parts = None;
    for _ in 0..ROUNDS {
        let other: Vec<f64> = first.iter().map(|w| 1.0 - w).collect();
        let fitted = [Part::of(&values, &first)?, Part::of(&values, &other)?];
        let before = ln_likelihood;
        ln_likelihood = 0.0;
        for (value, weight) in values.iter().zip(&mut first) {
            let [a, b] = [0, 1].map(|k: usize| fitted[k].ln_weight(value));
            let most = a.max(b);
            let sum = (a - most).exp() + (b - most).exp();
            *weight = (a - most).exp() / sum;
            ln_likelihood += most + sum.ln();
        }
        parts = Some(fitted);
        if (ln_likelihood - before).abs() < 1e-6 * values.len() as f64 {
            break;
        }
    }
    Some(Mixture {
        parts: parts?,
        ln_likelihood,
    })
}

/// Weights of the first part: 1 below the cut along the longest axis that leaves
/// the least scatter inside both sides.
///
/// # Source
/// Otsu, IEEE Trans. Systems, Man and Cybernetics 9 (1979), on sorted values.
fn cut(values: &[Vector3<f64>]) -> Option<Vec<f64>> {
    let n = values.len();
    let mean = values.iter().sum::<Vector3<f64>>() / n as f64;
    let mut scatter = Matrix3::zeros();
    for v in values {
        scatter += (v - mean) * (v - mean).transpose();
    }
    let eigen = scatter.symmetric_eigen();
    let axis = eigen
        .eigenvectors
        .column(eigen.eigenvalues.imax())
        .into_owned();
    let along: Vec<f64> = values.iter().map(|v| (v - mean).dot(&axis)).collect();
    let mut sorted = along.clone();
    sorted.sort_by(f64::total_cmp);
    let total: f64 = sorted.iter().sum();
    let (mut below, mut best) = (0.0, (f64::NEG_INFINITY, 0.0));
    for k in 1..n {
        below += sorted[k - 1];
        let [m, rest] = [below / k as f64, (total - below) / (n - k) as f64];
        let between = k as f64 * (n - k) as f64 * (m - rest).powi(2);
        if between > best.0 {
            best = (between, (sorted[k - 1] + sorted[k]) / 2.0);
        }
    }
    best.0.is_finite().then(|| {
        along
            .iter()
            .map(|v| f64::from(u8::from(*v < best.1)))
            .collect()
    })
}
