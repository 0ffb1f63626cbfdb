//! The families of colour models: which terms they make of scene light.

use crate::text;
use colour::Xyz;

/// Most terms that a family has.
pub(super) const MOST_TERMS: usize = 6;

/// A family of colour models. Each begins with the terms of the one before.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Family {
    /// A 3 x 3 matrix.
    Linear,
    /// Root polynomial of the second degree.
    Root2,
}

impl Family {
    pub const ALL: [Self; 2] = [Self::Linear, Self::Root2];

    pub const fn terms(self) -> usize {
        match self {
            Self::Linear => 3,
            Self::Root2 => MOST_TERMS,
        }
    }

    pub fn name(self) -> &'static str {
        match self {
            Self::Linear => text::correct::matrix(),
            Self::Root2 => text::correct::root_polynomial_of_degree_2(),
        }
    }

    /// How strongly a term is held back, as a share of the normal matrix's mean:
    /// the straight ones only against rounding.
    pub const fn ridge(term: usize) -> f64 {
        if term < 3 { 1e-9 } else { 1e-5 }
    }
}

/// Every term of scene light; a family uses the first of them. Each grows in
/// step with exposure, so a shadow doesn't turn the hue.
///
/// # Source
/// Finlayson, Mackiewicz and Hurlbert, IEEE Trans. Image Processing 24 (2015).
pub(super) fn terms([r, g, b]: [f64; 3]) -> [f64; MOST_TERMS] {
    let root = |v: f64| v.max(0.0).sqrt();
    [r, g, b, root(r * g), root(g * b), root(r * b)]
}

/// Weights of the terms for X, Y and Z; 0 for terms that a family lacks.
pub(super) type Weights = [[f64; MOST_TERMS]; 3];

/// Tristimulus values of scene light under weights.
pub(super) fn xyz(weights: &Weights, light: [f64; 3]) -> Xyz {
    let terms = terms(light);
    let [x, y, z] = [0, 1, 2].map(|p| {
        let sum: f64 = weights[p].iter().zip(&terms).map(|(w, v)| w * v).sum();
        sum.max(1e-4)
    });
    Xyz::new(x, y, z)
}
