//! How often something was shown.

use super::Contrast;

/// What was shown of two arms, as shares of the runs.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Outcome {
    /// The two arms and what their comparison goes by.
    pub contrast: Contrast,
    /// A difference was shown, by a two-sided test of this contrast alone.
    pub difference: Rate,
    /// The same, all contrasts that can be shown being tested by Holm's rule; none
    /// unless it was asked what they show together.
    pub difference_holm: Option<Rate>,
    /// The same by Dunnett's limit; none unless arms are compared with one control,
    /// too.
    pub difference_dunnett: Option<Rate>,
    /// The difference was shown to lie within the margin, by two one-sided tests of
    /// this contrast alone; none without a margin.
    pub equivalence: Option<Rate>,
}

/// A share of the runs.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rate {
    /// The share, 0 to 1.
    pub share: f64,
    /// Its standard error by chance, as the number of runs leaves it.
    pub standard_error: f64,
}

impl Rate {
    pub(super) fn of(count: u32, runs: u32) -> Self {
        let share = f64::from(count) / f64::from(runs);
        Self {
            share,
            standard_error: (share * (1.0 - share) / f64::from(runs)).sqrt(),
        }
    }
}
