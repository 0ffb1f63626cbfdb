//! Where on a photo lies what its reading found.

use crate::{Bench, Outcome, StoreError, json};
use photo::PhotoMap;
use rusqlite::{Connection, OptionalExtension, params};
use trial::PhotoId;

impl Bench {
    /// What the reading of a photo that counts found where; none where the photo was
    /// not read, or by an older program that did not keep it.
    ///
    /// # Errors
    /// The database can't be read, or holds what can't be understood.
    pub fn photo_map(&self, photo: PhotoId) -> Result<Option<PhotoMap>, StoreError> {
        let text: Option<String> = self
            .database
            .prepare_cached(
                "SELECT photo_map.places
                 FROM marking
                 JOIN outcome ON outcome.marking_id = marking.id
                 LEFT JOIN photo_map ON photo_map.marking_id = marking.id
                 WHERE marking.photo_id = ?1 AND outcome.refusal_code IS NULL
                 ORDER BY marking.id DESC LIMIT 1",
            )
            .and_then(|mut query| query.query_row([photo.0], |row| row.get(0)).optional())
            .map_err(StoreError::database("look where things lie on a photo"))?
            .flatten();
        text.map(|text| json::photo_map(&text)).transpose()
    }
}

/// Keeps the map of a reading, within the change that records it.
pub(crate) fn insert(change: &Connection, marking: i64, outcome: &Outcome) -> rusqlite::Result<()> {
    if let Some(map) = &outcome.map {
        change.execute(
            "INSERT INTO photo_map (marking_id, places) VALUES (?1, ?2)",
            params![marking, json::photo_map_text(map)],
        )?;
    }
    Ok(())
}
