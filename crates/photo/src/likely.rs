//! How likely figures of a known covariance are.

use nalgebra::{Cholesky, DVector, Dyn};

/// How unlikely figures about 0 are whose covariance has this root: minus twice the
/// logarithm of their density, but for a constant. None for a root that can't be.
///
/// # Source
/// Rasmussen and Williams, Gaussian Processes for Machine Learning (2006), 2.30.
pub(crate) fn unlikely(root: &Cholesky<f64, Dyn>, figures: &DVector<f64>) -> Option<f64> {
    let spread: f64 = root.l_dirty().diagonal().iter().map(|v| v.ln()).sum();
    let alone = root.l_dirty().solve_lower_triangular(figures)?;
    Some(alone.norm_squared() + 2.0 * spread)
}
