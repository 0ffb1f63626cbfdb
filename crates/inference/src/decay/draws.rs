//! How pieces stray from the stages' means, and means drawn from that.

use super::{Curve, Question, Shared, Value};
use crate::{chance::Chance, quantile, summary::Summary};
use std::collections::BTreeSet;

/// Turns of taking out the pieces' and the stages' means.
const TURNS: usize = 60;

/// Values of pieces at stages, taken apart: stage means, what each piece strays.
#[derive(Debug)]
pub(super) struct Deviations {
    /// Values at each stage.
    pub counts: Vec<f64>,
    /// Mean of the values at each stage.
    pub means: Vec<f64>,
    pieces: usize,
    /// For each piece and stage: what the piece moves the stage's mean by.
    pushes: Vec<f64>,
    /// Mean of each piece's values.
    own_means: Vec<f64>,
    /// Variance of one value about its piece's row and its stage, with degrees of
    /// freedom; of one value about its stage.
    within: (f64, usize),
    between: (f64, usize),
}

impl Deviations {
    pub(super) fn of(values: &[Value], rounds: &[f64], pieces: &BTreeSet<usize>) -> Self {
        let codes: Vec<usize> = pieces.iter().copied().collect();
        let (n, stages) = (codes.len(), rounds.len());
        let placed: Vec<Placed> = values
            .iter()
            .map(|v| Placed {
                piece: codes.partition_point(|code| *code < v.piece),
                stage: rounds.partition_point(|n| *n < v.rounds),
                left: v.left,
            })
            .collect();
        let (means, counts) = means_by(&placed, stages, |v| (v.stage, v.left));
        let own_means = means_by(&placed, n, |v| (v.piece, v.left)).0;
        // Where pieces miss stages, means of stages hold what the missing ones would
        // have been: pieces and stages are taken out in turn.
        let mut levels = means.clone();
        let mut own = vec![0.0; n];
        for _ in 0..TURNS {
            own = means_by(&placed, n, |v| (v.piece, v.left - levels[v.stage])).0;
            levels = means_by(&placed, stages, |v| (v.stage, v.left - own[v.piece])).0;
        }
        let spread = (n as f64 / (n as f64 - 1.0).max(1.0)).sqrt();
        let mut pushes = vec![0.0; n * stages];
        let (mut within, mut between) = (0.0, 0.0);
        for &Placed { piece, stage, left } in &placed {
            pushes[piece * stages + stage] += spread * (left - levels[stage]) / counts[stage];
            let rest = left - levels[stage] - own[piece];
            within += rest * rest;
            between += (left - means[stage]) * (left - means[stage]);
        }
        let count = values.len();
        let part = |squares: f64, df: usize| (squares / (df as f64).max(1.0), df);
        let between = part(between, count - stages);
        let within = part(within, (count + 1).saturating_sub(n + stages));
        Self {
            counts,
            means,
            pieces: n,
            pushes,
            own_means,
            within: if within.1 == 0 { between } else { within },
            between,
        }
    }

    /// Whether the pieces lie above the start by more than chance brings.
    pub(super) fn rises(&self, level: f64) -> bool {
        Summary::of(&self.own_means).is_ok_and(|summary| {
            let df = (summary.count - 1) as f64;
            let half = quantile::student(0.5 + level / 2.0, df) * summary.mean_variance().sqrt();
            summary.mean - half > 1.0
        })
    }
}

/// A value at its piece and stage, counted from 0.
struct Placed {
    piece: usize,
    stage: usize,
    left: f64,
}

/// Mean and number of some figure of the values for each of `count` groups.
fn means_by(
    placed: &[Placed],
    count: usize,
    figure: impl Fn(&Placed) -> (usize, f64),
) -> (Vec<f64>, Vec<f64>) {
    let (mut sums, mut counts) = (vec![0.0; count], vec![0.0; count]);
    for one in placed {
        let (group, value) = figure(one);
        sums[group] += value;
        counts[group] += 1.0;
    }
    let means = sums.iter().zip(&counts).map(|(sum, n)| sum / n).collect();
    (means, counts)
}

/// Means of stages about the curve, drawn from their errors.
pub(super) fn draw<'a>(
    deviations: &'a Deviations,
    curve: &'a Curve,
    rounds: &'a [f64],
    shared: &'a Shared,
    question: &Question,
) -> impl Iterator<Item = Vec<f64>> + 'a {
    let mut chance = Chance::new(question.seed);
    let expected: Vec<f64> = rounds.iter().map(|n| curve.left(*n)).collect();
    let stages = rounds.len();
    // An error of what values are divided by moves each by its own share; it is as
    // great as the values' own on average over the stages.
    let squares: f64 = expected.iter().map(|left| left * left).sum();
    let size = (squares / stages as f64).sqrt().max(f64::MIN_POSITIVE);
    (0..question.draws).map(move |_| {
        let mut means = expected.clone();
        let tail = |df: usize, chance: &mut Chance| {
            let df = (df as f64).max(1.0);
            (df / chance.chi_square(df)).sqrt()
        };
        let of_pieces = tail(deviations.pieces - 1, &mut chance);
        for piece in 0..deviations.pieces {
            let times = of_pieces * chance.normal();
            let pushes = &deviations.pushes[piece * stages..(piece + 1) * stages];
            for (mean, push) in means.iter_mut().zip(pushes) {
                *mean += times * push;
            }
        }
        let (within, df) = deviations.within;
        let reading = within.sqrt() * tail(df, &mut chance);
        let (between, df) = deviations.between;
        let other = (shared.by_others * between).sqrt() * tail(df, &mut chance);
        let by_stage = shared.by_stage.sqrt() * reading;
        let start = shared.at_start.sqrt() * reading * chance.normal() + other * chance.normal();
        for (mean, left) in means.iter_mut().zip(&expected) {
            *mean += left / size * (by_stage * chance.normal() + start);
        }
        means
    })
}
