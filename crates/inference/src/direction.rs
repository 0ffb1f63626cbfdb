//! Along which of several known directions a shift goes.
//!
//! A shift and the directions are vectors with errors. Their cosine is 1 where both
//! point the same way, 0 where they stand square, -1 where they are opposite. How sure
//! it is, and which direction is nearest, is found by drawing the shift and the
//! directions many times from their errors.

use crate::text;
use crate::{InferenceError, Interval, chance::Chance, quantile};
use nalgebra::{SMatrix, SVector};

/// Draws at most.
const MOST_DRAWS: usize = 1_000_000;

/// A vector with its error.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Vector<const P: usize> {
    /// The vector.
    pub mean: SVector<f64, P>,
    /// Its covariance; 0 where it is known.
    pub covariance: SMatrix<f64, P, P>,
    /// Degrees of freedom of the covariance, above 0.
    pub df: f64,
}

/// What is asked of a shift.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Question {
    /// How sure an answer has to be, such as 0.95; between 0 and 1.
    pub level: f64,
    /// A direction whose cosine is surely below this doesn't fit, such as 0.8; from -1
    /// to below 1.
    pub least_cosine: f64,
    /// Times that shift and directions are drawn, from 100 to 1,000,000.
    pub draws: usize,
    /// Seed of the draws.
    pub seed: u64,
}

/// How a direction fits a shift.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Likeness {
    /// The cosine, from -1 to 1.
    pub cosine: f64,
    /// Its interval at the level asked for.
    pub interval: Interval,
    /// How often it was the nearest of all directions, from 0 to 1.
    pub nearest: f64,
}

/// Which direction a shift goes along.
#[derive(Debug, Clone, PartialEq)]
pub enum Answer {
    /// The shift is no more than chance, so that it has no direction.
    NoShift,
    /// Surely nearest to that one (counted from 0), which fits.
    One(usize),
    /// Undecided between these, the likeliest first; where it is a single one, it is the
    /// nearest but may not fit.
    Undecided(Vec<usize>),
    /// None of them fits.
    None,
}

/// An answer with what it rests on.
#[derive(Debug, Clone, PartialEq)]
pub struct Found {
    /// The answer.
    pub answer: Answer,
    /// Each direction, in the order given.
    pub likenesses: Vec<Likeness>,
    /// How often chance alone brings a shift as great, by Hotelling's T-squared.
    pub p_of_no_shift: f64,
}

/// Which of the directions a shift goes along.
///
/// # Errors
/// No direction, or one of length 0; a number that is not finite; a covariance that
/// is none; degrees of freedom of the shift below its number of parts; a question out
/// of its ranges.
///
/// ```
/// use inference::direction::{Answer, Question, Vector, along};
/// use nalgebra::{Matrix2, Vector2};
/// let known = |a, b| Vector { mean: Vector2::new(a, b), covariance: Matrix2::zeros(), df: 1.0 };
/// let shift = Vector { mean: Vector2::new(-0.4, -2.9), covariance: Matrix2::identity() * 0.05, df: 6.0 };
/// let question = Question { level: 0.95, least_cosine: 0.8, draws: 4000, seed: 1 };
/// let found = along(&shift, &[known(0.0, -1.0), known(1.0, 0.3)], &question)?;
/// assert_eq!(found.answer, Answer::One(0));
/// # Ok::<(), inference::InferenceError>(())
/// ```
pub fn along<const P: usize>(
    shift: &Vector<P>,
    directions: &[Vector<P>],
    question: &Question,
) -> Result<Found, InferenceError> {
    question.check()?;
    if directions.is_empty() {
        return Err(InferenceError::TooFew { given: 0, least: 1 });
    }
    let root = shift.root()?;
    let range = text::error::the_number_of_parts_of_a_vector();
    InferenceError::unless(
        shift.df >= P as f64,
        text::error::number_of_degrees_of_freedom(),
        shift.df,
        range,
    )?;
    let roots = directions
        .iter()
        .map(Vector::root)
        .collect::<Result<Vec<_>, _>>()?;
    for direction in directions {
        let length = direction.mean.norm();
        InferenceError::unless(
            length > 0.0,
            text::error::length_of_a_direction(),
            length,
            text::error::above_0(),
        )?;
    }
    let mut chance = Chance::new(question.seed);
    let mut cosines = vec![Vec::with_capacity(question.draws); directions.len()];
    let mut nearest = vec![0_usize; directions.len()];
    for _ in 0..question.draws {
        let drawn = shift.drawn(&root, &mut chance);
        let mut best = (0, f64::MIN);
        for (at, (direction, root)) in directions.iter().zip(&roots).enumerate() {
            let found = cosine(&drawn, &direction.drawn(root, &mut chance));
            cosines[at].push(found);
            if found > best.1 {
                best = (at, found);
            }
        }
        nearest[best.0] += 1;
    }
    let likenesses: Vec<Likeness> = directions
        .iter()
        .zip(&mut cosines)
        .zip(&nearest)
        .map(|((direction, drawn), nearest)| Likeness {
            cosine: cosine(&shift.mean, &direction.mean),
            interval: quantile::middle(drawn, question.level),
            nearest: *nearest as f64 / question.draws as f64,
        })
        .collect();
    let p_of_no_shift = shift.p_of_none();
    Ok(Found {
        answer: answer(&likenesses, p_of_no_shift, question),
        likenesses,
        p_of_no_shift,
    })
}

