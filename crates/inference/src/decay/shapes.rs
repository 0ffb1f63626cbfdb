//! The curve against a straight line and against no change.

use super::{Value, least::Best, least::Stages};
use crate::{
    InferenceError,
    mixed::{self, Data, Place},
};

/// How the share left goes with the rounds.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Shape {
    /// It stays at 1.
    NoChange,
    /// It falls by the same amount each round.
    Line,
    /// It falls fast at first and levels off.
    Curve,
}

/// Akaike's criterion with its correction for few values, less is better.
///
/// Each shape is judged by the likelihood of the values under a model in which pieces
/// have a shift of their own and stages one in common (variances by full likelihood),
/// with the shape linearised at its best fit.
///
/// # Source
/// C. M. Hurvich and C.-L. Tsai, Biometrika 76 (1989) 297-307; linearisation as M. J.
/// Lindstrom and D. M. Bates, Biometrics 46 (1990) 673-687; both from memory.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Shapes {
    /// Of no change; none where there are too few values to correct for or no more than
    /// two stages, minus infinity where the shape leaves nothing.
    pub no_change: Option<f64>,
    /// Of the straight line.
    pub line: Option<f64>,
    /// Of the curve.
    pub curve: Option<f64>,
}

impl Shapes {
    /// The shape with the least criterion, of equals the simplest; none where they
    /// can't be compared.
    pub fn best(&self) -> Option<Shape> {
        let (none, line, curve) = (self.no_change?, self.line?, self.curve?);
        if none <= line && none <= curve {
            Some(Shape::NoChange)
        } else if line <= curve {
            Some(Shape::Line)
        } else {
            Some(Shape::Curve)
        }
    }
}

/// Variances beside the shape's own figures: of pieces, of stages, of the rest; of one
/// piece only the rest.
const VARIANCES: usize = 3;

pub(super) fn compared(
    values: &[Value],
    pieces: usize,
    stages: &Stages,
    means: &[f64],
    best: &Best,
) -> Shapes {
    // Two figures go through two means whatever these are.
    if means.len() <= 2 {
        return Shapes {
            no_change: None,
            line: None,
            curve: None,
        };
    }
    let slope = stages.slope(means);
    let curve = best.curve;
    let loss = 1.0 - curve.floor;
    let gone = |n: f64| -libm::expm1(-curve.rate * n);
    let of_rate = |n: f64| loss * n * libm::exp(-curve.rate * n);
    let criterion = |figures: usize, at: &dyn Fn(f64) -> f64, slopes: &[&dyn Fn(f64) -> f64]| {
        let count = values.len() as f64;
        let variances = if pieces > 1 { VARIANCES } else { 1 };
        let free = (figures + variances) as f64;
        let room = count - free - 1.0;
        if room <= 0.0 {
            return None;
        }
        let log = log_likelihood(values, at, slopes)?;
        Some(-2.0 * log + 2.0 * free + 2.0 * free * (free + 1.0) / room)
    };
    Shapes {
        no_change: criterion(0, &|_| 1.0, &[]),
        line: criterion(1, &|n| 1.0 - slope * n, &[&|n| n]),
        curve: criterion(2, &|n| curve.left(n), &[&gone, &of_rate])
            // At a bound one figure does nothing: it is counted all the same.
            .or_else(|| criterion(2, &|n| curve.left(n), &[&gone]))
            .or_else(|| criterion(2, &|n| curve.left(n), &[])),
    }
}

/// The log likelihood of the values about a shape; none where the model can't be had,
/// infinite where the shape leaves nothing.
fn log_likelihood(
    values: &[Value],
    at: &dyn Fn(f64) -> f64,
    slopes: &[&dyn Fn(f64) -> f64],
) -> Option<f64> {
    let mut data = Data::new(slopes.len(), 1);
    let mut stages: Vec<f64> = values.iter().map(|v| v.rounds).collect();
    stages.sort_by(f64::total_cmp);
    stages.dedup();
    for value in values {
        let stage = stages.partition_point(|n| *n < value.rounds);
        let place = Place {
            piece: value.piece,
            loads: &[Some(stage)],
        };
        let row: Vec<f64> = slopes.iter().map(|slope| slope(value.rounds)).collect();
        data.add(place, &row, value.left - at(value.rounds)).ok()?;
    }
    match mixed::full(&data) {
        Ok(fit) => Some(fit.log_likelihood),
        Err(InferenceError::NoScatter) => Some(f64::INFINITY),
        Err(_) => None,
    }
}
