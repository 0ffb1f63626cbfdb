//! The verdict on every pair of arms after so many rounds.
//!
//! The unit is the piece, or the load where loads tell the arms apart. Its
//! change is a vector in CIELAB: against the keeper of its arm where there is
//! one, else against its own start; where it is known how well keepers are read,
//! against its own start less the keepers' drift. Two arms differ by the CIEDE2000 of their
//! mean changes, taken at the colour they start from, with a 95 % interval
//! whose lower end is 0 when chance alone explains what is seen.

mod arm_change;
mod change;
mod compare;
pub(crate) mod csv_text;
mod dealt_anew;
mod design;
mod error;
mod keepers;
mod known;
mod of_trial;
mod over_rounds;
mod read_csv;
pub(crate) mod reason;
mod row;
mod ruler;
mod shown;
mod table;
mod verdict;
mod write_csv;

pub use dealt_anew::DealtAnew;
pub use error::DecideError;
pub use known::Repeatability;
pub use of_trial::of_trial;
pub use over_rounds::OverRounds;
pub use read_csv::read_csv;
pub use row::Row;
pub use shown::Along;
pub(crate) use shown::{TAIL_AROUND_FADE, TAIL_OF_FADE};
pub use verdict::{ArmChange, Comparison, Decision, RestsOn, UNBOUNDED_DE00, Verdict};
pub use write_csv::write_csv;

/// Pairs of arms and stages that are looked at; beyond, a column is probably wrong.
const MOST_PAIRS: usize = 20_000;

/// Decides on every pair of arms at every stage after the start.
///
/// `margin_de00` is the smallest difference that matters, in CIEDE2000 units,
/// above 0.
///
/// # Errors
/// A margin that is not above 0; rows that contradict each other or hold no
/// test piece.
pub fn decide(rows: &[Row], margin_de00: f64) -> Result<Decision, DecideError> {
    decide_knowing(rows, margin_de00, None)
}

/// The same where a set-up check tells how well readings repeat, which makes keepers
/// sharper.
///
/// # Errors
/// As of [`decide`].
pub fn decide_knowing(
    rows: &[Row],
    margin_de00: f64,
    known: Option<&Repeatability>,
) -> Result<Decision, DecideError> {
    if !(margin_de00 > 0.0 && margin_de00.is_finite()) {
        return Err(DecideError::Margin(margin_de00));
    }
    row::check(rows)?;
    let table = table::Table::of(rows);
    let arms = table.arms.len();
    let pairs = (arms * arms.saturating_sub(1) / 2).max(arms) * table.stages.len();
    if pairs > MOST_PAIRS {
        return Err(DecideError::TooManyPairs(pairs, MOST_PAIRS));
    }
    let mut decision = Decision::default();
    for &stage in &table.stages {
        let drift = keepers::drift_is_known(&table.arms, stage, known);
        let changes: Vec<_> = table
            .arms
            .iter()
            .filter_map(|arm| change::Change::of(arm, stage, drift))
            .collect();
        decision
            .comparisons
            .extend(compare::comparisons(stage, &changes, margin_de00, known));
        decision
            .arms
            .extend(arm_change::arm_changes(stage, &changes, known));
    }
    decision.over_rounds = over_rounds::over_rounds(&table);
    if decision.arms.is_empty() && !table.stages.is_empty() {
        return Err(DecideError::NoChange);
    }
    Ok(decision)
}
