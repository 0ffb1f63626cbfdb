//! Why no decision can be made on a table.

/// What is wrong with a table of readings, where, and how to mend it.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum DecideError {
    /// The margin is not above 0.
    #[error("The margin {0} can't be used: give a difference above 0, such as 1.0.")]
    Margin(f64),
    /// There are no rows at all.
    #[error(
        "The table is empty: it needs a first line with arm,piece,role,load,stage,L,a,b and a row for each reading."
    )]
    Empty,
    /// A table of grades without any.
    #[error(
        "The table holds no grade: it needs a first line with arm,piece,role,load,stage,judge,grade and a row for each grade."
    )]
    NoGrades,
    /// A column is missing.
    #[error("The first line has no column \"{column}\": it must name {columns}.")]
    ColumnMissing {
        /// The one that is missing.
        column: String,
        /// All that it takes.
        columns: String,
    },
    /// A column is there twice.
    #[error("The first line names the column \"{0}\" twice: leave one of them out.")]
    ColumnTwice(String),
    /// No row is of a test piece.
    #[error("No row has the role test: a decision needs washed test pieces.")]
    NoTestPiece,
    /// No test piece has anything to be compared with.
    #[error(
        "No test piece can be compared: each needs a row at stage 0, or a keeper of its arm at its own stage, and a row after one round or more."
    )]
    NoChange,
    /// More pairs of arms than are worth looking at.
    #[error(
        "There are {0} pairs of arms and stages, more than {1}: check the columns arm and stage, or split the table."
    )]
    TooManyPairs(usize, usize),
    /// Rows that don't compare: of several sources, or for several lights.
    #[error(
        "The table has readings of several sources or lights ({0}), which differ by more than a change does: keep the rows of one."
    )]
    Kinds(String),
    /// One row can't be used.
    #[error("Row {row} below the column names: {message}.")]
    Row {
        /// Which row, from 1, the line of column names not counted.
        row: usize,
        /// What is wrong with it and how to mend it.
        message: String,
    },
    /// The text can't be read as a table.
    #[error("The table can't be read: {0}.")]
    Unreadable(String),
}
