//! The textbook's curve through single values: A exp(-k n), with or without a floor c.
//!
//! Values start anywhere and are of one thing looked at again and again; errors count
//! as independent and alike. For pieces with a scatter of their own see
//! [`fit`](super::fit).

use crate::text;
use crate::{InferenceError, Interval, quantile};
use nalgebra::{DMatrix, DVector};

/// Rates in the grid of the search.
const RATES: usize = 200;
/// Steps of refinement at most.
const STEPS: usize = 100;
/// Change of the rate at which the search ends, as a share of it.
const CLOSE: f64 = 1e-13;

/// One figure of a curve.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Figure {
    /// Its value.
    pub value: f64,
    /// Its standard error, by the linearised curve.
    pub standard_error: f64,
    /// Degrees of freedom: values less figures.
    pub df: f64,
}

impl Figure {
    /// Student's interval at that level, such as 0.95.
    pub fn interval(&self, level: f64) -> Interval {
        let half = quantile::student(0.5 + level / 2.0, self.df) * self.standard_error;
        Interval {
            low: self.value - half,
            high: self.value + half,
        }
    }
}

/// A fitted curve A exp(-k n) + c.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Exponential {
    /// A, what leaves in the long run, in the values' unit.
    pub amplitude: Figure,
    /// k, per round.
    pub rate: Figure,
    /// c, what stays; none where it was held at 0.
    pub floor: Option<Figure>,
    /// Sum of squared residuals.
    pub rest: f64,
}

impl Exponential {
    /// Rounds in which half of what leaves has left.
    pub fn half_life(&self) -> f64 {
        core::f64::consts::LN_2 / self.rate.value
    }
}

/// Whether something stays in the long run.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Floor {
    /// A floor is fitted.
    Fitted,
    /// Everything leaves.
    Zero,
}

/// Least squares of the curve through pairs of rounds and value.
///
/// # Errors
/// As many figures as values or more; a number that is not finite; rounds that are all
/// the same; values that don't settle a rate above 0 (all equal, or a straight line).
///
/// ```
/// use inference::decay::plain::{Floor, exponential};
/// let values = [(0.0, 10.0), (1.0, 7.4), (2.0, 5.5), (4.0, 3.0), (6.0, 1.65)];
/// let curve = exponential(&values, Floor::Zero)?;
/// assert_eq!(format!("{:.3}", curve.rate.value), "0.300");
/// # Ok::<(), inference::InferenceError>(())
/// ```
pub fn exponential(values: &[(f64, f64)], floor: Floor) -> Result<Exponential, InferenceError> {
    let figures = if floor == Floor::Fitted { 3 } else { 2 };
    if values.len() <= figures {
        return Err(InferenceError::TooFew {
            given: values.len(),
            least: figures + 1,
        });
    }
    if values
        .iter()
        .any(|(n, v)| !(n.is_finite() && v.is_finite()))
    {
        return Err(InferenceError::NotFinite);
    }
    let first = values
        .iter()
        .fold(f64::INFINITY, |least, (n, _)| least.min(*n));
    let span = values
        .iter()
        .fold(0.0_f64, |most, (n, _)| most.max(n - first));
    InferenceError::unless(
        span > 0.0,
        text::error::span_of_rounds(),
        span,
        text::error::above_0(),
    )?;
    let mut problem = Problem {
        values,
        first,
        floor,
    };
    let rate = problem.rate(span)?;
    problem.figures(rate)
}

struct Problem<'a> {
    values: &'a [(f64, f64)],
    /// Rounds are counted from here while searching, for the sake of digits.
    first: f64,
    floor: Floor,
}

