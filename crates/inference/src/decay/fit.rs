//! The curve of pieces, its intervals, and what can be read off it.

use super::{
    Curve, Passing, Round, Shapes,
    draws::{Deviations, draw},
    least::Stages,
    shapes,
};
use crate::text;
use crate::{InferenceError, Interval, quantile};
use std::collections::BTreeSet;

/// How many times the rounds looked at a curve is followed.
pub(super) const FURTHEST: f64 = 2.0;
/// Values that are fitted together at most.
const MOST_VALUES: usize = 100_000;
/// Curves drawn at most.
const MOST_DRAWS: usize = 100_000;
/// A share left beyond which a value is a mistake.
const MOST_LEFT: f64 = 1000.0;
/// How close the rate of the curve itself is searched, as a share.
const CLOSE: f64 = 1e-12;
/// How close the rates of curves drawn are: far closer than they lie to each other.
const CLOSE_DRAWN: f64 = 1e-5;
/// Loss of curves drawn at most: their floors may fall below 0, where intervals end.
const MOST_LOSS: f64 = 2.0;
/// A loss nearer than this to 0 or 1 is at the bound.
const AT_BOUND: f64 = 1e-9;

/// What is left of one piece at one stage.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Value {
    /// Any number that stands for the piece.
    pub piece: usize,
    /// After how many rounds, above 0: at the start 1 is left by definition.
    pub rounds: f64,
    /// The share left of what was there at the start; noise may bring it below 0 or
    /// above 1.
    pub left: f64,
}

/// Errors that all pieces of a stage have in common.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Shared {
    /// Variance of what all pieces of one stage share, as a multiple of the variance
    /// of one piece's single value about its row; 1/m where values are ratios to the
    /// mean of m things that are read as pieces are. 0 where there is no such thing.
    pub by_stage: f64,
    /// Variance of what all stages share because the start was read with an error, as a
    /// multiple of the same variance; 1/m where the start too is a ratio to such a mean.
    pub at_start: f64,
    /// Variance of what all stages share because the start is that of other things than
    /// the pieces, as a multiple of the whole variance between pieces at a stage; 1/m
    /// where m like things stand for the pieces' start.
    pub by_others: f64,
}

impl Shared {
    /// Pieces that share nothing.
    pub const NOTHING: Self = Self {
        by_stage: 0.0,
        at_start: 0.0,
        by_others: 0.0,
    };
}

/// How sure an answer has to be.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Question {
    /// Level of intervals, such as 0.95; between 0 and 1.
    pub level: f64,
    /// Curves drawn for the intervals, 100 to 100,000.
    pub draws: usize,
    /// Seed of the draws.
    pub seed: u64,
}

impl Question {
    /// Intervals of 95 % from 499 curves.
    pub const fn usual(seed: u64) -> Self {
        Self {
            level: 0.95,
            draws: 499,
            seed,
        }
    }
}

/// What the fit came to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum State {
    /// Floor and rate lie within their bounds.
    Within,
    /// The values are likeliest with a floor of 0: nothing would stay for good. They
    /// don't show where the curve levels off.
    NoFloor,
    /// All that leaves has left by the first stage: the rate is at least so great.
    AtOnce,
    /// The values are likeliest with no decay.
    Flat,
    /// The values rise above the start by more than chance: no decay describes them,
    /// and the curve is flat for want of a better one.
    Rising,
}

/// A share left with its interval.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Left {
    /// The share.
    pub left: f64,
    /// Its interval; none where nothing measures chance.
    pub interval: Option<Interval>,
    /// Whether it lies beyond the last stage looked at.
    pub extrapolated: bool,
}

/// A fitted curve.
#[derive(Debug, Clone)]
pub struct Decay {
    /// The curve.
    pub curve: Curve,
    /// What the fit came to.
    pub state: State,
    /// Pieces it rests on.
    pub pieces: usize,
    /// The stages, in rounds, ascending, with the mean of the values at each.
    pub means: Vec<(f64, f64)>,
    /// The curve against a straight line and against no change.
    pub shapes: Shapes,
    level: f64,
    /// Curves drawn, some with floors below 0; empty where nothing measures chance.
    drawn: Vec<Curve>,
}

