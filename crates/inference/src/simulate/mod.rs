//! What a trial would show: the trial as it is laid out, drawn at random many times
//! and judged each time.
//!
//! Along one direction of colour, named beforehand. Pieces scatter, so do loads of
//! each kind and readings; the judgement goes by pieces, by pieces within loads, or
//! by means of loads, as the layout allows. In: layouts, true effects and scatter,
//! rates. Out: rounds of wear (each stage is a layout of its own), files, words.
//!
//! ```
//! use inference::simulate::{Contrasts, Design, Layout, Piece, Runs, ScatterOf, Truth};
//! // Two arms of four pieces; each of two washes holds two pieces of both.
//! let pieces = (0..8).map(|at| Piece { arm: at % 2, loads: vec![Some(at / 4)] });
//! let design = Design::of(&Layout {
//!     arms: 2,
//!     pieces: pieces.collect(),
//!     keepers: vec![0, 0],
//!     kinds: 1,
//!     contrasts: Contrasts::Against(0),
//!     scatter: ScatterOf::AllArms,
//! })?;
//! let truth = Truth {
//!     effects: vec![0.0, 3.0],
//!     piece_sd: 0.8,
//!     load_sds: vec![1.0],
//!     reading_sd: 0.3,
//!     photos: 1,
//!     margin: None,
//!     parts: 1,
//! };
//! let found = design.simulate(&truth, &Runs::new(500, 1))?;
//! assert!(found[0].difference.share > 0.9);
//! # Ok::<(), inference::InferenceError>(())
//! ```

mod critical;
mod design;
mod draw;
mod fit;
mod layout;
mod limits;
mod outcome;
mod run;
mod side;
pub mod smallest;
mod tally;
#[cfg(test)]
mod tests;
mod truth;

use design::Means;
pub use design::{Analysis, Contrast, Design};
pub use layout::{Contrasts, Layout, Piece, ScatterOf};
pub use outcome::{Outcome, Rate};
pub use truth::{Case, Runs, Truth};
