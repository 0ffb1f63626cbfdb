//! The shares of scatter that make the values likeliest.

use super::{Likelihood, criterion::At, sums::Sums};
use crate::InferenceError;
use crate::text;
use nalgebra::{DMatrix, DVector};

/// Steps of one search, and searches, at most.
const STEPS: usize = 200;
/// Longest step in the logarithm of a share.
const LONGEST: f64 = 2.5;
/// Decrease of -2 log likelihood still to come at which the search ends.
const CLOSE: f64 = 1e-18;
/// A share times the values of one piece below which it is tried as 0.
const SMALL: f64 = 0.05;
/// A share above which the residual is nothing beside it.
const ENDLESS: f64 = 1e11;
/// All shares at the outset, of which the likeliest is taken.
const STARTS: [f64; 4] = [0.02, 0.2, 1.0, 8.0];
/// A share that was 0 and wants to grow, as it is tried.
const GROWN: [f64; 5] = [1e-6, 1e-4, 1e-2, 1e-1, 1.0];

/// The search for the best shares.
pub(super) struct Search<'a> {
    pub sums: &'a Sums,
    pub likelihood: Likelihood,
    /// Which parts may be above 0; the others stay 0.
    pub open: &'a [bool],
}

impl Search<'_> {
    fn at(&self, shares: &[f64]) -> Result<At, InferenceError> {
        At::of(self.sums, shares, self.likelihood)
    }

    /// Values that count for the residual variance.
    pub(super) fn free(&self) -> f64 {
        match self.likelihood {
            Likelihood::Restricted => self.sums.free,
            Likelihood::Full => self.sums.values as f64,
        }
    }

    /// Slopes of the deviance along the shares.
    fn slopes(&self, at: &At) -> DVector<f64> {
        &at.traces - &at.squares * (self.free() / at.rest)
    }

    /// The best shares, and what the likelihood is made of there.
    pub(super) fn best(&self) -> Result<(Vec<f64>, At), InferenceError> {
        let set = |share: f64| {
            self.open
                .iter()
                .map(|o| if *o { share } else { 0.0 })
                .collect()
        };
        let mut shares: Vec<f64> = set(0.0);
        let mut at = self.at(&shares)?;
        if !self.open.contains(&true) {
            return Ok((shares, at));
        }
        for start in STARTS {
            let tried: Vec<f64> = set(start);
            let there = self.at(&tried)?;
            if there.deviance < at.deviance {
                (shares, at) = (tried, there);
            }
        }
        for _ in 0..STEPS {
            (shares, at) = self.settle(shares, at)?;
            let Some(better) = self.grown(&shares, &at)? else {
                return Ok((shares, at));
            };
            (shares, at) = better;
        }
        Err(unsettled())
    }

    /// A part that was held at 0 although the values are likelier with it.
    fn grown(&self, shares: &[f64], at: &At) -> Result<Option<(Vec<f64>, At)>, InferenceError> {
        let slopes = self.slopes(at);
        let mut best: Option<(Vec<f64>, At)> = None;
        for k in 0..shares.len() {
            if !self.open[k] || shares[k] > 0.0 || slopes[k] >= 0.0 {
                continue;
            }
            for share in GROWN {
                let mut tried = shares.to_vec();
                tried[k] = share;
                let there = self.at(&tried)?;
                let least = best
                    .as_ref()
                    .map_or(at.deviance - 1e-9, |(_, b)| b.deviance);
                if there.deviance < least {
                    best = Some((tried, there));
                }
            }
        }
        Ok(best)
    }

    /// Newton's steps in the logarithms of the shares that are above 0.
    fn settle(&self, mut shares: Vec<f64>, mut at: At) -> Result<(Vec<f64>, At), InferenceError> {
        for _ in 0..STEPS {
            let (step, promised) = self.step(&shares, &at);
            if promised < CLOSE {
                return Ok((shares, at));
            }
            let zeroed = self.zeroed(&shares, &step);
            if zeroed != shares {
                let there = self.at(&zeroed)?;
                if there.deviance <= at.deviance {
                    (shares, at) = (zeroed, there);
                    continue;
                }
            }
            let mut part = 1.0;
            let (tried, there) = loop {
                let moved = shares.iter().zip(step.iter());
                let tried: Vec<f64> = moved.map(|(s, d)| s * libm::exp(part * d)).collect();
                let there = self.at(&tried)?;
                if there.deviance <= at.deviance {
                    break (tried, there);
                }
                part *= 0.5;
                // Rounding of the likelihood hides what is still promised.
                if part < 1e-4 {
                    return Ok((shares, at));
                }
            };
            (shares, at) = (tried, there);
            if shares.iter().any(|s| *s > ENDLESS) {
                return Err(InferenceError::NoScatter);
            }
        }
        Err(unsettled())
    }

    /// The shares with those at 0 that are small and shrink.
    fn zeroed(&self, shares: &[f64], step: &DVector<f64>) -> Vec<f64> {
        let most = self.sums.most_in_one;
        let zero = |(share, step): (&f64, &f64)| {
            if *step < 0.0 && share * most < SMALL {
                0.0
            } else {
                *share
            }
        };
        shares.iter().zip(step.iter()).map(zero).collect()
    }

    /// The step in the logarithms, 0 for shares of 0, and the decrease it promises.
    fn step(&self, shares: &[f64], at: &At) -> (DVector<f64>, f64) {
        let (free, count) = (self.free(), shares.len());
        let slopes = self.slopes(at);
        let logs = DVector::from_fn(count, |k, _| shares[k] * slopes[k]);
        let curves = DMatrix::from_fn(count, count, |k, l| {
            let curve = 2.0 * at.curves[(k, l)] / at.rest
                - at.squares[k] * at.squares[l] / (at.rest * at.rest);
            let straight = if k == l { logs[k] } else { 0.0 };
            shares[k] * shares[l] * (free * curve - at.products[(k, l)]) + straight
        });
        let eigen = curves.symmetric_eigen();
        let along = eigen.eigenvectors.transpose() * &logs;
        let most = eigen.eigenvalues.amax();
        let scaled = DVector::from_fn(count, |i, _| {
            let curve = eigen.eigenvalues[i].abs();
            if curve > 1e-13 * most {
                -along[i] / curve
            } else {
                0.0
            }
        });
        let promised = -scaled.dot(&along);
        let mut step = eigen.eigenvectors * scaled;
        let longest = step.amax();
        if longest > LONGEST {
            step *= LONGEST / longest;
        }
        for k in 0..count {
            if shares[k] == 0.0 {
                step[k] = 0.0;
            }
        }
        (step, promised)
    }
}

fn unsettled() -> InferenceError {
    InferenceError::NotSettled {
        steps: STEPS,
        what: text::error::the_parts_of_the_scatter(),
    }
}
