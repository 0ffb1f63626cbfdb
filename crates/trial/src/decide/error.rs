//! Why no decision can be made on a table.

/// What is wrong with a table of readings, where, and how to mend it.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum DecideError {
    /// The margin is not above 0.
    #[error("{}", crate::text::decide::the_margin_cant_be_used_give(.0))]
    Margin(f64),
    /// There are no rows at all.
    #[error("{}", crate::text::decide::the_table_is_empty_it_needs())]
    Empty,
    /// A table of grades without any.
    #[error("{}", crate::text::decide::the_table_holds_no_grade_it_needs())]
    NoGrades,
    /// A column is missing.
    #[error(
        "{}",
        crate::text::decide::the_first_line_has_no_column(column, columns)
    )]
    ColumnMissing {
        /// The one that is missing.
        column: String,
        /// All that it takes.
        columns: String,
    },
    /// A column is there twice.
    #[error("{}", crate::text::decide::the_first_line_names_the_column_twice(.0))]
    ColumnTwice(String),
    /// No row is of a test piece.
    #[error("{}", crate::text::decide::no_row_has_the_role_test())]
    NoTestPiece,
    /// No grade is of a test piece or of a witness cloth.
    #[error("{}", crate::text::decide::no_grade_is_of_a_test_piece())]
    NothingJudged,
    /// No test piece has anything to be compared with.
    #[error("{}", crate::text::decide::no_test_piece_can_be_compared())]
    NoChange,
    /// More pairs of arms than are worth looking at.
    #[error("{}", crate::text::decide::there_are_pairs_of_arms_and_stages(.0, .1))]
    TooManyPairs(usize, usize),
    /// Rows that don't compare: of several sources, or for several lights.
    #[error("{}", crate::text::decide::the_table_has_readings_of_several(.0))]
    Kinds(String),
    /// One row can't be used.
    #[error("{}", crate::text::decide::row_below_the_column_names(row, message))]
    Row {
        /// Which row, from 1, the line of column names not counted.
        row: usize,
        /// What is wrong with it and how to mend it.
        message: String,
    },
    /// The text can't be read as a table.
    #[error("{}", crate::text::decide::the_table_cant_be_read(.0))]
    Unreadable(String),
}
