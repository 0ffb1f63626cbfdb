//! A fitted mixed model.

use super::{
    Contrast, Data, criterion::At, data::length, error::Held, search::Search, separate::Separate,
    sums::Sums,
};
use crate::text;
use crate::{InferenceError, quantile};
use nalgebra::{DMatrix, DVector};

/// Which likelihood is made greatest.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Likelihood {
    /// Of what the fixed effects leave: variances aren't too small for few values.
    Restricted,
    /// Of the values themselves: for comparing models with different fixed effects.
    Full,
}

/// What is known of a part of the scatter.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum State {
    /// Its variance is above 0.
    Above,
    /// The values are likeliest with a variance of 0: no more scatter than chance
    /// brings anyway. That doesn't show that there is none.
    Zero,
    /// The design doesn't show it: one piece or load per arm, one value per piece, or
    /// loads that hold the same values as pieces do. It is held at 0, and comparisons
    /// that would rest on it are refused.
    NotTold,
}

/// One part of the scatter.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Part {
    /// Its variance, in the square of the values' unit; 0 upward.
    pub variance: f64,
    /// What is known of it.
    pub state: State,
}

/// A mixed model with its estimates.
#[derive(Debug, Clone)]
pub struct Fit {
    /// Scatter of pieces of one kind in the same loads.
    pub pieces: Part,
    /// Scatter of loads, by kind in the order given.
    pub loads: Vec<Part>,
    /// Variance of what is left, above 0.
    pub residual: f64,
    /// Log likelihood: restricted or full, as fitted.
    pub log_likelihood: f64,
    /// Values.
    pub values: usize,
    /// Fixed effects, in the order of their columns.
    pub effects: Vec<f64>,
    /// Residual variance in squared units of its own.
    share: f64,
    /// What an effect's weight is multiplied by, to be in units of its own.
    scales: Vec<f64>,
    /// Covariance of the effects over the residual variance, as if the shares were
    /// known, and with what not knowing them adds.
    plain: DMatrix<f64>,
    doubted: DMatrix<f64>,
    held: Held,
    /// Shares of the parts, and which are above 0.
    shares: Vec<f64>,
    above: Vec<usize>,
    /// Covariance of the residual variance and the shares above 0.
    known: DMatrix<f64>,
    separate: Separate,
    /// Values that count for the residual variance.
    free: f64,
    likelihood: Likelihood,
}

/// The model by restricted likelihood (REML).
///
/// # Errors
/// No more values than fixed effects; a fixed effect that follows from others; no
/// scatter left by the fixed effects, or none within pieces and loads; more than 1000
/// fixed effects and loads; a search that doesn't settle.
///
/// # Source
/// H. D. Patterson and R. Thompson, Biometrika 58 (1971) 545-554; derivatives as
/// usual, from memory; checked against a reference library.
pub fn restricted(data: &Data) -> Result<Fit, InferenceError> {
    Fit::of(data, Likelihood::Restricted)
}

/// The model by full likelihood (ML), for [`Fit::likelihood_ratio`].
///
/// # Errors
/// As for [`restricted`].
pub fn full(data: &Data) -> Result<Fit, InferenceError> {
    Fit::of(data, Likelihood::Full)
}

impl Fit {
    fn of(data: &Data, likelihood: Likelihood) -> Result<Self, InferenceError> {
        let sums = Sums::of(data)?;
        let separate = Separate::of(&sums)?;
        let search = Search {
            sums: &sums,
            likelihood,
            open: &separate.open,
        };
        let (shares, at) = search.best()?;
        let free = search.free();
        let unit = sums.unit * sums.unit;
        let residual = at.rest / free;
        let part = |k: usize| Part {
            variance: shares[k] * residual * unit,
            state: match (separate.open[k], shares[k] > 0.0) {
                (false, _) => State::NotTold,
                (true, false) => State::Zero,
                (true, true) => State::Above,
            },
        };
        // Values are in units of their own: their density shrinks as the unit grows.
        let constant = free * (1.0 + libm::log(2.0 * core::f64::consts::PI) - libm::log(free))
            + 2.0 * free * libm::log(sums.unit);
        let scaled = match likelihood {
            Likelihood::Restricted => 2.0 * sums.scales.iter().map(|s| libm::log(*s)).sum::<f64>(),
            Likelihood::Full => 0.0,
        };
        let effects = DVector::from_fn(sums.fixed, |i, _| {
            (sums.taken[i] + sums.unit * at.effects[i]) / sums.scales[i]
        });
        let above: Vec<usize> = (0..shares.len()).filter(|k| shares[*k] > 0.0).collect();
        let known = known(&at, &shares, &above, free)?;
        let held = Held::of(&sums, &at);
        Ok(Self {
            pieces: part(0),
            loads: (1..shares.len()).map(part).collect(),
            residual: residual * unit,
            log_likelihood: -0.5 * (at.deviance + constant + scaled),
            values: sums.values,
            effects: effects.iter().copied().collect(),
            share: residual,
            scales: sums.scales.iter().map(|s| sums.unit / s).collect(),
            doubted: held.with_doubt(&at.covariance, &above, &known),
            plain: at.covariance,
            known,
            held,
            above,
            shares,
            separate,
            free,
            likelihood,
        })
    }

    /// Covariance of two weighted sums of the effects, in the square of their unit.
    pub(super) fn covariance(&self, one: &[f64], other: &[f64]) -> f64 {
        (&self.doubted * self.scaled(one)).dot(&self.scaled(other)) * self.share
    }

