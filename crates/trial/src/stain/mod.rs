//! What the wash has left on cloth that should have stayed pale, and whose dye it is.
//!
//! Witness cloths and the pale parts of resist-dyed test pieces are compared with their
//! own start, graded for staining by ISO 105-A04, and judged against the noise of their
//! readings. A stain is a pale dyeing of the dye that made it, so its direction in the
//! a*b* plane is set beside those of pale dyeings of each arm's dye on that very cloth.
//! Dyes whose pale dyeings go one way count as one; where more than one fits, or the
//! shift is no more than noise, that is what is said.

mod candidates;
mod shift;
mod words;

use crate::{PieceId, Reading, Trial};
use candidates::Candidate;
use colour::{Lab, View, grade};
use inference::{
    Interval,
    chance::Chance,
    direction::{self, Answer, Question, Vector},
    quantile,
};
use nalgebra::{Matrix2, Matrix3, Vector2, Vector3};
use serde::Serialize;
use shift::Shifted;

/// Level of intervals, and of what counts as beyond noise.
const LEVEL: f64 = 0.95;
/// A dye whose cosine with the stain is surely below this isn't its maker.
const LEAST_COSINE: f64 = 0.8;
/// Draws of a stain and of the directions.
const DRAWS: usize = 1000;
/// Degrees of freedom that stand for an error that is known.
const KNOWN_DF: f64 = 1e7;
/// Variance that stands in where none is given, CIELAB units squared.
const LEAST_VARIANCE: f64 = 1e-6;

/// What a stain is on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum StainedCloth {
    /// An undyed witness cloth.
    WitnessCloth,
    /// The pale part of a resist-dyed test piece.
    PalePart,
}

/// Whose dye a stain is.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(rename_all = "snake_case", tag = "answer", content = "arms")]
pub enum Whose {
    /// No stain beyond noise.
    NoStain,
    /// It goes the way of these arms' dyes, which share a hue, and of no others.
    Of(Vec<String>),
    /// It can't be told between these, the likeliest first.
    CantTell(Vec<String>),
    /// It goes the way of no arm's dye.
    NoneFits,
    /// No arm's dye has a hue to be known by.
    NoHue,
}

/// How a dye's pale dyeing lies to a stain in the a*b* plane.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Likeness {
    /// The arms whose dye it is.
    pub arms: Vec<String>,
    /// The cosine, -1 to 1.
    pub cosine: f64,
    /// Its 95 % interval.
    pub interval: [f64; 2],
}

/// The staining of one cloth at one stage.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Stain {
    /// The cloth.
    pub piece: PieceId,
    /// Its code.
    pub code: String,
    /// Its arm.
    pub arm: String,
    /// What it is.
    pub cloth: StainedCloth,
    /// After how many rounds.
    pub stage: u32,
    /// Light and observer, such as `D65/10`, for which the grade is meant.
    pub view: String,
    /// L*, a*, b* at its start.
    pub before: [f64; 3],
    /// L*, a*, b* now.
    pub after: [f64; 3],
    /// The grey-scale difference dE_GS of ISO 105-A04.
    pub de_gs: f64,
    /// The grade by the formula, as a decimal.
    pub value: f64,
    /// The grade, such as `4-5`.
    pub grade: String,
    /// Worst and best grade that the noise of the readings leaves room for (95 %).
    pub grade_interval: [String; 2],
    /// Whether there is a stain beyond that noise.
    pub seen: bool,
    /// Whose dye it is.
    pub whose: Whose,
    /// Each dye in question.
    pub likenesses: Vec<Likeness>,
    /// What this means, in a sentence.
    pub plain: String,
    /// The figures, in a sentence for a technician.
    pub technical: String,
}

/// The staining of every witness cloth and of every pale part, at each stage after the
/// start; what was not read at the start has nothing to be compared with.
pub fn stains(trial: &Trial, readings: &[Reading]) -> Vec<Stain> {
    let mut found: Vec<Stain> = shift::all(trial, readings)
        .into_iter()
        .filter_map(|shifted| of(trial, readings, &shifted))
        .collect();
    found.sort_by_key(|stain| {
        let place = trial.pieces.iter().position(|p| p.id == stain.piece);
        (stain.cloth, place, stain.stage)
    });
    found
}

