//! Least squares of the curve through means of stages.
//!
//! For a given rate the loss 1 - S_inf enters linearly and is had directly, held
//! between 0 and 1. So only the rate is searched: over a wide grid, so that no valley
//! is missed, then within the best one.

use super::Curve;

/// Rates in the grid.
const RATES: usize = 64;
/// Loss by the last stage at which a rate is as good as 0.
const NO_LOSS: f64 = 1e-4;
/// The greatest rate that is tried, times the first stage's rounds: all that leaves has
/// then left by the first look.
pub const AT_ONCE: f64 = 12.0;
/// Share by which the golden section shrinks a range.
const GOLDEN: f64 = 0.618_033_988_749_894_8;

/// Stages with how many values each has.
#[derive(Debug, Clone)]
pub(super) struct Stages {
    /// Rounds, ascending, above 0.
    pub rounds: Vec<f64>,
    pub counts: Vec<f64>,
    log_rates: Vec<f64>,
    /// 1 - exp(-k n) for each rate of the grid and each stage.
    gone: Vec<f64>,
}

/// The best curve through some means.
#[derive(Debug, Clone, Copy)]
pub(super) struct Best {
    pub curve: Curve,
    /// The best rate is the greatest that is tried.
    pub at_once: bool,
}

impl Stages {
    pub(super) fn new(rounds: Vec<f64>, counts: Vec<f64>) -> Self {
        let (first, last) = (rounds[0], rounds[rounds.len() - 1]);
        let (low, high) = (libm::log(NO_LOSS / last), libm::log(AT_ONCE / first));
        let log_rates: Vec<f64> = (0..RATES)
            .map(|i| low + (high - low) * i as f64 / (RATES - 1) as f64)
            .collect();
        let gone = log_rates
            .iter()
            .flat_map(|log| {
                let rate = libm::exp(*log);
                rounds
                    .iter()
                    .map(move |n| -libm::expm1(-rate * n))
                    .collect::<Vec<_>>()
            })
            .collect();
        Self {
            rounds,
            counts,
            log_rates,
            gone,
        }
    }

    /// The best curve that loses at most `most`, 1 unless the floor may fall below 0;
    /// `steps` of the golden section narrow the rate down, 45 to all digits that
    /// squares have.
    pub(super) fn best(&self, means: &[f64], most: f64, steps: usize) -> Best {
        let stages = self.rounds.len();
        let on_grid = |i: usize| {
            self.loss(means, most, &self.gone[i * stages..(i + 1) * stages])
                .1
        };
        let mut at = 0;
        let mut least = f64::INFINITY;
        for i in 0..RATES {
            let rest = on_grid(i);
            if rest < least {
                (at, least) = (i, rest);
            }
        }
        let (mut low, mut high) = (
            self.log_rates[at.saturating_sub(1)],
            self.log_rates[(at + 1).min(RATES - 1)],
        );
        let mut gone = vec![0.0; stages];
        let mut tried = |log: f64| {
            let rate = libm::exp(log);
            for (gone, n) in gone.iter_mut().zip(&self.rounds) {
                *gone = -libm::expm1(-rate * n);
            }
            self.loss(means, most, &gone)
        };
        let (mut left, mut right) = (high - GOLDEN * (high - low), low + GOLDEN * (high - low));
        let (mut at_left, mut at_right) = (tried(left).1, tried(right).1);
        for _ in 0..steps {
            if at_left <= at_right {
                (high, right, at_right) = (right, left, at_left);
                left = high - GOLDEN * (high - low);
                at_left = tried(left).1;
            } else {
                (low, left, at_left) = (left, right, at_right);
                right = low + GOLDEN * (high - low);
                at_right = tried(right).1;
            }
        }
        let mut log = (low + high) / 2.0;
        let (mut loss, rest) = tried(log);
        if least < rest {
            log = self.log_rates[at];
            loss = tried(log).0;
        }
        if loss <= 0.0 {
            return Best {
                curve: Curve::FLAT,
                at_once: false,
            };
        }
        Best {
            curve: Curve {
                floor: 1.0 - loss,
                rate: libm::exp(log),
            },
            at_once: at == RATES - 1,
        }
    }

    /// The loss that fits best, 0 to `most`, and the squares that it leaves.
    fn loss(&self, means: &[f64], most: f64, gone: &[f64]) -> (f64, f64) {
        let (mut along, mut square) = (0.0, 0.0);
        for ((mean, gone), count) in means.iter().zip(gone).zip(&self.counts) {
            along += count * (1.0 - mean) * gone;
            square += count * gone * gone;
        }
        let loss = (along / square).clamp(0.0, most);
        let each = means.iter().zip(gone).zip(&self.counts);
        let rest = each
            .map(|((mean, gone), count)| {
                let off = 1.0 - mean - loss * gone;
                count * off * off
            })
            .sum();
        (loss, rest)
    }

    /// The straight line 1 - b n, b at least 0: its b.
    pub(super) fn slope(&self, means: &[f64]) -> f64 {
        let (mut along, mut square) = (0.0, 0.0);
        for ((mean, n), count) in means.iter().zip(&self.rounds).zip(&self.counts) {
            along += count * (1.0 - mean) * n;
            square += count * n * n;
        }
        (along / square).max(0.0)
    }
}
