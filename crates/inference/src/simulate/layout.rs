//! Which piece is in which arm and which loads, and what is compared.

use crate::InferenceError;
use crate::text;

/// Arms above which no trial is laid out.
pub(super) const MOST_ARMS: usize = 50;

/// A trial as it is laid out: what is known before anything is measured.
#[derive(Debug, Clone, PartialEq)]
pub struct Layout {
    /// Arms, 2 to 50; they are numbered from 0.
    pub arms: usize,
    /// The pieces that are treated and looked at, one at least in each arm.
    pub pieces: Vec<Piece>,
    /// Keepers of each arm. Where there are none, each piece is compared with its
    /// own start. A keeper is part of the scatter it is judged by; with one keeper, at
    /// 5 %, chance shows a difference in 2 to 4 %.
    pub keepers: Vec<u32>,
    /// Kinds of load (dye bath, wash, dryer) that [`Piece::loads`] names.
    pub kinds: usize,
    /// Which arms are compared.
    pub contrasts: Contrasts,
    /// Whose scatter the comparison of two arms uses.
    pub scatter: ScatterOf,
}

/// One piece.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Piece {
    /// Its arm.
    pub arm: usize,
    /// Its load of each kind, any number standing for a load; none if it isn't noted.
    /// If a load of one piece isn't noted, the analysis knows nothing of that kind.
    pub loads: Vec<Option<usize>>,
}

/// Which arms are compared.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Contrasts {
    /// Each other arm with this one.
    Against(usize),
    /// Each arm with each other.
    AllPairs,
}

/// Whose scatter the comparison of two arms uses.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ScatterOf {
    /// That of all arms, taken to be the same in each.
    AllArms,
    /// That of the two arms, each by itself where no loads are shared. With two
    /// pieces in an arm the test errs on the safe side: at 5 %, chance shows a
    /// difference in 2 to 3 %.
    EachPair,
}

impl Layout {
    /// The two arms of each comparison, the first of them subtracted.
    pub(super) fn pairs(&self) -> Vec<(usize, usize)> {
        match self.contrasts {
            Contrasts::Against(control) => (0..self.arms)
                .filter(|arm| *arm != control)
                .map(|arm| (control, arm))
                .collect(),
            Contrasts::AllPairs => (0..self.arms)
                .flat_map(|first| (first + 1..self.arms).map(move |second| (first, second)))
                .collect(),
        }
    }

    pub(super) fn check(&self) -> Result<(), InferenceError> {
        let whole = |what, value: usize, most: usize, range| {
            InferenceError::unless(value <= most, what, value as f64, range)
        };
        let few = self.arms < 2 || self.arms > MOST_ARMS;
        InferenceError::unless(
            !few,
            text::error::number_of_arms(),
            self.arms as f64,
            text::error::n_2_to_50(),
        )?;
        let given = self.keepers.len();
        let each = text::error::one_for_each_arm_0_where();
        InferenceError::unless(
            given == self.arms,
            text::error::length_of_the_list_of_keepers(),
            given as f64,
            each,
        )?;
        if let Contrasts::Against(control) = self.contrasts {
            whole(
                text::error::number_of_the_control(),
                control,
                self.arms - 1,
                text::error::that_of_an_arm_counted_from_0(),
            )?;
        }
        let mut counts = vec![0usize; self.arms];
        for piece in &self.pieces {
            whole(
                text::error::arm_of_a_piece(),
                piece.arm,
                self.arms - 1,
                text::error::that_of_an_arm_counted_from_0(),
            )?;
            counts[piece.arm] += 1;
            let named = piece.loads.len();
            let fine = named == self.kinds;
            let range = text::error::one_for_each_kind_of_load();
            InferenceError::unless(
                fine,
                text::error::length_of_a_pieces_list_of_loads(),
                named as f64,
                range,
            )?;
        }
        match counts.iter().position(|count| *count == 0) {
            Some(arm) => Err(InferenceError::EmptyArm { arm }),
            None => Ok(()),
        }
    }
}
