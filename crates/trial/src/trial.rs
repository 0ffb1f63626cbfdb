//! A trial as it stands on the bench.

use crate::{Arm, ArmId, Piece, PieceId, TrialId};
use serde::{Deserialize, Serialize};

/// A question, the arms that are to answer it, and their pieces.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Trial {
    /// Its number.
    pub id: TrialId,
    /// Its name in addresses: lower-case letters, digits and hyphens; unique.
    pub slug: String,
    /// Its title.
    pub title: String,
    /// What is asked, in words.
    pub question: String,
    /// The smallest difference that matters, CIEDE2000 units, above 0.
    pub margin_de00: f64,
    /// How many rounds (one wash and dry each) are planned.
    pub rounds: u32,
    /// True for a demo: no such pieces were dyed.
    pub invented: bool,
    /// When it was entered, RFC 3339.
    pub made_at: String,
    /// How pieces are dyed, washed and dried, in words; may be empty.
    pub method: String,
    /// The arms, in the order they were entered.
    pub arms: Vec<Arm>,
    /// The pieces of all arms, in the order they were entered.
    pub pieces: Vec<Piece>,
}

impl Trial {
    /// The arm with that number, if it is one of this trial's.
    pub fn arm(&self, id: ArmId) -> Option<&Arm> {
        self.arms.iter().find(|arm| arm.id == id)
    }

    /// The piece with that number, if it is one of this trial's.
    pub fn piece(&self, id: PieceId) -> Option<&Piece> {
        self.pieces.iter().find(|piece| piece.id == id)
    }

    /// The pieces of an arm, in order.
    pub fn pieces_of(&self, arm: ArmId) -> impl Iterator<Item = &Piece> {
        self.pieces.iter().filter(move |piece| piece.arm == arm)
    }
}
