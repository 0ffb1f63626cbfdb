//! A fair trial before a drop of dye is used: the plan, what it promises and
//! what it can't tell apart.
//!
//! In: a plan's arms, its steps with their loads, days and places. Out: its
//! pieces in random order, the critique with mends, the power by computation.
//! Files are the caller's; a plan is read from TOML text by [`Plan::from_toml`].
//! Start with [`Plan`] and [`critique`].
//!
//! ```
//! let plan = trial::plan::Plan::from_toml(r#"
//!     question = "Does a warm soak keep the red?"
//!     margin = "grade 4"
//!     rounds = 5
//!     [[arms]]
//!     name = "plain"
//!     pieces = 1
//!     [[arms]]
//!     name = "soaked"
//!     pieces = 4
//!     [[steps]]
//!     kind = "wash"
//!     loads = ["wash 1", "wash 2"]
//!     witnesses = ["multifibre"]
//! "#)?;
//! let findings = trial::plan::critique(&plan);
//! assert!(findings.iter().any(|found| found.code == trial::plan::FindingCode::OnePiece));
//! # Ok::<(), trial::plan::PlanError>(())
//! ```

mod check;
mod critique;
mod dose;
mod enquire;
mod enter;
mod error;
mod margin;
mod mend;
mod model;
mod order;
mod packing;
mod promise;
mod propose;
mod read;
mod sharing;
mod staining;
mod studio;

pub use critique::{Carried, Finding, FindingCode, carried, critique};
pub use dose::{DoseDeparture, departures};
pub use error::PlanError;
pub use margin::Margin;
pub use mend::Mend;
pub use model::{
    Asks, Circumstance, CircumstanceKind, Instruction, Plan, PlannedArm, Scatter, Step, StepKind,
    Vessel,
};
pub use order::{Allotted, Order, Turns};
pub use packing::{PackedArm, PackedBath, PackedCloth, Packing};
pub use promise::{Basis, BySize, PROMISE_EDITION, Promise, Promised, RUNS};
pub use propose::{Budget, EnquiredArm, Enquiry, Proposal};
pub use sharing::{Column, Kind, PlannedPiece, Sharing};
pub use staining::{Cloth, Staining};