    fn scaled(&self, weights: &[f64]) -> DVector<f64> {
        DVector::from_fn(weights.len(), |i, _| weights[i] * self.scales[i])
    }

    /// A weighted sum of the effects, one weight for each, with its error.
    ///
    /// Degrees of freedom are Satterthwaite's, exact where the design is balanced; the
    /// standard error counts that the parts of the scatter aren't known, which
    /// makes it greater where the design isn't balanced. Variances of 0 count as
    /// known to be 0.
    ///
    /// # Errors
    /// Weights of another length than the effects, or that are all 0 or not finite; a
    /// sum whose error would hold a scatter that the values don't show.
    ///
    /// # Source
    /// F. E. Satterthwaite, Biometrics Bulletin 2 (1946) 110-114; for mixed models,
    /// the variance of the estimated variance from the curvature of the likelihood:
    /// common practice. M. G. Kenward and J. H. Roger, Biometrics 53 (1997) 983-997,
    /// from memory, whose degrees of freedom are the same for a single sum.
    pub fn contrast(&self, weights: &[f64]) -> Result<Contrast, InferenceError> {
        length(weights.len(), self.effects.len())?;
        if weights.iter().any(|w| !w.is_finite()) {
            return Err(InferenceError::NotFinite);
        }
        let some = weights.iter().any(|w| *w != 0.0);
        InferenceError::unless(
            some,
            text::error::greatest_weight(),
            0.0,
            text::error::above_0_or_below_0(),
        )?;
        let scaled = self.scaled(weights);
        let of = |m: &DMatrix<f64>| (m * &scaled).dot(&scaled);
        let over_residual = of(&self.plain);
        let mut held = vec![over_residual];
        held.extend(self.held.growth.iter().map(of));
        // What is not the parts' is the residual's own.
        held[0] -= self
            .shares
            .iter()
            .zip(&held[1..])
            .map(|(s, h)| s * h)
            .sum::<f64>();
        for part in 0..self.shares.len() {
            if self.separate.misses(part, &held) {
                let part = if part == 0 {
                    text::error::pieces()
                } else {
                    text::error::loads()
                };
                return Err(InferenceError::Confounded { part });
            }
        }
        let slopes: Vec<f64> = std::iter::once(over_residual)
            .chain(self.above.iter().map(|k| self.share * held[k + 1]))
            .collect();
        let slopes = DVector::from_vec(slopes);
        let variance = self.share * over_residual;
        let doubt = (&self.known * &slopes).dot(&slopes);
        Ok(Contrast {
            estimate: weights.iter().zip(&self.effects).map(|(w, e)| w * e).sum(),
            standard_error: (self.share * of(&self.doubted)).sqrt(),
            df: (2.0 * variance * variance / doubt).min(self.free),
        })
    }

    /// How much likelier the values are than with fewer fixed effects: twice the
    /// difference of the log likelihoods, and how often chance brings as much.
    ///
    /// # Errors
    /// Either is not by full likelihood, or has as many effects as the other or other
    /// values.
    pub fn likelihood_ratio(&self, fewer: &Self) -> Result<(f64, f64), InferenceError> {
        length(fewer.values, self.values)?;
        let both = [self.likelihood, fewer.likelihood] == [Likelihood::Full; 2];
        InferenceError::unless(
            both,
            text::error::number_of_models_by_full_likelihood(),
            0.0,
            "2",
        )?;
        let more = self.effects.len() as f64 - fewer.effects.len() as f64;
        InferenceError::unless(
            more > 0.0,
            text::error::number_of_effects_that_are_tested(),
            more,
            text::error::n_1_or_more(),
        )?;
        let twice = 2.0 * (self.log_likelihood - fewer.log_likelihood);
        Ok((twice, quantile::chi_square_above(twice.max(0.0), more)))
    }
}

/// Covariance of the residual variance and of the shares above 0, by the curvature of
/// the likelihood; where that isn't that of a peak, by the curvature expected.
fn known(
    at: &At,
    shares: &[f64],
    above: &[usize],
    free: f64,
) -> Result<DMatrix<f64>, InferenceError> {
    let size = above.len() + 1;
    let variance = at.rest / free;
    let seen = DMatrix::from_fn(size, size, |i, j| match (i, j) {
        (0, 0) => free / (variance * variance),
        (0, part) | (part, 0) => at.squares[above[part - 1]] / (variance * variance),
        (i, j) => {
            let place = (above[i - 1], above[j - 1]);
            2.0 * at.curves[place] / variance - at.products[place]
        }
    });
    let expected = DMatrix::from_fn(size, size, |i, j| match (i, j) {
        (0, 0) => free / (variance * variance),
        (0, part) | (part, 0) => at.traces[above[part - 1]] / variance,
        (i, j) => at.products[(above[i - 1], above[j - 1])],
    });
    // In units of the parts themselves, so that none is nothing beside another.
    let units = DVector::from_fn(size, |i, _| {
        if i == 0 {
            variance
        } else {
            shares[above[i - 1]]
        }
    });
    [seen, expected]
        .into_iter()
        .find_map(|curve| {
            let scaled = DMatrix::from_fn(size, size, |i, j| curve[(i, j)] * units[i] * units[j]);
            let inverse = scaled.cholesky()?.inverse();
            Some(DMatrix::from_fn(size, size, |i, j| {
                2.0 * inverse[(i, j)] * units[i] * units[j]
            }))
        })
        .ok_or(InferenceError::NotSettled {
            steps: 0,
            what: text::error::the_parts_of_the_scatter(),
        })
}
