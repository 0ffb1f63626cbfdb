//! Grades that a person judged by eye with a grey scale.

use crate::text;
use crate::{EyeGradeId, PieceId, Trial, TrialError};
use colour::grade::Grade;
use serde::{Deserialize, Serialize};
use std::{fmt, str::FromStr};

/// Which grey scale was held beside the cloth.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum GreyScale {
    /// Change in colour, ISO 105-A02.
    Change,
    /// Staining, ISO 105-A03.
    Staining,
}

impl GreyScale {
    /// The scale as written in files.
    pub const fn as_str(self) -> &'static str {
        match self {
            Self::Change => "change",
            Self::Staining => "staining",
        }
    }

    /// What the scale grades, in words.
    pub fn in_words(self) -> &'static str {
        match self {
            Self::Change => text::eye_grade::change_in_colour(),
            Self::Staining => text::eye_grade::staining(),
        }
    }
}

impl fmt::Display for GreyScale {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.as_str())
    }
}

impl FromStr for GreyScale {
    type Err = String;

    /// Reads `change` or `staining`.
    fn from_str(text: &str) -> Result<Self, String> {
        [Self::Change, Self::Staining]
            .into_iter()
            .find(|scale| scale.as_str().eq_ignore_ascii_case(text.trim()))
            .ok_or_else(|| text::eye_grade::is_no_grey_scale_use_change(text))
    }
}

/// One grade of one piece as one person judged it. Grades are appended, never changed.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct EyeGrade {
    /// Its number.
    pub id: EyeGradeId,
    /// What was judged.
    #[serde(flatten)]
    pub judged: Judged,
    /// When it was entered, RFC 3339.
    pub made_at: String,
}

/// What a person judged.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Judged {
    /// The piece.
    pub piece: PieceId,
    /// After how many rounds.
    pub stage: u32,
    /// The grey scale.
    pub scale: GreyScale,
    /// The grade, 5 (none) to 1, half steps as `4-5`.
    pub grade: String,
    /// The keeper or other piece it was judged against; none for the piece's own original.
    pub against: Option<PieceId>,
    /// Who judged.
    pub by: String,
    /// Under which light, in words.
    pub light: String,
    /// When, as the person wrote it; may be empty.
    pub on: String,
    /// Anything else; may be empty.
    pub remark: String,
}

/// The longest text of a field, letters.
const LONGEST: usize = 400;

impl Judged {
    /// Checks a grade against its trial and writes it in the standard's way.
    ///
    /// # Errors
    /// A piece of another trial, a piece judged against itself, a grade that is none,
    /// a judge or light that is not named, a text that is too long.
    pub fn checked(self, trial: &Trial) -> Result<Self, TrialError> {
        let wrong = |field: &str, message: String| {
            Err(TrialError {
                field: field.into(),
                message,
            })
        };
        if trial.piece(self.piece).is_none() {
            return wrong(
                "piece",
                text::eye_grade::choose_a_piece_of_this_trial().into(),
            );
        }
        if self
            .against
            .is_some_and(|piece| trial.piece(piece).is_none())
        {
            return wrong(
                "against",
                text::eye_grade::choose_a_piece_of_this_trial_2().into(),
            );
        }
        if self.against == Some(self.piece) {
            return wrong(
                "against",
                text::eye_grade::a_piece_cant_be_judged_against_itself().into(),
            );
        }
        let grade = match self.grade.parse::<Grade>() {
            Ok(grade) => grade.to_string(),
            Err(error) => return wrong("grade", format!("{error}.")),
        };
        if self.by.trim().is_empty() {
            return wrong("by", text::eye_grade::say_who_judged_eyes_differ().into());
        }
        if self.light.trim().is_empty() {
            return wrong(
                "light",
                text::eye_grade::say_under_which_light_it_was_judged().into(),
            );
        }
        for (field, text) in [
            ("by", &self.by),
            ("light", &self.light),
            ("on", &self.on),
            ("remark", &self.remark),
        ] {
            if text.chars().count() > LONGEST {
                return wrong(
                    field,
                    text::eye_grade::write_this_in_letters_at_most(LONGEST),
                );
            }
        }
        Ok(Self { grade, ..self })
    }
}
