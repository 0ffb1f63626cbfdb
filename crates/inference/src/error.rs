//! Why nothing follows from some numbers.

/// What is missing or wrong, in words.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum InferenceError {
    /// Too few values.
    #[error("{given} values were given where {least} at least are needed")]
    TooFew {
        /// How many were given.
        given: usize,
        /// How many are needed.
        least: usize,
    },
    /// Too many values for an exact count.
    #[error("{splits:e} splits are too many to count one by one; {most:e} is the limit")]
    TooManySplits {
        /// How many there are.
        splits: f64,
        /// How many are counted at most.
        most: f64,
    },
    /// A value that is not a plain number.
    #[error("a value is not a finite number")]
    NotFinite,
    /// All values are the same, so that nothing measures chance.
    #[error("all values of a group are equal, so there is no scatter to judge by")]
    NoScatter,
    /// A margin that is not above 0.
    #[error("the margin {0} is not above 0")]
    Margin(f64),
}
