//! The likelihood of a mixed model at given shares of scatter, with its slopes.
//!
//! The covariance of the values is s^2 (I + g_0 Z_0 Z_0' + g_1 Z_1 Z_1' + ...), where
//! Z_0 tells the pieces, Z_1 and on the loads of each kind. With P its inverse less
//! what the fixed effects take up, the slopes of -2 log likelihood along g_k are
//! tr(Z_k' P Z_k) - |Z_k' P y|^2 / s^2, and the curvatures come from the same parts.

use super::{Likelihood, sums::Sums};
use crate::InferenceError;
use crate::text;
use nalgebra::{DMatrix, DVector};

/// What the likelihood is made of at some shares.
pub(super) struct At {
    /// -2 log likelihood at the best residual variance, less its constant.
    pub deviance: f64,
    /// The residual's sum of squares in the metric of the covariance.
    pub rest: f64,
    /// tr(Z_k' P Z_k).
    pub traces: DVector<f64>,
    /// tr(P V_k P V_l).
    pub products: DMatrix<f64>,
    /// |Z_k' P y|^2.
    pub squares: DVector<f64>,
    /// y' P V_k P V_l P y.
    pub curves: DMatrix<f64>,
    /// Fixed effects, of the values less those taken off before.
    pub effects: DVector<f64>,
    /// Covariance of the fixed effects over the residual variance.
    pub covariance: DMatrix<f64>,
    pub weighted: Weighted,
    /// The inverse of the system, in unscaled rows and columns.
    pub fitted: DMatrix<f64>,
    /// Its columns of the fixed effects.
    pub first: DMatrix<f64>,
}

/// The sums weighted for some share of the pieces.
pub(super) struct Weighted {
    /// W' H^-1 W with the pieces' part of H only.
    pub all: DMatrix<f64>,
    /// Sums over pieces of the weighted products of sums, and the same once more
    /// times the piece's own z' H^-1 z.
    pub once: DMatrix<f64>,
    pub twice: DMatrix<f64>,
    log_determinant: f64,
    trace: f64,
    product: f64,
}

impl Weighted {
    fn of(sums: &Sums, share: f64) -> Self {
        let size = sums.of_rows.nrows();
        let mut found = Self {
            all: sums.of_rows.clone(),
            once: DMatrix::zeros(size, size),
            twice: DMatrix::zeros(size, size),
            log_determinant: 0.0,
            trace: 0.0,
            product: 0.0,
        };
        for (values, count, products) in &sums.of_pieces {
            let weight = 1.0 / (1.0 + share * values);
            let own = values * weight;
            add(&mut found.all, products, -share * weight);
            add(&mut found.once, products, weight * weight);
            add(&mut found.twice, products, weight * weight * own);
            found.log_determinant += count * libm::log1p(share * values);
            found.trace += count * own;
            found.product += count * own * own;
        }
        found
    }
}

fn add(to: &mut DMatrix<f64>, what: &DMatrix<f64>, times: f64) {
    to.zip_apply(what, |sum, entry| *sum += entry * times);
}

impl At {
    /// At those shares, 0 upward: the pieces', then each kind of loads'.
    pub(super) fn of(
        sums: &Sums,
        shares: &[f64],
        likelihood: Likelihood,
    ) -> Result<Self, InferenceError> {
        let unsettled = InferenceError::NotSettled {
            steps: 0,
            what: text::error::the_parts_of_the_scatter(),
        };
        let (columns, fixed) = (sums.columns(), sums.fixed);
        let weighted = Weighted::of(sums, shares[0]);
        let mut roots = DVector::from_element(columns, 1.0);
        for (kind, range) in sums.kinds.iter().enumerate() {
            roots
                .rows_mut(range.start, range.len())
                .fill(shares[kind + 1].sqrt());
        }
        let scale = |mut m: DMatrix<f64>| {
            m.row_iter_mut()
                .zip(roots.iter())
                .for_each(|(mut row, r)| row *= *r);
            m
        };
        let both = |m: &DMatrix<f64>| scale(scale(m.clone()).transpose());
        let products = weighted.all.view((0, 0), (columns, columns)).into_owned();
        let mut system = both(&products);
        (fixed..columns).for_each(|i| system[(i, i)] += 1.0);
        let right = weighted
            .all
            .view((0, columns), (columns, 1))
            .column(0)
            .component_mul(&roots);
        let root = system.clone().cholesky().ok_or(unsettled)?;
        let solved = root.solve(&right);
        let inverse = root.inverse();
        let effects = solved.rows(0, fixed).into_owned();
        // The value less all that is fitted, as weights of the columns.
        let mut less = DVector::from_element(columns + 1, 1.0);
        less.rows_mut(0, columns)
            .copy_from(&-solved.component_mul(&roots));
        // What is left, and what the loads' parts cost for being off 0.
        let off = solved.rows(fixed, columns - fixed).norm_squared();
        let rest = (&weighted.all * &less).dot(&less) + off;
        let covariance = inverse.view((0, 0), (fixed, fixed)).into_owned();
        let (log_determinant, free, traced) = match likelihood {
            Likelihood::Restricted => (
                log_of(&root.l_dirty().diagonal()),
                sums.free,
                inverse.clone(),
            ),
            Likelihood::Full => {
                let loads = columns - fixed;
                let part = system.view((fixed, fixed), (loads, loads)).into_owned();
                let root = part.cholesky().ok_or(unsettled)?;
                let mut traced = DMatrix::zeros(columns, columns);
                traced
                    .view_mut((fixed, fixed), (loads, loads))
                    .copy_from(&root.inverse());
                (
                    log_of(&root.l_dirty().diagonal()),
                    sums.values as f64,
                    traced,
                )
            }
        };
        // Fixed effects and loads as rows: what the whole model projects onto.
        let first = scale(inverse.columns(0, fixed).into_owned());
        let traced = both(&traced);
        let fitted = both(&inverse);
        let mut found = Self {
            deviance: weighted.log_determinant
                + log_determinant
                + free * libm::log(rest.max(f64::MIN_POSITIVE)),
            rest,
            traces: DVector::zeros(shares.len()),
            products: DMatrix::zeros(shares.len(), shares.len()),
            squares: DVector::zeros(shares.len()),
            curves: DMatrix::zeros(shares.len(), shares.len()),
            effects,
            covariance,
            weighted,
            fitted,
            first,
        };
        found.slopes(sums, &traced, &less);
        Ok(found)
    }

