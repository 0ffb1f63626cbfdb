//! What came of a photo each time it was looked at.

use crate::text;
use crate::{Bench, StoreError, json};
use trial::{PhotoId, PhotoState, Reading};

/// What came of a photo one of the times it was looked at.
#[derive(Debug, Clone, PartialEq)]
pub struct PastOutcome {
    /// When, RFC 3339.
    pub at: String,
    /// Read, or refused.
    pub state: PhotoState,
    /// The colours as read then, in the order the pieces were marked; none of a refusal.
    pub readings: Vec<Reading>,
    /// Whether these are the readings that count.
    pub counts: bool,
}

impl Bench {
    /// What came of a photo each time it was looked at, newest first.
    ///
    /// # Errors
    /// The database can't be read, or holds what can't be understood.
    pub fn outcomes(&self, photo: PhotoId) -> Result<Vec<PastOutcome>, StoreError> {
        let read = || -> rusqlite::Result<Vec<(i64, String, PhotoState, String)>> {
            self.database
                .prepare_cached(
                    "SELECT outcome.marking_id, outcome.made_at, outcome.model,
                        outcome.loo_de00_median, outcome.refusal_code, outcome.refusal_message,
                        outcome.notes
                     FROM marking JOIN outcome ON outcome.marking_id = marking.id
                     WHERE marking.photo_id = ?1 ORDER BY marking.id DESC",
                )?
                .query_map([photo.0], |row| {
                    let state = crate::photo_row::told(row)?;
                    Ok((row.get(0)?, row.get(1)?, state, row.get("notes")?))
                })?
                .collect()
        };
        let mut outcomes = Vec::new();
        let mut counted = false;
        for (marking, at, mut state, notes) in read().map_err(StoreError::database(
            text::doing::read_what_came_of_a_photo(),
        ))? {
            if let PhotoState::Read { flags, .. } = &mut state {
                *flags = json::notes(&notes)?;
            }
            let counts = !counted && matches!(state, PhotoState::Read { .. });
            counted |= counts;
            outcomes.push(PastOutcome {
                at,
                state,
                readings: self.readings_of_marking(marking)?,
                counts,
            });
        }
        Ok(outcomes)
    }
}
