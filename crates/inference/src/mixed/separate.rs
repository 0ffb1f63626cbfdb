//! Which parts of the scatter the values can tell apart.

use super::{Likelihood, criterion::At, sums::Sums};
use crate::InferenceError;
use nalgebra::{DMatrix, DVector};

/// Part of a scatter's size that has to be left beside the others.
const NOTHING: f64 = 1e-9;

/// Part of a contrast's error beside which less isn't missed.
const SHOWS: f64 = 1e-6;

/// What the design says of pieces and loads, whatever the values.
#[derive(Debug, Clone)]
pub(super) struct Separate {
    /// Which parts can be told from the fixed effects and from those before them.
    pub open: Vec<bool>,
    /// Of each closed part, how it is made of the residual and the parts before it.
    pub made_of: Vec<Option<DVector<f64>>>,
}

impl Separate {
    /// Takes the residual, then each part, and sees what is left of it beside those
    /// before, in the space that the fixed effects leave.
    pub(super) fn of(sums: &Sums) -> Result<Self, InferenceError> {
        let parts = sums.kinds.len() + 1;
        let at = At::of(sums, &vec![0.0; parts], Likelihood::Restricted)?;
        // tr(P V_k P V_l) with the residual as part 0.
        let products = DMatrix::from_fn(parts + 1, parts + 1, |k, l| match (k, l) {
            (0, 0) => sums.free,
            (0, part) | (part, 0) => at.traces[part - 1],
            (k, l) => at.products[(k - 1, l - 1)],
        });
        let plain = sums.plain();
        let mut known = vec![0];
        let mut found = Self {
            open: Vec::new(),
            made_of: Vec::new(),
        };
        for part in 1..=parts {
            let size = products[(part, part)];
            let among = DMatrix::from_fn(known.len(), known.len(), |i, j| {
                products[(known[i], known[j])]
            });
            let with = DVector::from_fn(known.len(), |i, _| products[(known[i], part)]);
            let weights = among
                .cholesky()
                .map(|root| root.solve(&with))
                .unwrap_or_else(|| with.clone() * 0.0);
            let left = size - weights.dot(&with);
            let told = left > NOTHING * plain[part - 1];
            found.open.push(told);
            let mut made_of = DVector::zeros(parts + 1);
            known
                .iter()
                .zip(weights.iter())
                .for_each(|(k, w)| made_of[*k] = *w);
            found.made_of.push((!told).then_some(made_of));
            if told {
                known.push(part);
            }
        }
        Ok(found)
    }

    /// Whether the error of a contrast holds the scatter of a part that can't be
    /// told; `held` is how much it holds of the residual and of each part.
    pub(super) fn misses(&self, part: usize, held: &[f64]) -> bool {
        let Some(made_of) = &self.made_of[part] else {
            return false;
        };
        let own = held[part + 1];
        let known: f64 = made_of
            .iter()
            .zip(held)
            .map(|(made, held)| made * held)
            .sum();
        (own - known).abs() > SHOWS * own.max(held[0])
    }
}