fn answer(likenesses: &[Likeness], p_of_no_shift: f64, question: &Question) -> Answer {
    if p_of_no_shift > 1.0 - question.level {
        return Answer::NoShift;
    }
    let fits = |one: &Likeness| one.interval.high >= question.least_cosine;
    if !likenesses.iter().any(fits) {
        return Answer::None;
    }
    let mut order: Vec<usize> = (0..likenesses.len()).collect();
    order.sort_by(|&i, &j| likenesses[j].nearest.total_cmp(&likenesses[i].nearest));
    let first = &likenesses[order[0]];
    if first.nearest >= question.level && first.interval.low >= question.least_cosine {
        return Answer::One(order[0]);
    }
    order.retain(|at| likenesses[*at].nearest > (1.0 - question.level) / 2.0);
    Answer::Undecided(order)
}

impl Question {
    fn check(&self) -> Result<(), InferenceError> {
        InferenceError::unless_share(text::error::level(), self.level)?;
        let fine = (-1.0..1.0).contains(&self.least_cosine);
        let range = text::error::from_1_to_below_1();
        InferenceError::unless(fine, text::error::least_cosine(), self.least_cosine, range)?;
        let fine = (100..=MOST_DRAWS).contains(&self.draws);
        let range = text::error::from_100_to_1_000_000();
        InferenceError::unless(
            fine,
            text::error::number_of_draws(),
            self.draws as f64,
            range,
        )
    }
}

impl<const P: usize> Vector<P> {
    /// The root of the covariance: what a standard normal vector is multiplied by.
    fn root(&self) -> Result<SMatrix<f64, P, P>, InferenceError> {
        let finite = |v: &f64| v.is_finite();
        if !(self.mean.iter().all(finite) && self.covariance.iter().all(finite)) {
            return Err(InferenceError::NotFinite);
        }
        let fine = self.df > 0.0;
        InferenceError::unless(
            fine,
            text::error::number_of_degrees_of_freedom(),
            self.df,
            text::error::above_0(),
        )?;
        let size = self.covariance.diagonal().amax();
        let mut lower = SMatrix::<f64, P, P>::zeros();
        for j in 0..P {
            let left = self.covariance[(j, j)] - lower.row(j).norm_squared();
            let fine = left >= -1e-9 * size;
            InferenceError::unless(
                fine,
                text::error::variance_in_some_direction(),
                left,
                text::error::n_0_or_above(),
            )?;
            // What has no scatter of its own stays without.
            if left <= 1e-12 * size {
                continue;
            }
            lower[(j, j)] = left.sqrt();
            for i in j + 1..P {
                let shared = lower.row(i).dot(&lower.row(j));
                lower[(i, j)] = (self.covariance[(i, j)] - shared) / lower[(j, j)];
            }
        }
        Ok(lower)
    }

    /// A vector drawn about it, as far as its own error is known.
    fn drawn(&self, root: &SMatrix<f64, P, P>, chance: &mut Chance) -> SVector<f64, P> {
        let error = root * SVector::<f64, P>::from_fn(|_, _| chance.normal());
        self.mean + error / (chance.chi_square(self.df) / self.df).sqrt()
    }

    /// How often chance alone brings a mean as far from 0.
    fn p_of_none(&self) -> f64 {
        let size = self.covariance.diagonal().amax();
        // A direction without scatter is one in which anything is a shift.
        let floor = SMatrix::<f64, P, P>::identity() * (1e-12 * size);
        let Some(root) = (self.covariance + floor).cholesky() else {
            return if self.mean.norm() > 0.0 { 0.0 } else { 1.0 };
        };
        let (parts, rest) = (P as f64, self.df - P as f64 + 1.0);
        let square = root.solve(&self.mean).dot(&self.mean);
        quantile::fisher_above(square * rest / (self.df * parts), parts, rest)
    }
}