    /// `traced`: the inverse of the system in unscaled columns, as the determinant has
    /// it; `less`: the value less all that is fitted, as weights of the columns.
    fn slopes(&mut self, sums: &Sums, traced: &DMatrix<f64>, less: &DVector<f64>) {
        let (weighted, fitted) = (&self.weighted, &self.fitted);
        let (columns, fixed) = (sums.columns(), sums.fixed);
        let loads = columns - fixed;
        let part = |m: &DMatrix<f64>| m.view((0, 0), (columns, columns)).into_owned();
        let (all, once, twice) = (
            part(&weighted.all),
            part(&weighted.once),
            part(&weighted.twice),
        );
        let traced_once = traced * &once;
        self.traces[0] = weighted.trace - traced_once.trace();
        self.products[(0, 0)] =
            weighted.product - 2.0 * traced.dot(&twice) + traced_once.transpose().dot(&traced_once);
        let along = &weighted.once * less;
        self.squares[0] = along.dot(less);
        let sum = along.rows(0, columns).into_owned();
        self.curves[(0, 0)] = (&weighted.twice * less).dot(less) - (fitted * &sum).dot(&sum);
        if loads == 0 {
            return;
        }
        let rows = all.rows(fixed, loads).into_owned();
        let of_loads = |inverse: &DMatrix<f64>| {
            let used = &rows * inverse;
            let mut free = -&used;
            (0..loads).for_each(|i| free[(i, fixed + i)] += 1.0);
            let square = all.view((fixed, fixed), (loads, loads)) - &used * rows.transpose();
            (free, square)
        };
        let (free_traced, square_traced) = of_loads(traced);
        let (free, square) = of_loads(fitted);
        let crossed = (&free_traced * &once).component_mul(&free_traced);
        let scores = (&weighted.all * less).rows(fixed, loads).into_owned();
        let pieces = &free * &sum;
        let own = |kind: usize| {
            let range = &sums.kinds[kind];
            (range.start - fixed, range.len())
        };
        for k in 0..sums.kinds.len() {
            let (at_k, len_k) = own(k);
            let score_k = scores.rows(at_k, len_k);
            self.traces[k + 1] = square_traced.view((at_k, at_k), (len_k, len_k)).trace();
            self.squares[k + 1] = score_k.norm_squared();
            let with_pieces = crossed.rows(at_k, len_k).sum();
            let curve = score_k.dot(&pieces.rows(at_k, len_k));
            for (i, j) in [(0, k + 1), (k + 1, 0)] {
                self.products[(i, j)] = with_pieces;
                self.curves[(i, j)] = curve;
            }
            for l in 0..sums.kinds.len() {
                let (at_l, len_l) = own(l);
                let place = ((at_k, at_l), (len_k, len_l));
                self.products[(k + 1, l + 1)] = square_traced.view(place.0, place.1).norm_squared();
                let through = square.view(place.0, place.1) * scores.rows(at_l, len_l);
                self.curves[(k + 1, l + 1)] = score_k.dot(&through);
            }
        }
    }
}

fn log_of(diagonal: &DVector<f64>) -> f64 {
    2.0 * diagonal.iter().map(|v| libm::log(*v)).sum::<f64>()
}
