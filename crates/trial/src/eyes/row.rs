//! One grade of one piece by one person.

use crate::text;
use crate::{Role, decide::DecideError};
use colour::grade::Grade;
use std::collections::BTreeMap;

/// A grade of the grey scale that one person gave one piece at one stage.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct EyeRow {
    /// Name of the arm.
    pub arm: String,
    /// Code of the piece, unique in the trial.
    pub piece: String,
    /// Test pieces are compared with each other, and so are witness cloths, whose grades
    /// are those of staining; a keeper's is that of a pair without a difference.
    pub role: Role,
    /// The load the piece was in, if noted.
    pub load: Option<String>,
    /// Whether that load is known to have held pieces of another arm, judged or not.
    pub shares_load: bool,
    /// After how many rounds.
    pub stage: u32,
    /// Who judged.
    pub judge: String,
    /// The grade, 5 (no change) to 1.
    pub grade: Grade,
}

/// Fails where rows contradict each other or none is of a test piece or a witness.
pub(super) fn check(rows: &[EyeRow]) -> Result<(), DecideError> {
    let mut known: BTreeMap<&str, &EyeRow> = BTreeMap::new();
    for (at, row) in rows.iter().enumerate() {
        let first = known.entry(&row.piece).or_insert(row);
        let message = if first.arm != row.arm {
            text::eyes::piece_is_in_arm_here(&row.piece, &row.arm, &first.arm)
        } else if first.role != row.role {
            text::eyes::piece_has_the_role_here_and_role2(&row.piece, row.role, first.role)
        } else {
            continue;
        };
        return Err(DecideError::Row {
            row: at + 1,
            message,
        });
    }
    if rows.iter().any(|row| row.role != Role::Keeper) {
        Ok(())
    } else {
        Err(DecideError::NothingJudged)
    }
}
