//! Where on a photo lies what its reading found.

use crate::text;
use crate::{Bench, Outcome, StoreError, json};
use photo::PhotoMap;
use rusqlite::{Connection, params};
use trial::PhotoId;

impl Bench {
    /// What the reading of a photo that counts found where; none where the photo was
    /// not read, or by an older program that did not keep it.
    ///
    /// # Errors
    /// The database can't be read, or holds what can't be understood.
    pub fn photo_map(&self, photo: PhotoId) -> Result<Option<PhotoMap>, StoreError> {
        let text = self
            .beside_counting(photo, ("photo_map", "places"))
            .map_err(StoreError::database(
                text::doing::look_where_things_lie_on_a_photo(),
            ))?;
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
