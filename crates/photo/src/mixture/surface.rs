//! The colour of one dyeing in uneven light: a smooth surface with its scatter.

use nalgebra::{Matrix3, SMatrix, SVector, Vector3};

use super::Cells;

/// Terms of the surface: 1, x, y, x², xy, y².
const TERMS: usize = 6;
/// Numbers that it fits: the terms by L*, a*, b*, and a covariance.
pub(super) const FITTED: f64 = 24.0;

/// Logarithm of the likelihood of an area as one surface, but for the constant
/// of (2 pi); none where its cells span no surface.
pub(super) fn ln_likelihood(cells: &Cells) -> Option<f64> {
    let far = cells.all.iter().map(|c| c.column.max(c.row)).max()? as f64 + 1.0;
    let terms = |column: usize, row: usize| {
        let (x, y) = (column as f64 / far, row as f64 / far);
        SVector::<f64, TERMS>::from([1.0, x, y, x * x, x * y, y * y])
    };
    let mut normal = SMatrix::<f64, TERMS, TERMS>::identity() * 1e-9;
    let mut pull = SMatrix::<f64, TERMS, 3>::zeros();
    for cell in &cells.all {
        let t = terms(cell.column, cell.row);
        normal += t * t.transpose();
        pull += t * Vector3::from(cell.lab).transpose();
    }
    let surface = normal.try_inverse()? * pull;
    let n = cells.all.len() as f64;
    let mut scatter = Matrix3::identity() * 0.09;
    for cell in &cells.all {
        let d = Vector3::from(cell.lab) - surface.transpose() * terms(cell.column, cell.row);
        scatter += d * d.transpose() / n;
    }
    // At the most likely scatter the squares sum to 3 n.
    Some(-0.5 * n * (scatter.determinant().ln() + 3.0))
}