/// Fits the curve to what is left of pieces at stages.
///
/// Pieces may miss stages; a piece may have several values at one. A single piece gets
/// its curve but no intervals: how pieces differ can't be told from one.
///
/// # Errors
/// Fewer than two stages; a value that is not finite or out of range; more than
/// 100,000 values; a question out of its ranges.
///
/// # Source
/// Least squares with a linear part taken out: G. H. Golub and V. Pereyra, SIAM
/// Journal on Numerical Analysis 10 (1973) 413-432, from memory. Curves fitted anew to
/// means drawn with the pieces' own covariance (a parametric bootstrap with Student's
/// tails): common practice.
pub fn fit(
    values: &[Value],
    shared: &Shared,
    question: &Question,
) -> Result<Decay, InferenceError> {
    check(values, shared, question)?;
    let mut rounds: Vec<f64> = values.iter().map(|v| v.rounds).collect();
    rounds.sort_by(f64::total_cmp);
    rounds.dedup();
    let given = rounds.len();
    if given < 2 {
        return Err(InferenceError::TooFewStages { given, least: 2 });
    }
    let pieces: BTreeSet<usize> = values.iter().map(|v| v.piece).collect();
    let deviations = Deviations::of(values, &rounds, &pieces);
    let stages = Stages::new(rounds, deviations.counts.clone());
    let best = stages.best(&deviations.means, 1.0, CLOSE);
    let state = match 1.0 - best.curve.floor {
        loss if loss < AT_BOUND && deviations.rises(question.level) => State::Rising,
        loss if loss < AT_BOUND => State::Flat,
        _ if best.at_once => State::AtOnce,
        loss if loss > 1.0 - AT_BOUND => State::NoFloor,
        _ => State::Within,
    };
    let drawn = if pieces.len() < 2 {
        Vec::new()
    } else {
        // Held at the bounds, every curve drawn would err to the same side of them.
        let free = stages.best(&deviations.means, MOST_LOSS, CLOSE).curve;
        draw(&deviations, &free, &stages.rounds, shared, question)
            .map(|means| stages.best(&means, MOST_LOSS, CLOSE_DRAWN).curve)
            .collect()
    };
    Ok(Decay {
        curve: best.curve,
        state,
        pieces: pieces.len(),
        shapes: shapes::compared(values, pieces.len(), &stages, &deviations.means, &best),
        means: stages
            .rounds
            .iter()
            .copied()
            .zip(deviations.means.iter().copied())
            .collect(),
        level: question.level,
        drawn,
    })
}

impl Decay {
    /// The last stage looked at, rounds.
    pub fn last_round(&self) -> f64 {
        self.means.last().map_or(0.0, |(rounds, _)| *rounds)
    }

    /// How far the curve is followed: twice the rounds looked at.
    pub fn furthest_round(&self) -> f64 {
        FURTHEST * self.last_round()
    }

    /// The share left after so many rounds.
    ///
    /// # Errors
    /// Rounds below 0 or beyond twice the last stage looked at.
    pub fn left(&self, rounds: f64) -> Result<Left, InferenceError> {
        let last = self.last_round();
        InferenceError::unless(
            (0.0..=self.furthest_round()).contains(&rounds),
            text::error::number_of_rounds(),
            rounds,
            text::error::from_0_to_twice_the_last_round(),
        )?;
        Ok(Left {
            left: self.curve.left(rounds),
            interval: self.of_drawn(|curve| curve.left(rounds).max(0.0)),
            extrapolated: rounds > last,
        })
    }

    /// The round at which no more than `level` is left.
    pub fn passes(&self, level: f64) -> Passing {
        let last = self.last_round();
        let at = |curve: &Curve| curve.rounds_to(level).unwrap_or(f64::INFINITY);
        Passing {
            estimate: Round::of(at(&self.curve), last),
            interval: self
                .of_drawn(at)
                .map(|i| (Round::of(i.low, last), Round::of(i.high, last))),
        }
    }

    /// The interval of the share that stays for good.
    pub fn floor_interval(&self) -> Option<Interval> {
        self.of_drawn(|curve| curve.floor.max(0.0))
    }

    /// The interval of the rate, per round.
    pub fn rate_interval(&self) -> Option<Interval> {
        self.of_drawn(|curve| curve.rate)
    }

    fn of_drawn(&self, what: impl Fn(&Curve) -> f64) -> Option<Interval> {
        let mut values: Vec<f64> = self.drawn.iter().map(what).collect();
        (!values.is_empty()).then(|| quantile::middle(&mut values, self.level))
    }
}

fn check(values: &[Value], shared: &Shared, question: &Question) -> Result<(), InferenceError> {
    InferenceError::unless_share(text::error::level(), question.level)?;
    let draws = question.draws as f64;
    let fine = (100..=MOST_DRAWS).contains(&question.draws);
    InferenceError::unless(
        fine,
        text::error::number_of_draws(),
        draws,
        text::error::from_100_to_100_000(),
    )?;
    for (what, share) in [
        (text::error::error_shared_by_a_stage(), shared.by_stage),
        (text::error::error_shared_from_the_start(), shared.at_start),
        (text::error::error_of_others_start(), shared.by_others),
    ] {
        let fine = (0.0..=1e6).contains(&share);
        InferenceError::unless(fine, what, share, text::error::from_0_to_1e6())?;
    }
    let count = values.len();
    let fine = count <= MOST_VALUES;
    InferenceError::unless(
        fine,
        text::error::number_of_values(),
        count as f64,
        text::error::at_most_100_000(),
    )?;
    for value in values {
        if !(value.left.is_finite() && value.rounds.is_finite()) {
            return Err(InferenceError::NotFinite);
        }
        let fine = value.rounds > 0.0 && value.rounds <= 1e6;
        let range = text::error::above_0_and_at_most_1e6();
        InferenceError::unless(fine, text::error::number_of_rounds(), value.rounds, range)?;
        let fine = value.left.abs() <= MOST_LEFT;
        InferenceError::unless(
            fine,
            text::error::share_left(),
            value.left,
            text::error::from_1000_to_1000(),
        )?;
    }
    Ok(())
}
