//! The length of a mean vector, with an interval that holds when it is 0.
//!
//! Chance adds to a length and never takes away: the mean of vectors that differ
//! by nothing still has a length. So the lower end is found backwards. For a true
//! length t, means t u + e scatter about t times the direction seen, with e from
//! the estimated covariance and its degrees of freedom; the lower end is the t at
//! which a length as great as seen has become rare, or 0 if it is not rare there.
//! Such an e, three normal parts over the root of a chi-square, has an
//! F-distributed square along each direction, so that only directions are summed,
//! over a fixed even set of points on the sphere. The upper end is Student's
//! bound beyond the length seen, which errs to the long side already. Searching it
//! backwards too would be shorter, but let "below the margin" be said wrongly in
//! up to 12 % of simulated trials. Far from 0 both ends are Student's interval
//! along the direction seen.

use crate::{Interval, quantile, scatter::Error};
use nalgebra::{Matrix3, SymmetricEigen, Vector3};
use statrs::function::beta::beta_reg;
use std::sync::LazyLock;

/// Directions that are summed; the tails then hold to about 0.0005.
const DIRECTIONS: usize = 400;
/// The lower end holds to this part of the length seen.
const NEAR: f64 = 1e-9;
/// Steps of the search for it at most: those of halving alone.
const MOST_STEPS: usize = 40;
/// Weight of an even scatter where few degrees of freedom can't tell directions.
const EVEN_WEIGHT_DF: f64 = 2.0;

/// The length of a mean vector and what chance does to it.
#[derive(Debug, Clone)]
pub struct Length {
    observed: f64,
    direction: Vector3<f64>,
    /// Error along the direction seen.
    standard_error: f64,
    df: f64,
    /// Square root of the covariance times each direction.
    errors: Vec<Vector3<f64>>,
    radius: RadiusTable,
}

impl Length {
    /// The length of `mean`, whose error is known only from the data.
    ///
    /// Directions in which few degrees of freedom happened to show little or no
    /// scatter are given at least a share of the average one.
    pub fn new(mean: Vector3<f64>, error: &Error) -> Self {
        let df = error.df.max(1.0);
        let (root, widest) = root(&error.covariance, df);
        let observed = mean.norm();
        let direction = if observed > 0.0 {
            mean / observed
        } else {
            widest
        };
        Self {
            observed,
            direction,
            standard_error: (root * direction).norm(),
            df,
            errors: SPHERE.iter().map(|w| root * w).collect(),
            radius: RadiusTable::new(df),
        }
    }

    /// The length seen.
    pub fn observed(&self) -> f64 {
        self.observed
    }

    /// The standard error along the direction seen.
    pub fn standard_error(&self) -> f64 {
        self.standard_error
    }

    /// Degrees of freedom of the standard error.
    pub fn df(&self) -> f64 {
        self.df
    }

    /// Two-sided interval of the true length at that level, such as 0.95. It holds
    /// the length seen; its lower end is 0 where chance alone explains that.
    pub fn interval(&self, level: f64) -> Interval {
        let tail = (1.0 - level) / 2.0;
        Interval {
            low: self.lower(1.0 - tail),
            high: self.upper(1.0 - tail),
        }
    }

    /// The true length lies at or above this with that confidence; 0 upward.
    pub fn lower(&self, confidence: f64) -> f64 {
        let rare = 1.0 - confidence;
        if self.as_great(0.0) >= rare {
            return 0.0;
        }
        crossing(self.observed, |length| self.as_great(length) - rare)
    }

    /// The true length lies below this with that confidence.
    ///
    /// Student's one-sided bound along the direction seen: a lucky small length proves
    /// nothing. Where vectors scatter mostly one way, chance may have turned what is
    /// seen out of that way: along every other direction the bound of twice the tail
    /// has to lie below it as well.
    pub fn upper(&self, confidence: f64) -> f64 {
        let seen = self.observed + quantile::student(confidence, self.df) * self.standard_error;
        let limit = quantile::student(1.0 - 2.0 * (1.0 - confidence), self.df);
        let mean = self.direction * self.observed;
        let elsewhere = SPHERE
            .iter()
            .zip(&self.errors)
            .map(|(way, error)| mean.dot(way).abs() + limit * error.norm());
        elsewhere.fold(seen, f64::max)
    }