fn cosine<const P: usize>(one: &SVector<f64, P>, other: &SVector<f64, P>) -> f64 {
    let lengths = one.norm() * other.norm();
    if lengths > 0.0 {
        (one.dot(other) / lengths).clamp(-1.0, 1.0)
    } else {
        0.0
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use nalgebra::{Matrix2, Vector2};

    const QUESTION: Question = Question {
        level: 0.95,
        least_cosine: 0.8,
        draws: 2000,
        seed: 4,
    };

    fn vector(a: f64, b: f64, variance: f64, df: f64) -> Vector<2> {
        Vector {
            mean: Vector2::new(a, b),
            covariance: Matrix2::identity() * variance,
            df,
        }
    }

    fn asked(shift: Vector<2>, directions: &[Vector<2>]) -> Answer {
        along(&shift, directions, &QUESTION).unwrap().answer
    }

    #[test]
    fn answers_are_as_sure_as_the_shift_and_the_directions() {
        let blue = vector(-1.0, -5.0, 0.0, 1.0);
        let red = vector(6.0, 2.0, 0.0, 1.0);
        let violet = vector(2.0, -4.0, 0.0, 1.0);
        let towards_blue = vector(-0.3, -1.6, 0.01, 6.0);
        assert_eq!(asked(towards_blue, &[red, blue]), Answer::One(1));
        assert_eq!(
            asked(vector(-0.3, -1.6, 2.0, 6.0), &[red, blue]),
            Answer::NoShift
        );
        assert_eq!(asked(towards_blue, &[red]), Answer::None);
        let between = vector(0.2, -1.6, 0.01, 6.0);
        let undecided = asked(between, &[blue, violet, red]);
        assert!(
            matches!(&undecided, Answer::Undecided(of) if of.len() == 2 && !of.contains(&2)),
            "{undecided:?}"
        );
        // A direction that is hardly known decides nothing.
        let unsure = vector(-1.0, -5.0, 9.0, 4.0);
        assert!(matches!(
            asked(towards_blue, &[red, unsure]),
            Answer::Undecided(_)
        ));
    }

    /// Small errors turn a shift by its error across it over its length (delta rule).
    #[test]
    fn intervals_agree_with_the_delta_rule() {
        let shift = vector(0.0, 2.0, 0.01, 1e7);
        let at_angle = vector(1.0, 1.0, 0.0, 1.0);
        let question = Question {
            draws: 40_000,
            ..QUESTION
        };
        let found = along(&shift, &[at_angle], &question).unwrap();
        let slope = 0.5_f64.sqrt() * 0.1 / 2.0;
        let interval = found.likenesses[0].interval;
        assert!((interval.high - interval.low - 2.0 * 1.96 * slope).abs() < 0.004);
    }

    #[test]
    fn cosines_lie_in_their_intervals_as_often_as_said() {
        let mut chance = Chance::new(9);
        let (truth, sd) = (Vector2::new(0.6, -1.2), 0.3);
        let direction = vector(1.0, -1.0, 0.0, 1.0);
        let true_cosine = cosine(&truth, &direction.mean);
        let mut held = 0;
        for seed in 0..500 {
            let seen = truth + Vector2::from_fn(|_, _| sd * chance.normal());
            let variance = sd * sd * chance.chi_square(10.0) / 10.0;
            let question = Question {
                draws: 400,
                seed,
                ..QUESTION
            };
            let shift = vector(seen.x, seen.y, variance, 10.0);
            let found = along(&shift, &[direction], &question).unwrap();
            held += u32::from(found.likenesses[0].interval.contains(true_cosine));
        }
        assert!((450..=490).contains(&held), "{held} of 500");
    }

    #[test]
    fn what_has_no_direction_is_refused() {
        let shift = vector(1.0, 1.0, 0.1, 6.0);
        assert!(along(&shift, &[], &QUESTION).is_err());
        assert!(along(&shift, &[vector(0.0, 0.0, 1.0, 5.0)], &QUESTION).is_err());
        assert!(along(&vector(f64::NAN, 1.0, 0.1, 6.0), &[shift], &QUESTION).is_err());
        assert!(along(&vector(1.0, 1.0, 0.1, 1.0), &[shift], &QUESTION).is_err());
        assert!(along(&vector(1.0, 1.0, -0.1, 6.0), &[shift], &QUESTION).is_err());
        assert!(
            along(
                &shift,
                &[shift],
                &Question {
                    draws: 3,
                    ..QUESTION
                }
            )
            .is_err()
        );
        assert_eq!(asked(vector(0.0, 0.0, 0.0, 6.0), &[shift]), Answer::NoShift);
    }
}
