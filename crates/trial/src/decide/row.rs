//! A reading of a piece at a stage, as a decision takes it.

use super::DecideError;
use crate::Role;
use crate::text;
use colour::Lab;
use std::collections::HashMap;

/// One reading of one piece at one stage.
#[derive(Debug, Clone, PartialEq)]
pub struct Row {
    /// Name of the arm.
    pub arm: String,
    /// Code of the piece, unique over all arms.
    pub piece: String,
    /// What the piece is there for.
    pub role: Role,
    /// The load it shares with other pieces, if noted.
    pub load: Option<String>,
    /// The photo it was read from, by any name, if that is known.
    pub photo: Option<String>,
    /// Covariance of L*, a*, b* as the photo states it, from everything that makes the
    /// colour uncertain; none of a colour that is not from a photo.
    pub stated: Option<[[f64; 3]; 3]>,
    /// After how many rounds it was read; 0 is the start.
    pub stage: u32,
    /// Its colour.
    pub lab: Lab,
}

/// Lightness beyond 0 and 100 that a corrected photo may give, L* units.
const LIGHTNESS_SLACK: f64 = 5.0;
/// a* and b* beyond which no surface colour lies, with room to spare.
const WIDEST_AB: f64 = 200.0;

/// What is wrong with a colour, if anything.
pub(super) fn colour_fault(lab: Lab) -> Option<&'static str> {
    if !lab.to_array().iter().all(|v| v.is_finite()) {
        Some(text::decide::l_a_and_b_must_be_plain())
    } else if !(-LIGHTNESS_SLACK..=100.0 + LIGHTNESS_SLACK).contains(&lab.l) {
        Some(text::decide::l_must_lie_between_0_and_100())
    } else if lab.a.abs() > WIDEST_AB || lab.b.abs() > WIDEST_AB {
        Some(text::decide::a_and_b_must_lie_between_200())
    } else {
        None
    }
}

/// Refuses rows that contradict each other. Row numbers count from 1.
pub(super) fn check(rows: &[Row]) -> Result<(), DecideError> {
    let mut seen: HashMap<&str, (usize, &Row)> = HashMap::new();
    for (i, row) in rows.iter().enumerate() {
        let number = i + 1;
        if let Some(fault) = colour_fault(row.lab) {
            return Err(DecideError::Row {
                row: number,
                message: fault.into(),
            });
        }
        let (first, before) = *seen.entry(&row.piece).or_insert((number, row));
        if before.arm != row.arm {
            return Err(DecideError::Row {
                row: number,
                message: text::decide::piece_is_in_arm_here(
                    &row.piece,
                    &row.arm,
                    &before.arm,
                    first,
                ),
            });
        }
        if before.role != row.role {
            return Err(DecideError::Row {
                row: number,
                message: text::decide::piece_is_a_here_and_a_role2(
                    &row.piece,
                    row.role,
                    before.role,
                    first,
                ),
            });
        }
    }
    if !rows.iter().any(|row| row.role == Role::Test) {
        return Err(DecideError::NoTestPiece);
    }
    Ok(())
}
