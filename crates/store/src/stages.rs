//! After how many rounds a photo was taken, when that is said anew.

use crate::journal::About;
use crate::text;
use crate::{Bench, StoreError, journal};
use rusqlite::{OptionalExtension, params};
use trial::{LATEST_STAGE, PhotoId};

/// A stage that was said of a photo.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SaidStage {
    /// Rounds gone through.
    pub stage: u32,
    /// When it was said, RFC 3339.
    pub at: String,
}

impl Bench {
    /// Says anew after how many rounds a photo was taken; false, and no change, if that is its stage.
    ///
    /// What was read of the photo follows it to that stage. What was said before stays.
    ///
    /// # Errors
    /// The photo is not there, the stage is beyond [`LATEST_STAGE`], the trial has the very same
    /// file at that stage, or the database can't be written.
    pub fn correct_stage(
        &mut self,
        photo: PhotoId,
        stage: u32,
        now: &str,
    ) -> Result<bool, StoreError> {
        if stage > LATEST_STAGE {
            let message = text::stages::a_photo_can_be_of_round(LATEST_STAGE);
            return Err(StoreError::input("stage", message));
        }
        let change = self.change()?;
        let told: Option<(u32, String)> = change
            .query_row(
                "SELECT coalesce(corrected_stage.stage, photo.stage), name
                 FROM photo LEFT JOIN corrected_stage ON photo_id = photo.id WHERE photo.id = ?1",
                [photo.0],
                |row| Ok((row.get(0)?, row.get(1)?)),
            )
            .optional()
            .map_err(StoreError::database(text::doing::correct_a_photos_stage()))?;
        let (before, name) = told.ok_or(StoreError::Unknown {
            what: text::thing::photo(),
            id: photo.0,
        })?;
        if before == stage {
            return Ok(false);
        }
        let twin: Option<i64> = change
            .query_row(
                "SELECT photo.id
                 FROM photo AS moved JOIN photo ON photo.sha256 = moved.sha256
                    AND photo.trial_id = moved.trial_id AND photo.chart_id IS moved.chart_id
                 LEFT JOIN corrected_stage ON photo_id = photo.id
                 WHERE moved.id = ?1 AND photo.id <> ?1
                    AND coalesce(corrected_stage.stage, photo.stage) = ?2
                    AND photo.id NOT IN (SELECT thing FROM binned WHERE kind = 'photo')",
                params![photo.0, stage],
                |row| row.get(0),
            )
            .optional()
            .map_err(StoreError::database(text::doing::correct_a_photos_stage()))?;
        if let Some(twin) = twin {
            let message = text::stages::the_very_same_file_is_there_already(twin);
            return Err(StoreError::input("stage", message));
        }
        change
            .execute(
                "INSERT INTO stage_correction (photo_id, stage, made_at) VALUES (?1, ?2, ?3)",
                params![photo.0, stage, now],
            )
            .and_then(|_| {
                let detail = text::stages::photo_from_round_to_round(photo, &name, before, stage);
                let about = About::Photo(photo.0);
                journal::note_about(&change, about, now, "photo's stage corrected", &detail)
            })
            .map_err(StoreError::database(text::doing::correct_a_photos_stage()))?;
        change
            .commit()
            .map_err(StoreError::database(text::doing::correct_a_photos_stage()))?;
        Ok(true)
    }

    /// Every stage that was said of a photo, the first one when it was added; the last one counts.
    ///
    /// # Errors
    /// The database can't be read.
    pub fn said_stages(&self, photo: PhotoId) -> Result<Vec<SaidStage>, StoreError> {
        let read = || -> rusqlite::Result<Vec<SaidStage>> {
            self.database
                .prepare_cached(
                    "SELECT stage, added_at, 0 AS id FROM photo WHERE id = ?1
                     UNION ALL
                     SELECT stage, made_at, id FROM stage_correction WHERE photo_id = ?1
                     ORDER BY id",
                )?
                .query_map([photo.0], |row| {
                    Ok(SaidStage {
                        stage: row.get(0)?,
                        at: row.get(1)?,
                    })
                })?
                .collect()
        };
        read().map_err(StoreError::database(text::doing::read_a_photos_stages()))
    }
}
