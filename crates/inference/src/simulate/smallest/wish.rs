//! What a trial is to show, what limits it, and the size that was found.

use super::super::{
    Contrasts, Rate, ScatterOf,
    truth::{check_parts, some_scatter, spread},
};
use crate::InferenceError;
use crate::text;

/// What a trial is to show, and how things scatter; all along one direction of
/// colour and in one unit (CIELAB units as a rule).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Wish {
    /// Arms, 2 to 50.
    pub arms: usize,
    /// Which arms are compared. The size holds for one arm that differs while the
    /// others don't.
    pub contrasts: Contrasts,
    /// How several comparisons are held to account.
    pub strictness: Strictness,
    /// Whose scatter a comparison uses.
    pub scatter: ScatterOf,
    /// Which arms may share a load.
    pub sharing: Sharing,
    /// Standard deviation from piece to piece, reading apart; 0 upward.
    pub piece_sd: f64,
    /// Standard deviation from load to load; 0 upward.
    pub load_sd: f64,
    /// Standard deviation of one photo's reading; 0 upward, not 0 with `piece_sd`.
    pub reading_sd: f64,
    /// Photos of which each reading is the mean, 1 at least.
    pub photos: u32,
    /// Keepers of each arm, which count as pieces; 0 if pieces are compared with
    /// their own start. A keeper's error stays however many pieces there are, so that
    /// few keepers may put a wish out of reach.
    pub keepers: u32,
    /// How often what is wished for is to be shown, above both levels and below 1.
    pub power: f64,
    /// A difference of this size, not 0, is to be shown; none if none is.
    pub difference: Option<f64>,
    /// Arms are to be shown alike; none if they aren't.
    pub alike: Option<Alike>,
    /// How often chance alone may show a difference, on either side.
    pub tail: f64,
    /// How often each one-sided test of equivalence may err.
    pub equivalence_tail: f64,
}

/// Two arms that are to be shown alike.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Alike {
    /// The smallest difference that matters, above 0.
    pub margin: f64,
    /// How far they truly differ, within the margin.
    pub truly: f64,
    /// Parts of what is compared, 1 or 3; see [`Truth::parts`](super::super::Truth::parts).
    pub parts: u32,
}

/// How several comparisons are held to account.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Strictness {
    /// Each by itself.
    Each,
    /// By Holm's rule.
    Holm,
    /// By Dunnett's limit, against one control only.
    Dunnett,
}

/// Which arms may share a load.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Sharing {
    /// Each load holds as many pieces of every arm: one for each at least.
    AllArms,
    /// Each load holds one arm only.
    OneArm,
}

/// What a trial may use at most.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Limits {
    /// Pieces in all, keepers among them.
    pub pieces: usize,
    /// Loads in all.
    pub loads: usize,
    /// Pieces in one load.
    pub pieces_per_load: usize,
    /// How many pieces a load counts for where fewer loads or fewer pieces would
    /// do; 0 upward.
    pub load_as_pieces: f64,
}

/// A trial of some size.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Size {
    /// Pieces of each arm that are treated.
    pub per_arm: usize,
    /// Pieces in all, keepers among them.
    pub pieces: usize,
    /// Loads in all.
    pub loads: usize,
    /// How often the difference is shown, if one is wished for.
    pub difference: Option<Power>,
    /// How often the arms are shown alike, if that is wished for.
    pub alike: Option<Power>,
}

/// How often something is shown, got in two ways.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Power {
    /// By formula: the noncentral t, or exact integration.
    pub formula: f64,
    /// By drawing trials at random; none if there are too many loads to draw them.
    pub simulated: Option<Rate>,
}

/// Whether a size does what is wished.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Answer {
    /// The smallest that does.
    Reached(Size),
    /// None within the limits does; this one comes closest.
    OutOfReach(Size),
}

impl Wish {
    /// Comparisons in all.
    pub(super) fn comparisons(&self) -> usize {
        match self.contrasts {
            Contrasts::Against(_) => self.arms - 1,
            Contrasts::AllPairs => self.arms * (self.arms - 1) / 2,
        }
    }

    pub(super) fn check(&self) -> Result<(), InferenceError> {
        let arms = (2..=super::super::layout::MOST_ARMS).contains(&self.arms);
        InferenceError::unless(
            arms,
            text::error::number_of_arms(),
            self.arms as f64,
            text::error::n_2_to_50(),
        )?;
        if let Contrasts::Against(control) = self.contrasts {
            let range = text::error::that_of_an_arm_counted_from_0();
            InferenceError::unless(
                control < self.arms,
                text::error::number_of_the_control(),
                control as f64,
                range,
            )?;
        } else if self.strictness == Strictness::Dunnett {
            return Err(InferenceError::NoControl);
        }
        spread(text::error::scatter_from_piece_to_piece(), self.piece_sd)?;
        spread(text::error::scatter_from_load_to_load(), self.load_sd)?;
        spread(text::error::scatter_of_a_reading(), self.reading_sd)?;
        some_scatter(self.piece_sd, self.reading_sd, self.photos)?;
        InferenceError::unless_share(text::error::level(), self.tail)?;
        InferenceError::unless_share(text::error::level_of_equivalence(), self.equivalence_tail)?;
        let above = self.power > self.tail.max(self.equivalence_tail) && self.power < 1.0;
        InferenceError::unless(
            above,
            text::error::wanted_power(),
            self.power,
            text::error::above_the_levels_and_below_1(),
        )?;
        if let Some(size) = self.difference {
            let range = text::error::a_finite_number_other_than_0();
            InferenceError::unless(
                size.is_finite() && size != 0.0,
                text::error::difference(),
                size,
                range,
            )?;
        }
        if let Some(Alike {
            margin,
            truly,
            parts,
        }) = self.alike
        {
            check_parts(parts)?;
            if !(margin > 0.0 && margin.is_finite()) {
                return Err(InferenceError::Margin(margin));
            }
            let range = text::error::a_number_within_the_margin();
            InferenceError::unless(
                truly.abs() < margin,
                text::error::true_difference(),
                truly,
                range,
            )?;
        }
        if self.difference.is_none() && self.alike.is_none() {
            return Err(InferenceError::NoGoal);
        }
        Ok(())
    }
}

impl Limits {
    pub(super) fn check(&self) -> Result<(), InferenceError> {
        let fine = self.load_as_pieces >= 0.0 && self.load_as_pieces.is_finite();
        let range = text::error::a_finite_number_0_at_least();
        InferenceError::unless(
            fine,
            text::error::number_of_pieces_a_load_counts(),
            self.load_as_pieces,
            range,
        )
    }
}

impl Size {
    /// The lesser of what the formulas promise.
    pub(super) fn promised(&self) -> f64 {
        let both = [self.difference, self.alike].into_iter().flatten();
        both.map(|power| power.formula).fold(1.0, f64::min)
    }

    /// No simulation shows clearly less than `wanted`.
    pub(super) fn confirmed(&self, wanted: f64) -> bool {
        let both = [self.difference, self.alike].into_iter().flatten();
        both.filter_map(|power| power.simulated)
            .all(|rate| rate.share + 2.0 * rate.standard_error >= wanted)
    }
}
