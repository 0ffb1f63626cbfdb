//! Who judged in a session and what they saw.

use super::{Agreement, EyeRow, FromEyes, PairKind, Session, Turn, Way, agreement, decide};
use crate::text;
use crate::{EyeGrade, GreyScale, Reading, Trial, TrialError};
use colour::grade::Grade;
use serde::{Deserialize, Serialize, Serializer};
use std::{collections::BTreeSet, str::FromStr};

/// The longest text of a field, letters.
const LONGEST: usize = 400;

/// What a person says of their colour vision.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Vision {
    /// Normal.
    Normal,
    /// Not normal: grades of lightness alone may still be of use.
    Impaired,
    /// Nothing.
    Unstated,
}

impl Vision {
    /// All of them, in the order of a form.
    pub const ALL: [Self; 3] = [Self::Unstated, Self::Normal, Self::Impaired];

    /// As written in forms and files.
    pub const fn as_str(self) -> &'static str {
        match self {
            Self::Normal => "normal",
            Self::Impaired => "impaired",
            Self::Unstated => "unstated",
        }
    }

    /// In words.
    pub fn in_words(self) -> &'static str {
        match self {
            Self::Normal => text::eyes::normal_colour_vision(),
            Self::Impaired => text::eyes::colour_vision_that_is_not_normal(),
            Self::Unstated => text::eyes::colour_vision_not_stated(),
        }
    }
}

impl FromStr for Vision {
    type Err = String;

    fn from_str(text: &str) -> Result<Self, String> {
        Self::ALL
            .into_iter()
            .find(|vision| vision.as_str() == text)
            .ok_or_else(|| text::eyes::choose_what_is_said_of_colour_vision().to_owned())
    }
}

/// A person who judges, and how.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Judge {
    /// Name or initials.
    pub name: String,
    /// Under which light, in words.
    pub light: String,
    /// What they say of their colour vision.
    pub vision: Vision,
    /// From how far, in words; may be empty.
    pub distance: String,
}

impl Judge {
    /// Checks what was entered.
    ///
    /// # Errors
    /// No name, no light, a text that is too long.
    pub fn checked(self) -> Result<Self, TrialError> {
        let wrong = |field: &str, message: String| {
            Err(TrialError {
                field: field.into(),
                message,
            })
        };
        let judge = Self {
            name: self.name.trim().to_owned(),
            light: self.light.trim().to_owned(),
            distance: self.distance.trim().to_owned(),
            ..self
        };
        if judge.name.is_empty() {
            return wrong(
                "name",
                text::eyes::say_who_judges_by_name_or_initials().into(),
            );
        }
        if judge.light.is_empty() {
            return wrong(
                "light",
                text::eyes::say_under_which_light_such_as_north().into(),
            );
        }
        for (field, text) in [
            ("name", &judge.name),
            ("light", &judge.light),
            ("distance", &judge.distance),
        ] {
            if text.chars().count() > LONGEST {
                return wrong(field, text::eyes::write_this_in_letters_at_most(LONGEST));
            }
        }
        Ok(judge)
    }
}

/// What a person gave one turn.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Given {
    /// The grade; none where they could not tell.
    #[serde(serialize_with = "as_text")]
    pub grade: Option<Grade>,
    /// Anything else; may be empty.
    pub remark: String,
    /// When, RFC 3339.
    pub made_at: String,
}

fn as_text<S: Serializer>(grade: &Option<Grade>, to: S) -> Result<S::Ok, S::Error> {
    grade.map(|grade| grade.to_string()).serialize(to)
}

/// One person's part of a session.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Sitting {
    /// Its number on the bench.
    pub id: i64,
    /// The person.
    pub judge: Judge,
    /// Their order.
    pub order: Vec<Turn>,
    /// What they gave each turn, the last word where it was corrected; none yet for
    /// turns that are to come.
    pub given: Vec<Option<Given>>,
    /// When they began, RFC 3339.
    pub begun_at: String,
}

impl Sitting {
    /// The turn that comes next, from 0; none where all are done.
    pub fn next(&self) -> Option<usize> {
        self.given.iter().position(Option::is_none)
    }

    /// Turns done.
    pub fn done(&self) -> usize {
        self.given.iter().flatten().count()
    }

