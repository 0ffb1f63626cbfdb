//! What was added and no longer counts.

use crate::journal::About;
use crate::text;
use crate::{Bench, StoreError, journal};
use rusqlite::params;
use trial::{EyeGradeId, ReadingId, TrialId};

/// The longest reason, letters.
const LONGEST: usize = 400;

/// A reading from elsewhere or a grade by eye.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Added {
    /// A reading from elsewhere.
    Reading(ReadingId),
    /// A grade by eye.
    Grade(EyeGradeId),
}

impl Bench {
    /// Lets a reading from elsewhere or a grade by eye no longer count. It stays on the
    /// bench with the reason; a corrected one is added anew.
    ///
    /// # Errors
    /// No reason; nothing of that number that still counts in that trial (readings of
    /// photos are corrected by marking the photo again); the database can't be written.
    pub fn withdraw(
        &mut self,
        trial: TrialId,
        added: Added,
        reason: &str,
        now: &str,
    ) -> Result<(), StoreError> {
        let reason = reason.trim();
        if reason.is_empty() || reason.chars().count() > LONGEST {
            let message = text::withdrawals::say_in_1_to_letters_why(LONGEST);
            return Err(StoreError::input("reason", message));
        }
        let (what, id, query, insert) = match added {
            Added::Reading(id) => (
                text::thing::reading_from_elsewhere(),
                id.0,
                "SELECT EXISTS (SELECT 1 FROM delivered
                    JOIN delivery ON delivery.id = delivered.delivery_id
                    WHERE delivered.reading_id = ?1 AND delivery.trial_id = ?2
                        AND NOT EXISTS (SELECT 1 FROM withdrawal WHERE reading_id = ?1))",
                "INSERT INTO withdrawal (reading_id, reason, made_at) VALUES (?1, ?2, ?3)",
            ),
            Added::Grade(id) => (
                text::thing::grade_by_eye(),
                id.0,
                "SELECT EXISTS (SELECT 1 FROM eye_grade JOIN piece ON piece.id = eye_grade.piece_id
                    WHERE eye_grade.id = ?1 AND piece.trial_id = ?2
                        AND NOT EXISTS (SELECT 1 FROM withdrawal WHERE eye_grade_id = ?1))",
                "INSERT INTO withdrawal (eye_grade_id, reason, made_at) VALUES (?1, ?2, ?3)",
            ),
        };
        let change = self.change()?;
        let counts: bool = change
            .query_row(query, params![id, trial.0], |row| row.get(0))
            .map_err(StoreError::database(text::doing::withdraw_a_reading()))?;
        if !counts {
            return Err(StoreError::Unknown { what, id });
        }
        change
            .execute(insert, params![id, reason, now])
            .and_then(|_| {
                journal::note_about(
                    &change,
                    About::Trial(trial.0),
                    now,
                    "withdrawn",
                    &format!("{what} {id}: {reason}"),
                )
            })
            .map_err(StoreError::database(text::doing::withdraw_a_reading()))?;
        change
            .commit()
            .map_err(StoreError::database(text::doing::withdraw_a_reading()))
    }
}
