//! Means of arms at stages where values of one piece, and of one load, go together.
//!
//! A linear mixed model: each value is a sum of fixed effects (an arm at a stage, a
//! slope), a part that all values of its piece share, a part that all values of its
//! load share (of each kind of load), and a rest. The parts are normal with variances
//! that are estimated by restricted likelihood, so designs may be sparse and
//! unbalanced, with loads crossed with pieces or around them. Sums are made once and
//! pieces are taken out of them by Woodbury's identity: time is linear in values,
//! and each step of the search knows only fixed effects and loads (1000 together at
//! most).
//!
//! A variance of 0 is a possible answer, and said ([`State::Zero`]); so is one that
//! the values can't show ([`State::NotTold`]). A comparison whose error would hold
//! such a scatter is refused.
//!
//! ```
//! use inference::mixed::{Cells, Place};
//!
//! let mut cells = Cells::new(0);
//! for (piece, arm, values) in [
//!     (1, 0, [0.1, 2.1, 3.9]), (2, 0, [-0.2, 1.6, 3.4]), (3, 0, [0.3, 2.3, 4.4]),
//!     (4, 1, [0.2, 1.3, 2.0]), (5, 1, [0.0, 0.9, 1.8]), (6, 1, [-0.1, 1.1, 1.9]),
//! ] {
//!     for (stage, value) in values.into_iter().enumerate() {
//!         cells.add(Place { piece, loads: &[] }, arm, stage, value)?;
//!     }
//! }
//! let fit = cells.fit()?;
//! let slower = fit.contrast(&cells.difference(0, 1, 2)?)?;
//! let interval = slower.interval(0.95);
//! assert_eq!(format!("{:.1} ({:.1} to {:.1})", slower.estimate, interval.low, interval.high), "-2.0 (-2.6 to -1.4)");
//! # Ok::<(), inference::InferenceError>(())
//! ```

mod cells;
mod contrast;
mod criterion;
mod data;
mod error;
mod fit;
mod search;
mod separate;
mod several;
mod sums;

pub use cells::Cells;
pub use contrast::Contrast;
pub use data::{Data, Place};
pub use fit::{Fit, Likelihood, Part, State, full, restricted};
pub use several::Judged;

#[cfg(test)]
mod tests;
