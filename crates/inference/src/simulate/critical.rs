//! Whether a test is passed, without its probability where a glance at the limit does.

use crate::quantile;

/// Cells of the table, even in the inverse of the degrees of freedom from 0 to 1.
const CELLS: usize = 128;
/// How far off a limit in the table may be, as a part of it.
const OFF: f64 = 1e-6;

/// A one-sided test by Student's t at one level. It answers exactly what
/// `quantile::student_above(t, df) <= level` does: limits at neighbouring degrees of
/// freedom decide where t lies clear of both, and the probability where it doesn't.
pub(super) struct Critical {
    level: f64,
    /// The least and the greatest that the limit can be at each edge of a cell.
    known: [Option<(f64, f64)>; CELLS + 1],
}

impl Critical {
    pub(super) fn at(level: f64) -> Self {
        Self {
            level,
            known: [None; CELLS + 1],
        }
    }

    /// Whether chance gets as far as `t` at most as often as the level; no where `t` is
    /// no number.
    pub(super) fn passed(&mut self, t: f64, df: f64) -> bool {
        if t.is_nan() {
            return false;
        }
        // Below a half the limit falls as degrees of freedom rise.
        if self.level < 0.5 && df >= 1.0 {
            let cell = ((CELLS as f64 / df) as usize).min(CELLS - 1);
            if t < self.edge(cell).0 {
                return false;
            }
            if t > self.edge(cell + 1).1 {
                return true;
            }
        }
        quantile::student_above(t, df) <= self.level
    }

    fn edge(&mut self, at: usize) -> (f64, f64) {
        let level = self.level;
        *self.known[at].get_or_insert_with(|| {
            let df = CELLS as f64 / at as f64;
            let limit = quantile::student(1.0 - level, df);
            let (low, high) = (limit * (1.0 - OFF), limit * (1.0 + OFF));
            let holds = quantile::student_above(low, df) > level
                && quantile::student_above(high, df) < level;
            // A limit that can't be had to that precision decides nothing.
            if holds {
                (low, high)
            } else {
                (f64::MIN, f64::MAX)
            }
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chance::Chance;

    #[test]
    fn it_answers_what_the_probability_answers() {
        let mut chance = Chance::new(5);
        for level in [0.6, 0.05, 0.02, 0.02 / 28.0, 1e-9] {
            let mut critical = Critical::at(level);
            for df in [1.0, 1.3, 2.0, 3.7, 9.0, 64.0, 1e4, 1e9, f64::NAN] {
                let limit = quantile::student(1.0 - level, df);
                for _ in 0..50 {
                    let near = limit * (1.0 + 0.05 * chance.normal());
                    let near = [near, limit, limit * (1.0 + 1e-9), -near, 0.0];
                    for t in near.into_iter().chain([f64::INFINITY]) {
                        let exact = quantile::student_above(t, df) <= level;
                        assert_eq!(critical.passed(t, df), exact, "{level} {df} {t}");
                    }
                }
            }
            assert!(!critical.passed(f64::NAN, 4.0));
        }
    }
}
