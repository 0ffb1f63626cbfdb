//! Least squares of the curve through means of stages.
//!
//! For a given rate the loss 1 - S_inf enters linearly and is had directly, held
//! between 0 and 1. So only the rate is searched: over a wide grid, so that no valley
//! is missed, then for where the squares stop falling beside the best of it.

use super::Curve;

/// Rates in the grid.
const RATES: usize = 64;
/// Loss by the last stage at which a rate is as good as 0.
const NO_LOSS: f64 = 1e-4;
/// The greatest rate that is tried, times the first stage's rounds: all that leaves has
/// then left by the first look.
pub const AT_ONCE: f64 = 12.0;
/// Steps in which the search halves its range if nothing else does.
const MOST_STEPS: usize = 60;

/// Stages with how many values each has.
#[derive(Debug, Clone)]
pub(super) struct Stages {
    /// Rounds, ascending, above 0.
    pub rounds: Vec<f64>,
    pub counts: Vec<f64>,
    log_rates: Vec<f64>,
    /// For each rate of the grid and each stage 1 - exp(-k n), as often as there are values.
    gone: Vec<f64>,
    /// For each rate of the grid the sum of the squares of 1 - exp(-k n).
    squares: Vec<f64>,
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
        let (mut gone, mut squares) = (Vec::new(), Vec::new());
        for log in &log_rates {
            let rate = libm::exp(*log);
            let mut square = 0.0;
            for (n, count) in rounds.iter().zip(&counts) {
                let of_one = -libm::expm1(-rate * n);
                gone.push(count * of_one);
                square += count * of_one * of_one;
            }
            squares.push(square);
        }
        Self {
            rounds,
            counts,
            log_rates,
            gone,
            squares,
        }
    }

    /// The best curve that loses at most `most`, 1 unless the floor may fall below 0; its
    /// rate is right to a share of `close`.
    pub(super) fn best(&self, means: &[f64], most: f64, close: f64) -> Best {
        let losses: Vec<f64> = means.iter().map(|mean| 1.0 - mean).collect();
        let (mut at, mut greatest) = (0, 0.0);
        let rows = self.gone.chunks_exact(self.rounds.len());
        for (i, (gone, square)) in rows.zip(&self.squares).enumerate() {
            let along = losses.iter().zip(gone).map(|(l, gone)| l * gone).sum();
            let gain = Along {
                along,
                square: *square,
            }
            .gain(most);
            if gain > greatest {
                (at, greatest) = (i, gain);
            }
        }
        if greatest <= 0.0 {
            return Best {
                curve: Curve::FLAT,
                at_once: false,
            };
        }
        let (rate, loss) = self.beside(&losses, most, close, at);
        Best {
            curve: Curve {
                floor: 1.0 - loss,
                rate,
            },
            at_once: at == RATES - 1,
        }
    }

    /// Rate and loss at the top of the hill on which a rate of the grid lies.
    fn beside(&self, losses: &[f64], most: f64, close: f64, at: usize) -> (f64, f64) {
        let mut near = self.tried(losses, most, self.log_rates[at]);
        let next = if near.slope > 0.0 {
            at + 1
        } else {
            at.wrapping_sub(1)
        };
        let far = self.log_rates.get(next).filter(|_| near.slope != 0.0);
        let Some(&far) = far else {
            return (libm::exp(near.log), near.loss);
        };
        let mut far = self.tried(losses, most, far);
        // The far end lies lower, so that the top is between the two.
        if far.slope * near.slope >= 0.0 {
            far.slope = -near.slope;
        }
        let (mut best, mut side) = (near, 0.0);
        for _ in 0..MOST_STEPS {
            // The false position; an end that stays twice counts half (the Illinois rule).
            let share = near.slope / (near.slope - far.slope);
            let log = near.log + share * (far.log - near.log);
            let moved = (log - best.log).abs();
            best = self.tried(losses, most, log);
            if best.slope == 0.0 || moved <= close {
                break;
            }
            let (gives, stays) = if best.slope * near.slope > 0.0 {
                (&mut near, &mut far)
            } else {
                (&mut far, &mut near)
            };
            if best.slope * side > 0.0 {
                stays.slope /= 2.0;
            }
            side = best.slope;
            *gives = best;
        }
        (libm::exp(best.log), best.loss)
    }

    /// The best loss at a rate, and how the fit gains from there.
    fn tried(&self, losses: &[f64], most: f64, log: f64) -> Tried {
        let rate = libm::exp(log);
        let (mut along, mut square) = (0.0, 0.0);
        let (mut along_grows, mut square_grows) = (0.0, 0.0);
        for ((loss, n), count) in losses.iter().zip(&self.rounds).zip(&self.counts) {
            let gone = -libm::expm1(-rate * n);
            let grows = rate * n * (1.0 - gone);
            along += count * loss * gone;
            square += count * gone * gone;
            along_grows += count * loss * grows;
            square_grows += count * gone * grows;
        }
        let loss = Along { along, square }.loss(most);
        Tried {
            log,
            loss,
            slope: along_grows - loss * square_grows,
        }
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

/// A rate that was tried.
#[derive(Debug, Clone, Copy)]
struct Tried {
    log: f64,
    loss: f64,
    /// What the squares fall by from here on, as the rate's logarithm grows; a multiple of it.
    slope: f64,
}

/// What is lost, along the curve of a rate with a loss of 1, and that curve's own square.
struct Along {
    along: f64,
    square: f64,
}

impl Along {
    /// The loss that fits best, 0 to `most`.
    fn loss(&self, most: f64) -> f64 {
        (self.along / self.square).clamp(0.0, most)
    }

    /// What the squares are less with it than without any.
    fn gain(&self, most: f64) -> f64 {
        let loss = self.loss(most);
        loss * (2.0 * self.along - loss * self.square)
    }
}