    /// How often a true length would show a length as great as seen or greater.
    pub fn as_great(&self, true_length: f64) -> f64 {
        if self.standard_error == 0.0 && self.errors.iter().all(|e| *e == Vector3::zeros()) {
            return if true_length >= self.observed {
                1.0
            } else {
                0.0
            };
        }
        let gap = self.observed * self.observed - true_length * true_length;
        let within: f64 = self
            .errors
            .iter()
            .map(|e| {
                let along = true_length * self.direction.dot(e);
                let square = e.norm_squared();
                let under_root = along * along + square * gap;
                if under_root < 0.0 || square == 0.0 {
                    // No radius in this direction brings the mean near enough.
                    return f64::from(square == 0.0 && gap >= 0.0);
                }
                let root = under_root.sqrt();
                let far = self.radius.below((root - along) / square);
                let near = self.radius.below((-root - along) / square);
                far - near
            })
            .sum();
        1.0 - within / self.errors.len() as f64
    }
}

/// Root of the covariance with its small directions filled up, and the direction
/// in which it is widest.
fn root(covariance: &Matrix3<f64>, df: f64) -> (Matrix3<f64>, Vector3<f64>) {
    let eigen = SymmetricEigen::new((covariance + covariance.transpose()) / 2.0);
    let floor = covariance.trace() / 3.0 * EVEN_WEIGHT_DF / (EVEN_WEIGHT_DF + df);
    let roots = eigen.eigenvalues.map(|v| v.max(floor).max(0.0).sqrt());
    let widest = eigen.eigenvectors.column(roots.imax()).into_owned();
    let root = eigen.eigenvectors * Matrix3::from_diagonal(&roots) * eigen.eigenvectors.transpose();
    (root, widest)
}

/// Even points on the unit sphere: a spiral by the golden angle.
static SPHERE: LazyLock<[Vector3<f64>; DIRECTIONS]> = LazyLock::new(|| {
    let golden = std::f64::consts::PI * (3.0 - 5.0_f64.sqrt());
    std::array::from_fn(|i| {
        let z = 1.0 - (2 * i + 1) as f64 / DIRECTIONS as f64;
        let ring = (1.0 - z * z).sqrt();
        let turn = golden * i as f64;
        Vector3::new(ring * libm::cos(turn), ring * libm::sin(turn), z)
    })
});

/// Where `rising` passes 0 between 0, where it lies below, and `most`.
///
/// By false position, in which an end that stays put counts half as much each time
/// (the Illinois rule; Dowell and Jarratt, BIT 11 (1971) 168-174, from memory).
fn crossing(most: f64, rising: impl Fn(f64) -> f64) -> f64 {
    let (mut from, mut to) = (0.0, most);
    let (mut under, mut over) = (rising(from), rising(to));
    let mut last_under = None;
    for _ in 0..MOST_STEPS {
        if to - from < NEAR * most {
            break;
        }
        let slanted = to - over * (to - from) / (over - under);
        // A hair off the end, so that both ends close in.
        let inside = 0.25 * NEAR * most;
        let at = slanted.clamp(from + inside, to - inside);
        let here = rising(at);
        let is_under = here < 0.0;
        if is_under {
            (from, under) = (at, here);
            if last_under == Some(true) {
                over *= 0.5;
            }
        } else {
            (to, over) = (at, here);
            if last_under == Some(false) {
                under *= 0.5;
            }
        }
        last_under = Some(is_under);
    }
    0.5 * (from + to)
}

/// The distribution of r where r squared over 3 is F with 3 and `df` degrees of
/// freedom, as a table in the logarithm of r.
#[derive(Debug, Clone)]
struct RadiusTable {
    below: Vec<f64>,
}

impl RadiusTable {
    const FROM: f64 = -7.0;
    const STEP: f64 = 0.05;
    const STEPS: usize = 400;
    /// A tail that counts as none.
    const NOTHING: f64 = 1e-12;

    fn new(df: f64) -> Self {
        let mut below = Vec::with_capacity(Self::STEPS + 1);
        for i in 0..=Self::STEPS {
            let r = libm::exp(Self::FROM + Self::STEP * i as f64);
            let r2 = r * r;
            below.push(beta_reg(1.5, df / 2.0, r2 / (r2 + df)));
            // Beyond this nothing is left.
            if below[i] >= 1.0 - Self::NOTHING {
                break;
            }
        }
        below.resize(Self::STEPS + 1, 1.0);
        Self { below }
    }

    fn below(&self, r: f64) -> f64 {
        if r <= 0.0 {
            return 0.0;
        }
        let place = (libm::log(r) - Self::FROM) / Self::STEP;
        if place <= 0.0 {
            return 0.0;
        }
        let i = place as usize;
        if i >= Self::STEPS {
            return 1.0;
        }
        let part = place - i as f64;
        self.below[i] * (1.0 - part) + self.below[i + 1] * part
    }
}

#[cfg(test)]
mod tests;
