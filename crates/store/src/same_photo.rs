//! Whether a photo is on the bench already.

use crate::text;
use crate::{Bench, NewPhoto, StoreError, vault::sha256};
use rusqlite::{OptionalExtension, params};
use trial::PhotoId;

impl Bench {
    /// The photo of the same trial, stage and chart with the very same file, if
    /// there is one outside the bin.
    ///
    /// # Errors
    /// The database can't be read.
    pub fn same_photo(&self, new: &NewPhoto<'_>) -> Result<Option<PhotoId>, StoreError> {
        self.database
            .prepare_cached(
                "SELECT photo.id FROM photo LEFT JOIN corrected_stage ON photo_id = photo.id
                 WHERE sha256 = ?1 AND trial_id = ?2 AND chart_id IS ?4
                    AND coalesce(corrected_stage.stage, photo.stage) = ?3
                    AND photo.id NOT IN (SELECT thing FROM binned WHERE kind = 'photo')
                 ORDER BY photo.id LIMIT 1",
            )
            .and_then(|mut query| {
                let chart = new.chart.map(|chart| chart.0);
                query
                    .query_row(
                        params![sha256(new.bytes), new.trial.0, new.stage, chart],
                        |row| Ok(PhotoId(row.get(0)?)),
                    )
                    .optional()
            })
            .map_err(StoreError::database(text::doing::look_for_the_same_photo()))
    }
}
