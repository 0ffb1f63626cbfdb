//! What was to be said of a photo when it was added.

use crate::text;
use crate::{Bench, StoreError};
use rusqlite::{Connection, params};
use trial::PhotoId;

impl Bench {
    /// The sentences that were kept with a photo, in their order.
    ///
    /// # Errors
    /// The database can't be read.
    pub fn notices(&self, photo: PhotoId) -> Result<Vec<String>, StoreError> {
        let read = || -> rusqlite::Result<Vec<String>> {
            self.database
                .prepare_cached("SELECT sentence FROM notice WHERE photo_id = ?1 ORDER BY place")?
                .query_map([photo.0], |row| row.get(0))?
                .collect()
        };
        read().map_err(StoreError::database(
            text::doing::read_what_was_said_of_a_photo(),
        ))
    }
}

/// Keeps sentences with a photo, within the change that adds it.
pub(crate) fn insert(
    change: &Connection,
    photo: PhotoId,
    sentences: &[String],
) -> rusqlite::Result<()> {
    for (place, sentence) in (0i64..).zip(sentences) {
        change.execute(
            "INSERT INTO notice (photo_id, place, sentence) VALUES (?1, ?2, ?3)",
            params![photo.0, place, sentence],
        )?;
    }
    Ok(())
}
