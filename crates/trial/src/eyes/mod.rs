//! Judged by eye: blind sessions, how far eyes agree, and the verdict from grades.
//!
//! In: which pairs a session shows and in which order (from a seed), who judged, the
//! table of grades, the verdict on every two arms, agreement of people with each
//! other, with themselves and with readings. Out: pages, files, clocks. Start with
//! [`Session`] and [`decide`].
//!
//! Grades are those of the grey scale for change in colour: 5 is no change, 1 the most.
//! They tell how far a piece has changed and not in which direction, and so does what
//! follows from them. Witness cloths are graded on the scale for staining, and arms by
//! them in the same way.
//!
//! ```
//! let table = "arm,piece,role,load,stage,judge,grade\n\
//!     soak,S1,test,,5,A,4-5\nsoak,S1,test,,5,B,4-5\nsoak,S2,test,,5,A,4-5\n\
//!     soak,S2,test,,5,B,4\nsoak,S3,test,,5,A,4-5\nsoak,S3,test,,5,B,4-5\n\
//!     plain,P1,test,,5,A,2\nplain,P1,test,,5,B,2\nplain,P2,test,,5,A,2\n\
//!     plain,P2,test,,5,B,2-3\nplain,P3,test,,5,A,2\nplain,P3,test,,5,B,2\n";
//! let rows = trial::eyes::read_csv(table.as_bytes())?;
//! let found = trial::eyes::decide(&rows, 1.0)?;
//! assert_eq!(found.comparisons[0].verdict, trial::decide::Verdict::Visible);
//! # Ok::<(), trial::decide::DecideError>(())
//! ```

mod agreement;
mod contrast;
mod decide;
mod judging;
mod margin;
mod means;
mod more;
mod order;
mod read_csv;
mod row;
mod session;
mod verdict;
mod words;

pub use agreement::{Agreement, CatchPairs, Coefficient, Repeats, WithInstrument, agreement};
pub use decide::decide;
pub use judging::{Eyes, Given, Judge, Judging, Sitting, Vision, rows};
pub use margin::{in_grades, in_grades_of_staining};
pub use order::{Turn, order};
pub use read_csv::{holds_grades, read_csv};
pub use row::EyeRow;
pub use session::{Cloth, Pair, PairKind, Session, Way, What, Wish};
pub use verdict::{ArmGrade, EyeComparison, FromEyes};
