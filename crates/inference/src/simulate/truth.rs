//! How things truly are, and how often they are tried.

use super::Layout;
use crate::InferenceError;
use crate::text;

/// Pieces times runs that are drawn at most.
const MOST_DRAWN: f64 = 5e7;

/// How things truly are: effects and scatter along one direction of colour, all in
/// one unit (CIELAB units as a rule).
#[derive(Debug, Clone, PartialEq)]
pub struct Truth {
    /// Mean change of each arm.
    pub effects: Vec<f64>,
    /// Standard deviation from piece to piece of one arm in the same loads, reading
    /// apart; 0 upward.
    pub piece_sd: f64,
    /// Standard deviation from load to load, of each kind; 0 upward.
    pub load_sds: Vec<f64>,
    /// Standard deviation of one photo's reading of one piece; 0 upward, and not 0
    /// together with `piece_sd`.
    pub reading_sd: f64,
    /// Photos of which each reading is the mean, 1 at least.
    pub photos: u32,
    /// The smallest difference that matters, above 0; none if arms aren't to be
    /// shown alike.
    pub margin: Option<f64>,
    /// Parts of what is compared, 1 or 3. With 3 the effects lie along one of three
    /// directions, scatter is the same in each, and arms are alike if the length of
    /// their difference is shown to lie below the margin, as a verdict on colours asks.
    pub parts: u32,
}

/// One case of several that the same drawn trials are judged by.
#[derive(Debug, Clone, PartialEq)]
pub struct Case {
    /// Mean change of each arm, as [`Truth::effects`].
    pub effects: Vec<f64>,
    /// The smallest difference that matters, as [`Truth::margin`].
    pub margin: Option<f64>,
    /// Whether it is asked what all contrasts show together, by Holm's rule and by
    /// Dunnett's limit, which takes longer.
    pub together: bool,
}

impl Case {
    /// The case as a truth of its own.
    pub(super) fn of(&self, truth: &Truth) -> Truth {
        Truth {
            effects: self.effects.clone(),
            margin: self.margin,
            ..truth.clone()
        }
    }
}

/// How often a trial is tried, and how strictly.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Runs {
    /// How often, 1 at least; pieces times runs are 50 million at most.
    pub runs: u32,
    /// From which all chance follows.
    pub seed: u64,
    /// How often chance alone may show a difference, on either side, 0 to 1.
    pub tail: f64,
    /// How often each one-sided test of equivalence may err, 0 to 1.
    pub equivalence_tail: f64,
}

impl Runs {
    /// That many runs from that seed, each test at 0.05.
    pub fn new(runs: u32, seed: u64) -> Self {
        Self {
            runs,
            seed,
            tail: 0.05,
            equivalence_tail: 0.05,
        }
    }

    pub(super) fn check(&self, pieces: usize) -> Result<(), InferenceError> {
        InferenceError::unless_share(text::error::level(), self.tail)?;
        InferenceError::unless_share(text::error::level_of_equivalence(), self.equivalence_tail)?;
        InferenceError::unless(
            self.runs > 0,
            text::error::number_of_runs(),
            0.0,
            text::error::n_1_at_least(),
        )?;
        let drawn = pieces as f64 * f64::from(self.runs);
        let range = text::error::at_most_50_million_take_fewer_runs();
        InferenceError::unless(
            drawn <= MOST_DRAWN,
            text::error::number_of_pieces_times_runs(),
            drawn,
            range,
        )
    }
}

impl Truth {
    /// Variance of a piece's reading.
    pub(super) fn reading_variance(&self) -> f64 {
        self.reading_sd * self.reading_sd / f64::from(self.photos)
    }

    pub(super) fn check(&self, layout: &Layout) -> Result<(), InferenceError> {
        check_parts(self.parts)?;
        let listed = |what, list: &[f64], wanted: usize, range| {
            let given = list.len();
            InferenceError::unless(given == wanted, what, given as f64, range)
        };
        listed(
            text::error::length_of_the_list_of_effects(),
            &self.effects,
            layout.arms,
            text::error::one_for_each_arm(),
        )?;
        let range = text::error::one_for_each_kind_of_load();
        listed(
            text::error::length_of_the_list_of_load_scatters(),
            &self.load_sds,
            layout.kinds,
            range,
        )?;
        for &effect in &self.effects {
            InferenceError::unless(
                effect.is_finite(),
                text::error::effect(),
                effect,
                text::error::a_finite_number(),
            )?;
        }
        spread(text::error::scatter_from_piece_to_piece(), self.piece_sd)?;
        spread(text::error::scatter_of_a_reading(), self.reading_sd)?;
        for &sd in &self.load_sds {
            spread(text::error::scatter_from_load_to_load(), sd)?;
        }
        some_scatter(self.piece_sd, self.reading_sd, self.photos)?;
        match self.margin {
            Some(margin) if !(margin > 0.0 && margin.is_finite()) => {
                Err(InferenceError::Margin(margin))
            }
            _ => Ok(()),
        }
    }
}

/// Equal pieces never read alike to the last digit, and something is read.
pub(super) fn some_scatter(
    piece_sd: f64,
    reading_sd: f64,
    photos: u32,
) -> Result<(), InferenceError> {
    let both = piece_sd + reading_sd;
    InferenceError::unless(
        both > 0.0,
        text::error::scatter_of_pieces_and_readings(),
        both,
        text::error::above_0(),
    )?;
    let range = text::error::n_1_at_least();
    InferenceError::unless(
        photos > 0,
        text::error::number_of_photos(),
        f64::from(photos),
        range,
    )
}

pub(super) fn spread(what: &'static str, sd: f64) -> Result<(), InferenceError> {
    InferenceError::unless(
        sd >= 0.0 && sd.is_finite(),
        what,
        sd,
        text::error::a_finite_number_0_at_least(),
    )
}

/// Refuses to compare what has other than 1 or 3 parts.
pub(super) fn check_parts(parts: u32) -> Result<(), InferenceError> {
    let known = matches!(parts, 1 | 3);
    InferenceError::unless(
        known,
        text::error::number_of_parts(),
        f64::from(parts),
        text::error::n_1_or_3(),
    )
}
