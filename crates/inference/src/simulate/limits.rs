//! Dunnett's limit where degrees of freedom differ from trial to trial.

use crate::{dunnett::Dunnett, quantile};

/// Dunnett's limit as a probability of one two-sided test, by degrees of freedom.
pub(super) struct Limits {
    dunnett: Dunnett,
    tail: f64,
    known: [Option<f64>; GRID.len()],
}

/// Between these degrees of freedom the probability runs straight in their inverse.
const GRID: [f64; 13] = [
    1.0, 1.25, 1.6, 2.0, 3.0, 4.0, 6.0, 8.0, 12.0, 20.0, 40.0, 200.0, 1e6,
];

impl Limits {
    pub(super) fn of(dunnett: Dunnett, tail: f64) -> Self {
        Self {
            dunnett,
            tail,
            known: [None; GRID.len()],
        }
    }

    pub(super) fn at(&mut self, df: f64) -> f64 {
        let above = GRID
            .iter()
            .position(|grid| *grid > df)
            .unwrap_or(GRID.len() - 1)
            .max(1);
        let (low, high) = (1.0 / GRID[above], 1.0 / GRID[above - 1]);
        let part = ((1.0 / df - low) / (high - low)).clamp(0.0, 1.0);
        self.on_grid(above) * (1.0 - part) + self.on_grid(above - 1) * part
    }

    fn on_grid(&mut self, at: usize) -> f64 {
        let (dunnett, tail) = (&self.dunnett, self.tail);
        *self.known[at].get_or_insert_with(|| {
            let df = GRID[at];
            2.0 * quantile::student_above(dunnett.limit(tail, df), df)
        })
    }
}
