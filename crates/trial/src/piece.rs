//! Arms and the pieces of cloth in them.

use crate::text;
use crate::{ArmId, PieceId};
use photo::board::Code;
use serde::{Deserialize, Serialize};
use std::{fmt, str::FromStr};

/// What a piece is there for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Role {
    /// Treated and washed: its change is what the trial is about.
    Test,
    /// Kept unwashed in the dark: test pieces of its arm are compared with it.
    Keeper,
    /// Undyed cloth washed along, which shows staining.
    Witness,
}

impl Role {
    /// The role as written in tables and files.
    pub const fn as_str(self) -> &'static str {
        match self {
            Self::Test => "test",
            Self::Keeper => "keeper",
            Self::Witness => "witness",
        }
    }
}

impl fmt::Display for Role {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.as_str())
    }
}

impl FromStr for Role {
    type Err = String;

    /// Reads `test`, `keeper` or `witness`, in any case.
    fn from_str(text: &str) -> Result<Self, String> {
        [Self::Test, Self::Keeper, Self::Witness]
            .into_iter()
            .find(|role| role.as_str().eq_ignore_ascii_case(text))
            .ok_or_else(|| text::piece::the_role_is_not_known_use_test(text))
    }
}

/// One of the treatments that a trial sets side by side.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Arm {
    /// Its number.
    pub id: ArmId,
    /// Its short name, unique in the trial.
    pub name: String,
    /// What is done to its pieces, in words.
    pub treatment: String,
}

/// A piece of cloth in an arm.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Piece {
    /// Its number.
    pub id: PieceId,
    /// The arm it belongs to.
    pub arm: ArmId,
    /// What is written on its label, unique in the trial.
    pub code: String,
    /// The code of its tag on a board, unique on the bench.
    pub tag: Code,
    /// What it is there for.
    pub role: Role,
    /// The load it shares with other pieces (bath, machine, line), if noted.
    pub load: Option<String>,
}