fn of(trial: &Trial, readings: &[Reading], shifted: &Shifted) -> Option<Stain> {
    let piece = trial.piece(shifted.piece)?;
    let (before, after) = (Lab::from(shifted.from), Lab::from(shifted.to));
    let graded = grade::stain(before, after);
    let seed = (shifted.piece.0 as u64).wrapping_mul(64) + u64::from(shifted.stage);
    let seen = beyond_noise(shifted);
    let values = grades(shifted, seed);
    // Noise lengthens every difference: without a stain the best grade is open.
    let best = if seen { values.high } else { 5.0 };
    let candidates = candidates::of(trial, readings, shifted);
    let (whose, likenesses) = if candidates.is_empty() {
        (if seen { Whose::NoHue } else { Whose::NoStain }, Vec::new())
    } else {
        whose(shifted, &candidates, seen, seed)
    };
    let half_step = |value: f64| grade::nearest(value).to_string();
    let mut stain = Stain {
        piece: piece.id,
        code: piece.code.clone(),
        arm: trial.arm(piece.arm)?.name.clone(),
        cloth: shifted.cloth,
        stage: shifted.stage,
        view: shifted.view.to_string(),
        before: shifted.from,
        after: shifted.to,
        de_gs: graded.d_e_gs,
        value: graded.value,
        grade: graded.grade.to_string(),
        grade_interval: [
            half_step(values.low.min(graded.value)),
            half_step(best.max(graded.value)),
        ],
        seen,
        whose,
        likenesses,
        plain: String::new(),
        technical: String::new(),
    };
    stain.plain = words::plain(&stain);
    stain.technical = words::technical(&stain);
    Some(stain)
}

fn difference(shifted: &Shifted) -> (Vector3<f64>, Matrix3<f64>) {
    let change = Vector3::from(shifted.to) - Vector3::from(shifted.from);
    let cov = Matrix3::from(shifted.cov) + Matrix3::identity() * LEAST_VARIANCE;
    (change, cov)
}

/// Whether noise alone brings so great a shift in fewer than one case in twenty.
fn beyond_noise(shifted: &Shifted) -> bool {
    let (change, cov) = difference(shifted);
    cov.cholesky().is_some_and(|root| {
        let square = root.solve(&change).dot(&change);
        quantile::chi_square_above(square, 3.0) < 1.0 - LEVEL
    })
}

/// The decimal grades of shifts drawn about the one seen.
fn grades(shifted: &Shifted, seed: u64) -> Interval {
    let (change, cov) = difference(shifted);
    let root = cov.cholesky().map_or_else(Matrix3::zeros, |c| c.l());
    let from = Vector3::from(shifted.from);
    let mut chance = Chance::new(seed);
    let drawn = (0..DRAWS).map(|_| {
        let noise = Vector3::from_fn(|_, _| chance.normal());
        let to = from + change + root * noise;
        grade::stain(Lab::from(shifted.from), Lab::from(<[f64; 3]>::from(to))).value
    });
    quantile::middle(&mut drawn.collect::<Vec<_>>(), LEVEL)
}

fn whose(
    shifted: &Shifted,
    candidates: &[Candidate],
    seen: bool,
    seed: u64,
) -> (Whose, Vec<Likeness>) {
    let (change, cov) = difference(shifted);
    let shift = Vector {
        mean: Vector2::new(change.y, change.z),
        covariance: Matrix2::from(cov.fixed_view::<2, 2>(1, 1)),
        df: KNOWN_DF,
    };
    let directions: Vec<Vector<2>> = candidates.iter().map(|c| c.direction).collect();
    let question = Question {
        level: LEVEL,
        least_cosine: LEAST_COSINE,
        draws: DRAWS,
        seed,
    };
    // A direction or a covariance that can't be used says nothing of whose dye it is.
    let Ok(found) = direction::along(&shift, &directions, &question) else {
        return (Whose::NoHue, Vec::new());
    };
    let likenesses = candidates
        .iter()
        .zip(&found.likenesses)
        .map(|(candidate, likeness)| Likeness {
            arms: candidate.arms.clone(),
            cosine: likeness.cosine,
            interval: [likeness.interval.low, likeness.interval.high],
        })
        .collect();
    let named = |list: &[usize]| {
        list.iter()
            .flat_map(|at| candidates[*at].arms.clone())
            .collect()
    };
    let whose = match found.answer {
        _ if !seen => Whose::NoStain,
        // A shift of lightness alone has no hue of its own.
        Answer::NoShift => {
            let all: Vec<usize> = (0..candidates.len()).collect();
            Whose::CantTell(named(&all))
        }
        Answer::One(at) => Whose::Of(named(&[at])),
        Answer::Undecided(list) => Whose::CantTell(named(&list)),
        Answer::None => Whose::NoneFits,
    };
    (whose, likenesses)
}

/// The view as parsed, where it is one.
fn view(name: &str) -> Option<View> {
    name.parse().ok()
}
