//! Why nothing follows from some numbers.

use crate::text;

/// What is missing or wrong, in words.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum InferenceError {
    /// Too few values.
    #[error(
        "{}",
        crate::text::error::values_were_given_where_at_least(given, least)
    )]
    TooFew {
        /// How many were given.
        given: usize,
        /// How many are needed.
        least: usize,
    },
    /// Too few stages for a curve.
    #[error(
        "{}",
        crate::text::error::stages_after_the_start_were_given_where(given, least)
    )]
    TooFewStages {
        /// How many were given.
        given: usize,
        /// How many are needed.
        least: usize,
    },
    /// Too many values for an exact count.
    #[error("{}", crate::text::error::splits_are_too_many_to_count(format_args!("{splits:e}"), format_args!("{most:e}")))]
    TooManySplits {
        /// How many there are.
        splits: f64,
        /// How many are counted at most.
        most: f64,
    },
    /// A value that is not a plain number.
    #[error("{}", crate::text::error::a_value_is_not_a_finite_number())]
    NotFinite,
    /// All values are the same, so that nothing measures chance.
    #[error("{}", crate::text::error::all_values_of_a_group_are_equal())]
    NoScatter,
    /// A margin that is not above 0.
    #[error("{}", crate::text::error::the_margin_is_not_above_0(.0))]
    Margin(f64),
    /// A number out of its range.
    #[error(
        "{}",
        crate::text::error::the_number_is_out_of_range(what, value, range)
    )]
    Range {
        /// What the number stands for.
        what: &'static str,
        /// The number.
        value: f64,
        /// Which numbers make sense.
        range: &'static str,
    },
    /// An arm without a piece.
    #[error("{}", crate::text::error::arm_has_no_piece_give(arm + 1))]
    EmptyArm {
        /// Its number, counted from 0.
        arm: usize,
    },
    /// Nothing that a trial is to show.
    #[error("{}", crate::text::error::nothing_is_wished_for_name_a_difference())]
    NoGoal,
    /// A limit against one control where there is none.
    #[error("{}", crate::text::error::dunnetts_limit_is_for_comparisons())]
    NoControl,
    /// Columns of a model of which one follows from the others.
    #[error("{}", crate::text::error::the_values_cant_tell_fixed_effect(column + 1))]
    Inseparable {
        /// Its number, counted from 0.
        column: usize,
    },
    /// A comparison whose error holds a scatter that the values can't show.
    #[error("{}", crate::text::error::how_scatter_among_themselves_cant_be(part))]
    Confounded {
        /// Pieces or loads.
        part: &'static str,
    },
    /// A cell without any value.
    #[error("{}", crate::text::error::arm_has_no_value_at_stage(arm + 1, stage + 1))]
    EmptyCell {
        /// The arm's number, counted from 0.
        arm: usize,
        /// The stage's number, counted from 0.
        stage: usize,
    },
    /// A list of another length than the model's.
    #[error(
        "{}",
        crate::text::error::numbers_were_given_where_the_model(given, wanted)
    )]
    Length {
        /// How many were given.
        given: usize,
        /// How many it takes.
        wanted: usize,
    },
    /// A search that came to no end.
    #[error("{}", crate::text::error::no_best_fit_was_found_in_steps(steps, what))]
    NotSettled {
        /// Steps that were tried.
        steps: usize,
        /// What was sought.
        what: &'static str,
    },
    /// Limits within which no trial fits.
    #[error(
        "{}",
        crate::text::error::pieces_and_loads_of_leave_no_room(pieces, loads, per_load, arms)
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
    #[error("{}", crate::text::error::pieces_per_arm_reach_a_power(most, format_args!("{reached:.2}"), wanted))]
    OutOfReach {
        /// The most pieces per arm that were tried.
        most: f64,
        /// The power with these.
        reached: f64,
        /// The power that was wanted.
        wanted: f64,
    },
    /// Lists that belong together but differ in length.
    #[error(
        "{}",
        crate::text::error::units_were_given_but_levels_for_them(left, right)
    )]
    Unequal {
        /// Units given.
        left: usize,
        /// Levels given.
        right: usize,
    },
    /// More levels of factors than are worked out.
    #[error("{}", crate::text::error::levels_of_loads_days_and_places(given, most))]
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
            text::error::above_0_and_below_1(),
        )
    }
}
