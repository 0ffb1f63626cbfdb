//! Who shares what: every piece of a plan with its loads, days and places.

use super::{CircumstanceKind, Plan, PlannedArm, StepKind};
use crate::Role;
use serde::{Deserialize, Serialize};
use std::fmt;

/// Letters for arms without codes; none looks or sounds like another or like a digit.
const ARM_LETTERS: &[u8] = b"ACEFHJKMPRTWXY";

/// A piece as planned.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct PlannedPiece {
    /// What is written on its label, unique in the plan.
    pub code: String,
    /// Its arm's place in the plan, from 0.
    pub arm: usize,
    /// Test piece or keeper.
    pub role: Role,
}

/// What a column of the table is of.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Kind {
    /// The loads of a step; the number counts an arm's steps of that kind, from 0.
    Load(StepKind, usize),
    /// A day, person or place.
    Circumstance(CircumstanceKind),
}

impl fmt::Display for Kind {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Load(kind, 0) => f.pad(kind.words()),
            Self::Load(kind, nth) => write!(f, "{} {}", kind.words(), nth + 1),
            Self::Circumstance(kind) => f.pad(kind.words()),
        }
    }
}

/// One column: which load, day or place each piece has.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Column {
    /// What it is of.
    pub kind: Kind,
    /// The names that occur.
    pub names: Vec<String>,
    /// For each piece the place of its name; none if the piece doesn't have the
    /// step, or has it by itself.
    pub of_piece: Vec<Option<usize>>,
}

/// The table of a plan's pieces and all that they share.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Sharing {
    /// The pieces: each arm's test pieces, then its keepers.
    pub pieces: Vec<PlannedPiece>,
    /// What they share, steps first, in the order of the plan.
    pub columns: Vec<Column>,
}

impl Sharing {
    /// The table of a plan, pieces dealt out in turn.
    pub fn of(plan: &Plan) -> Self {
        let mut sharing = Self {
            pieces: Vec::new(),
            columns: Vec::new(),
        };
        for (i, arm) in plan.arms.iter().enumerate() {
            let first = sharing.pieces.len();
            sharing.pieces.extend(pieces(i, arm));
            sharing.deal_out(plan, arm, first);
        }
        let all = sharing.pieces.len();
        for column in &mut sharing.columns {
            column.of_piece.resize(all, None);
        }
        sharing
            .columns
            .sort_by_key(|column| matches!(column.kind, Kind::Circumstance(_)));
        sharing
    }

    fn deal_out(&mut self, plan: &Plan, arm: &PlannedArm, first: usize) {
        let mut before: Vec<StepKind> = Vec::new();
        for step in plan.steps.iter().filter(|step| step.is_of(&arm.name)) {
            let nth = before.iter().filter(|kind| **kind == step.kind).count();
            before.push(step.kind);
            let kind = Kind::Load(step.kind, nth);
            self.fill(kind, &step.loads, first, !step.kind.every_round());
        }
        for circumstance in plan.circumstances.iter().filter(|c| c.is_of(&arm.name)) {
            let kind = Kind::Circumstance(circumstance.kind);
            self.fill(kind, &circumstance.values, first, true);
        }
    }

    /// Deals the pieces from `first` on out over the names in turn, keepers if asked.
    fn fill(&mut self, kind: Kind, names: &[String], first: usize, keepers: bool) {
        let place = match self.columns.iter().position(|column| column.kind == kind) {
            Some(place) => place,
            None => {
                self.columns.push(Column {
                    kind,
                    names: Vec::new(),
                    of_piece: Vec::new(),
                });
                self.columns.len() - 1
            }
        };
        let column = &mut self.columns[place];
        column.of_piece.resize(self.pieces.len(), None);
        if names.is_empty() {
            return;
        }
        let numbers: Vec<usize> = names.iter().map(|name| column.number(name)).collect();
        for role in [Role::Test, Role::Keeper] {
            if role == Role::Keeper && !keepers {
                continue;
            }
            let of_role = (first..self.pieces.len()).filter(|i| self.pieces[*i].role == role);
            for (turn, piece) in of_role.enumerate() {
                column.of_piece[piece] = Some(numbers[turn % numbers.len()]);
            }
        }
    }

    /// The places of the test pieces in the list of pieces.
    pub fn test_pieces(&self) -> impl Iterator<Item = usize> + '_ {
        (0..self.pieces.len()).filter(|i| self.pieces[*i].role == Role::Test)
    }
}

impl Column {
    /// The place of a name, which is added if it is new.
    fn number(&mut self, name: &str) -> usize {
        let found = self.names.iter().position(|other| other == name);
        found.unwrap_or_else(|| {
            self.names.push(name.to_owned());
            self.names.len() - 1
        })
    }

    /// The name that a piece has, if any.
    pub fn name_of(&self, piece: usize) -> Option<&str> {
        let place = (*self.of_piece.get(piece)?)?;
        self.names.get(place).map(String::as_str)
    }

    /// Whether no load of it holds pieces of two arms.
    pub(super) fn of_one_arm_each(&self, sharing: &Sharing) -> bool {
        let mut arm_of: Vec<Option<usize>> = vec![None; self.names.len()];
        self.of_piece.iter().enumerate().all(|(piece, name)| {
            name.is_none_or(|name| {
                let arm = sharing.pieces[piece].arm;
                *arm_of[name].get_or_insert(arm) == arm
            })
        })
    }

    /// How many different names the test pieces of an arm have.
    pub(super) fn names_of_arm(&self, sharing: &Sharing, arm: usize) -> Vec<usize> {
        let mut names: Vec<usize> = sharing
            .test_pieces()
            .filter(|i| sharing.pieces[*i].arm == arm)
            .filter_map(|i| self.of_piece[i])
            .collect();
        names.sort_unstable();
        names.dedup();
        names
    }
}

fn pieces(place: usize, arm: &PlannedArm) -> impl Iterator<Item = PlannedPiece> + '_ {
    (0..arm.pieces + arm.keepers).map(move |i| {
        let (role, made_up) = if i < arm.pieces {
            (Role::Test, format!("{}{}", letters(place), i + 1))
        } else {
            let number = i - arm.pieces + 1;
            (Role::Keeper, format!("{}-keep-{number}", letters(place)))
        };
        PlannedPiece {
            code: arm
                .codes
                .get(i)
                .map_or(made_up, |code| code.trim().to_owned()),
            arm: place,
            role,
        }
    })
}

/// A letter for each arm; from the fifteenth on two.
fn letters(place: usize) -> String {
    let letter = char::from(ARM_LETTERS[place % ARM_LETTERS.len()]);
    match place / ARM_LETTERS.len() {
        0 => letter.to_string(),
        round => format!(
            "{}{letter}",
            char::from(ARM_LETTERS[(round - 1) % ARM_LETTERS.len()])
        ),
    }
}
