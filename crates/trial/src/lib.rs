//! A trial of dyed colour: what is asked, what is looked at, what follows.
//!
//! In: the trial with its arms and pieces, its photos and readings, and the
//! verdict on every pair of arms. Out: files, databases, screens, clocks (times
//! come in as RFC 3339 text). Start with [`Trial`] and [`decide::decide`].
//!
//! ```
//! let table = "arm,piece,role,load,stage,L,a,b\n\
//!     soak,S1,test,,0,40,20,5\nsoak,S1,test,,5,40.2,19.9,5\n\
//!     soak,S2,test,,0,40.1,20.1,5.1\nsoak,S2,test,,5,40.3,20,5\n\
//!     plain,P1,test,,0,40,20.1,5\nplain,P1,test,,5,49.1,15.1,5.2\n\
//!     plain,P2,test,,0,40.1,20,5.1\nplain,P2,test,,5,49.0,15.2,5.1\n";
//! let rows = trial::decide::read_csv(table.as_bytes())?;
//! let decision = trial::decide::decide(&rows, 1.0)?;
//! assert_eq!(decision.comparisons[0].verdict, trial::decide::Verdict::Visible);
//! # Ok::<(), trial::decide::DecideError>(())
//! ```

pub mod decide;
mod doubt;
mod elsewhere;
mod error;
mod eye_grade;
pub mod eyes;
pub mod fade;
mod id;
mod limit;
pub mod near;
mod new_trial;
mod on_board;
mod part;
mod part_change;
mod photo;
mod piece;
pub mod plan;
mod reading;
mod results;
mod rows;
pub mod setup;
pub mod side_by_side;
mod source;
mod stage;
pub mod stain;
mod text;
mod trial;
pub mod way;

pub use self::photo::{Note, Photo, PhotoArea, PhotoState};
pub use doubt::Doubt;
pub use elsewhere::{Matched, NewReading, USUAL_REPEATABILITY_DE, matched};
pub use error::TrialError;
pub use eye_grade::{EyeGrade, GreyScale, Judged};
pub use id::{ArmId, ChartId, EyeGradeId, PhotoId, PieceId, ReadingId, TrialId};
pub use new_trial::{NewArm, NewPiece, NewTrial};
pub use on_board::{OnBoard, on_board};
pub use part::{Part, PartReading, SplitReading};
pub use part_change::{PartAtStage, PartChange, parts_by_stage};
pub use piece::{Arm, Piece, Role};
pub use reading::Reading;
pub use results::{Bath, Departed, Planned, Results};
pub use rows::rows;
pub use source::{Origin, Reflectance, Source};
pub use stage::{LATEST_STAGE, read_stage};
pub use trial::Trial;