impl Problem<'_> {
    /// Columns of A and c at a rate.
    fn columns(&self, rate: f64) -> DMatrix<f64> {
        let width = if self.floor == Floor::Fitted { 2 } else { 1 };
        DMatrix::from_fn(self.values.len(), width, |i, column| match column {
            0 => libm::exp(-rate * (self.values[i].0 - self.first)),
            _ => 1.0,
        })
    }

    /// The linear figures at a rate, and what they leave of the values.
    fn linear(&self, rate: f64) -> Option<(DVector<f64>, DVector<f64>)> {
        let columns = self.columns(rate);
        let values = DVector::from_iterator(self.values.len(), self.values.iter().map(|v| v.1));
        let (q, r) = columns.clone().qr().unpack();
        let found = r.solve_upper_triangular(&(q.transpose() * &values))?;
        let rest = values - columns * &found;
        Some((found, rest))
    }

    fn rest(&self, rate: f64) -> f64 {
        self.linear(rate)
            .map_or(f64::INFINITY, |(_, rest)| rest.norm_squared())
    }

    /// The best rate: the best of a wide grid, refined by Gauss and Newton's steps.
    fn rate(&self, span: f64) -> Result<f64, InferenceError> {
        let unsettled = InferenceError::NotSettled {
            steps: STEPS,
            what: text::error::a_rate_above_0(),
        };
        let (low, high) = (libm::log(1e-3 / span), libm::log(100.0 / span));
        let at = |i: usize| libm::exp(low + (high - low) * i as f64 / (RATES - 1) as f64);
        let best = (0..RATES)
            .min_by(|i, j| self.rest(at(*i)).total_cmp(&self.rest(at(*j))))
            .unwrap_or(0);
        let all: f64 = self.values.iter().map(|v| v.1 * v.1).sum();
        let mean = self.values.iter().map(|v| v.1).sum::<f64>() / self.values.len() as f64;
        let spread: f64 = self
            .values
            .iter()
            .map(|v| (v.1 - mean) * (v.1 - mean))
            .sum();
        if best == 0 || best == RATES - 1 || spread <= 1e-24 * all {
            return Err(unsettled);
        }
        let mut rate = at(best);
        for _ in 0..STEPS {
            let Some(step) = self.step(rate) else {
                return Err(unsettled);
            };
            let mut part = 1.0;
            let here = self.rest(rate);
            while part > 1e-6 && self.rest(rate + part * step) > here * (1.0 + 1e-15) {
                part *= 0.5;
            }
            rate += part * step;
            if (part * step).abs() <= CLOSE * rate || part <= 1e-6 {
                return Ok(rate);
            }
        }
        Ok(rate)
    }

    /// The slopes of the curve along all its figures, rate second.
    fn slopes(&self, rate: f64, amplitude: f64, first: f64) -> DMatrix<f64> {
        let width = if self.floor == Floor::Fitted { 3 } else { 2 };
        DMatrix::from_fn(self.values.len(), width, |i, column| {
            let n = self.values[i].0 - first;
            match column {
                0 => libm::exp(-rate * n),
                1 => -amplitude * n * libm::exp(-rate * n),
                _ => 1.0,
            }
        })
    }

    fn step(&self, rate: f64) -> Option<f64> {
        let (linear, rest) = self.linear(rate)?;
        let (q, r) = self.slopes(rate, linear[0], self.first).qr().unpack();
        let step = r.solve_upper_triangular(&(q.transpose() * rest))?;
        step[1].is_finite().then_some(step[1])
    }

    fn figures(&mut self, rate: f64) -> Result<Exponential, InferenceError> {
        // From here on A is that of round 0.
        self.first = 0.0;
        let unsettled = InferenceError::NotSettled {
            steps: STEPS,
            what: text::error::the_figures_of_the_curve(),
        };
        let (linear, rest) = self.linear(rate).ok_or(unsettled)?;
        let slopes = self.slopes(rate, linear[0], 0.0);
        let df = (slopes.nrows() - slopes.ncols()) as f64;
        let (_, r) = slopes.qr().unpack();
        let inverse = r
            .solve_upper_triangular(&DMatrix::identity(r.nrows(), r.nrows()))
            .ok_or(unsettled)?;
        let variance = rest.norm_squared() / df;
        let figure = |at: usize, value: f64| Figure {
            value,
            standard_error: (variance * inverse.row(at).norm_squared()).sqrt(),
            df,
        };
        Ok(Exponential {
            amplitude: figure(0, linear[0]),
            rate: figure(1, rate),
            floor: (self.floor == Floor::Fitted).then(|| figure(2, linear[1])),
            rest: rest.norm_squared(),
        })
    }
}
