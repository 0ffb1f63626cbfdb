//! Numbers by which the parts of a trial are known; the store hands them out.

use serde::{Deserialize, Serialize};
use std::fmt;

macro_rules! id {
    ($(#[$doc:meta])* $name:ident) => {
        $(#[$doc])*
        #[derive(
            Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize,
        )]
        #[serde(transparent)]
        pub struct $name(pub i64);

        impl fmt::Display for $name {
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                self.0.fmt(f)
            }
        }
    };
}

id!(
    /// The number of a trial.
    TrialId
);
id!(
    /// The number of an arm, unique on the bench.
    ArmId
);
id!(
    /// The number of a piece, unique on the bench.
    PieceId
);
id!(
    /// The number of a photo, unique on the bench.
    PhotoId
);
id!(
    /// The number of a chart of the person's own.
    ChartId
);
id!(
    /// The number of a reading; a later reading has a greater number.
    ReadingId
);
id!(
    /// The number of a grade judged by eye.
    EyeGradeId
);
