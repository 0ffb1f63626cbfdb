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
    /// Too few stages for a curve.
    #[error(
        "{given} stages after the start were given where a curve needs {least} at least; look at \
         the pieces after another round"
    )]
    TooFewStages {
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
    /// A number out of its range.
    #[error("the {what} is {value}; it has to be {range}")]
    Range {
        /// What the number stands for.
        what: &'static str,
        /// The number.
        value: f64,
        /// Which numbers make sense.
        range: &'static str,
    },
    /// An arm without a piece.
    #[error("arm {} has no piece; give it one at least, or leave it out", arm + 1)]
    EmptyArm {
        /// Its number, counted from 0.
        arm: usize,
    },
    /// Nothing that a trial is to show.
    #[error("nothing is wished for; name a difference to be shown or a margin to be kept")]
    NoGoal,
    /// A limit against one control where there is none.
    #[error(
        "Dunnett's limit is for comparisons with one control; compare with one, or take Holm's rule"
    )]
    NoControl,
    /// Columns of a model of which one follows from the others.
    #[error(
        "the values can't tell fixed effect {} from those before it; leave it out, or add values \
         that differ in it", column + 1
    )]
    Inseparable {
        /// Its number, counted from 0.
        column: usize,
    },
    /// A comparison whose error holds a scatter that the values can't show.
    #[error(
        "how {part} scatter among themselves can't be told from what is compared, so the \
         comparison has no error that could be trusted; let each side have two or more of them"
    )]
    Confounded {
        /// Pieces or loads.
        part: &'static str,
    },
    /// A cell without any value.
    #[error("arm {} has no value at stage {}", arm + 1, stage + 1)]
    EmptyCell {
        /// The arm's number, counted from 0.
        arm: usize,
        /// The stage's number, counted from 0.
        stage: usize,
    },
    /// A list of another length than the model's.
    #[error("{given} numbers were given where the model has {wanted}")]
    Length {
        /// How many were given.
        given: usize,
        /// How many it takes.
        wanted: usize,
    },
    /// A search that came to no end.
    #[error("no best fit was found in {steps} steps; the values don't settle {what}")]
    NotSettled {
        /// Steps that were tried.
        steps: usize,
        /// What was sought.
        what: &'static str,
    },
    /// Limits within which no trial fits.
    #[error(
        "{pieces} pieces and {loads} loads of {per_load} leave no room for {arms} arms with two \
         pieces each, or two loads each where arms don't share any; allow more"
    )]
    NoRoom {
        /// Arms that are compared.
        arms: usize,
        /// Pieces in all, at most.
        pieces: usize,
        /// Loads in all, at most.
        loads: usize,
        /// Pieces in one load, at most.
        per_load: usize,
    },
    /// A power that no number of pieces reaches.
    #[error(
        "{most} pieces per arm reach a power of {reached:.2}, not {wanted}; allow a greater difference"
    )]
    OutOfReach {
        /// The most pieces per arm that were tried.
        most: f64,
        /// The power with these.
        reached: f64,
        /// The power that was wanted.
        wanted: f64,
    },
    /// Lists that belong together but differ in length.
    #[error("{left} units were given, but {right} levels for them")]
    Unequal {
        /// Units given.
        left: usize,
        /// Levels given.
        right: usize,
    },
    /// More levels of factors than are worked out.
    #[error("{given} levels of loads, days and places are too many; {most} is the limit")]
    TooManyLevels {
        /// How many there are.
        given: usize,
        /// How many are worked out at most.
        most: usize,
    },
}

impl InferenceError {
    /// Fails with a number out of its range unless it is `fine`.
    pub(crate) fn unless(
        fine: bool,
        what: &'static str,
        value: f64,
        range: &'static str,
    ) -> Result<(), Self> {
        if fine {
            Ok(())
        } else {
            Err(Self::Range { what, value, range })
        }
    }

    /// Fails unless the number lies between 0 and 1, both left out.
    pub(crate) fn unless_share(what: &'static str, value: f64) -> Result<(), Self> {
        Self::unless(
            value > 0.0 && value < 1.0,
            what,
            value,
            "above 0 and below 1",
        )
    }
}