    /// Grades given to pairs, by the number of the pair, in the order they were given;
    /// turns of which they could not tell are left out.
    pub fn grades(&self) -> impl Iterator<Item = (usize, Grade)> {
        let turns = self.order.iter().zip(&self.given);
        turns.filter_map(|(turn, given)| Some((turn.pair, given.as_ref()?.grade?)))
    }
}

/// A session as it is kept: who judged and what.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Judging {
    /// Its number on the bench.
    pub id: i64,
    /// What it shows.
    pub session: Session,
    /// Everybody's part, in the order they began.
    pub sittings: Vec<Sitting>,
    /// When it was begun, RFC 3339.
    pub begun_at: String,
    /// When it was closed and shown, RFC 3339; none while people may judge.
    pub closed_at: Option<String>,
}

/// All that eyes say of a trial, as far as it may be shown.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Eyes {
    /// The verdict from grades of cloths; none where there are none.
    pub verdict: Option<FromEyes>,
    /// Stages of the verdict whose grades were given one by one and not blind.
    pub not_blind: Vec<u32>,
    /// How far eyes agree, for each closed session.
    pub agreement: Vec<Agreement>,
    /// Sessions that people may still judge in.
    pub open: usize,
}

impl Eyes {
    /// From sessions, grades given one by one and readings. None where no eye ever
    /// looked. Sessions that are not closed say nothing but that they are open.
    pub fn of(
        trial: &Trial,
        judgings: &[Judging],
        eye_grades: &[EyeGrade],
        readings: &[Reading],
    ) -> Option<Self> {
        let closed: Vec<&Judging> = judgings.iter().filter(|j| j.closed_at.is_some()).collect();
        let (rows, not_blind) = rows(trial, &closed, eye_grades);
        let eyes = Self {
            verdict: decide(&rows, trial.margin_de00).ok(),
            not_blind,
            agreement: closed
                .iter()
                .map(|judging| agreement(judging, readings))
                .collect(),
            open: judgings.len() - closed.len(),
        };
        let none = eyes.verdict.is_none() && judgings.is_empty();
        (!none).then_some(eyes)
    }
}

/// The grades of cloths as a table, and the stages of it that were not judged blind.
///
/// Where a stage was judged in a closed session, grades given one by one don't count
/// there; what was seen on a screen never does. A look at a piece a second time is one
/// more row.
pub fn rows(
    trial: &Trial,
    closed: &[&Judging],
    eye_grades: &[EyeGrade],
) -> (Vec<EyeRow>, Vec<u32>) {
    let row = |piece, stage, judge: &str, grade, catch: bool| {
        let piece = trial.piece(piece)?;
        Some(EyeRow {
            arm: trial.arm(piece.arm)?.name.clone(),
            piece: piece.code.clone(),
            role: piece.role,
            load: piece.load.clone(),
            shares_load: trial.pieces.iter().any(|other| {
                other.arm != piece.arm && other.load.is_some() && other.load == piece.load
            }),
            stage,
            judge: judge.to_owned(),
            grade,
        })
        .filter(|_| !catch)
    };
    let mut found = Vec::new();
    let mut blind = BTreeSet::new();
    for judging in closed.iter().filter(|j| j.session.way == Way::Cloth) {
        let session = &judging.session;
        for sitting in &judging.sittings {
            for (pair, grade) in sitting.grades() {
                let pair = &session.pairs[pair];
                let catch = pair.kind == PairKind::Catch;
                found.extend(row(
                    pair.piece,
                    session.stage,
                    &sitting.judge.name,
                    grade,
                    catch,
                ));
                blind.insert(session.stage);
            }
        }
    }
    let mut not_blind = BTreeSet::new();
    for graded in eye_grades {
        let judged = &graded.judged;
        let role = trial.piece(judged.piece).map(|piece| piece.role);
        let fits = match judged.scale {
            GreyScale::Change => role == Some(crate::Role::Test),
            GreyScale::Staining => role == Some(crate::Role::Witness),
        };
        if !fits || blind.contains(&judged.stage) {
            continue;
        }
        if let Ok(grade) = judged.grade.parse() {
            found.extend(row(judged.piece, judged.stage, &judged.by, grade, false));
            not_blind.insert(judged.stage);
        }
    }
    // Everybody's order is their own: rows come in that of the trial, so that arms do.
    let place = |row: &EyeRow| {
        trial
            .pieces
            .iter()
            .position(|piece| piece.code == row.piece)
    };
    found.sort_by_cached_key(|row| (row.stage, place(row)));
    (found, not_blind.into_iter().collect())
}
