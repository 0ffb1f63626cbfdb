//! How much is left after so many rounds, when what leaves goes fast at first and
//! then no more.
//!
//! First-order decay to a floor: S(n) = S_inf + (1 - S_inf) exp(-k n) for shares left
//! that start at 1, with 0 <= S_inf < 1 and k >= 0. Values are of pieces at stages;
//! the curve is fitted to all of them by least squares. The unit of chance is the
//! piece: a whole row of a piece's deviations from the stages' means is taken or left
//! together, so that nothing is assumed of how a piece's values hang together (a start
//! that was read wrong, a fade of its own, plain noise). What all pieces of a stage
//! have in common because they were compared with one and the same thing is added.
//! Intervals come from curves fitted anew to means drawn from these errors; being
//! fitted within the same bounds they stay sensible at the edges.
//!
//! Start with [`fit`]. [`plain`] is the textbook's curve through single values that
//! start anywhere.
//!
//! ```
//! use inference::decay::{Question, Round, Shared, Value, fit};
//! let left = [
//!     [0.93, 0.83, 0.74, 0.72], [0.91, 0.81, 0.76, 0.71], [0.94, 0.84, 0.77, 0.74],
//!     [0.90, 0.82, 0.73, 0.70],
//! ];
//! let mut values = Vec::new();
//! for (piece, row) in left.iter().enumerate() {
//!     for (rounds, left) in [1.0, 3.0, 6.0, 10.0].into_iter().zip(row) {
//!         values.push(Value { piece, rounds, left: *left });
//!     }
//! }
//! let decay = fit(&values, &Shared::NOTHING, &Question::usual(1))?;
//! assert_eq!(format!("{:.2} {:.2}", decay.curve.floor, decay.curve.rate), "0.70 0.30");
//! // Eight tenths are left after about four rounds.
//! assert!(matches!(decay.passes(0.8).estimate, Round::Seen(n) if n > 3.5 && n < 4.2));
//! # Ok::<(), inference::InferenceError>(())
//! ```

mod curve;
mod draws;
mod fit;
mod least;
pub mod plain;
mod round;
mod shapes;

pub use curve::Curve;
pub use fit::{Decay, Left, Question, Shared, State, Value, fit};
pub use least::AT_ONCE;
pub use round::{Passing, Round};
pub use shapes::{Shape, Shapes};

#[cfg(test)]
mod tests;
