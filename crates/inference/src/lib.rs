//! What follows from a few numbers, and how surely.
//!
//! In: means and scatter, the difference of two means with its interval,
//! equivalence by two one-sided tests, exact permutation, the length of a mean
//! vector with an interval that holds when the true length is 0, the parts of a
//! variance by occasion, mixed models of pieces and loads, mean vectors and their
//! directions, agreement of judges, several trials pooled, several tests at once, the power of a test and the
//! pieces it takes, what a design can't tell apart. Out: what the numbers stand for,
//! files, chance itself (what is drawn at random comes from a seed that is given).
//! Start with [`mean_difference::welch`], [`mixed::Cells`] and [`length::Length`].
//!
//! ```
//! let washed = [2.14, 1.87, 2.45, 2.02];
//! let soaked = [3.02, 2.61, 3.38, 2.87];
//! let found = inference::mean_difference::welch(&washed, &soaked)?;
//! let interval = found.interval(0.95);
//! assert_eq!(format!("{:.2} to {:.2}", interval.low, interval.high), "-1.35 to -0.35");
//! # Ok::<(), inference::InferenceError>(())
//! ```

pub mod agreement;
pub mod alias;
pub mod chance;
pub mod decay;
pub mod direction;
pub mod dunnett;
pub mod equivalence;
mod error;
pub mod holm;
pub mod hotelling;
mod interval;
pub mod length;
pub mod mean_difference;
pub mod mixed;
pub mod occasion;
pub mod permutation;
pub mod pool;
pub mod power;
pub mod quantile;
pub mod sample_size;
pub mod scatter;
pub mod share;
pub mod simulate;
pub mod summary;
mod text;

pub use error::InferenceError;
pub use interval::Interval;
