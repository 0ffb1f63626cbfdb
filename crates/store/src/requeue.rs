//! Taking a waiting photo out of the queue, and having a photo read once more.

use crate::journal::About;
use crate::text;
use crate::{Bench, StoreError, journal};
use trial::PhotoId;

impl Bench {
    /// Takes a waiting photo out of the queue; false, and no change, if it doesn't wait.
    ///
    /// Photo and marks stay. If it is being read at this moment, what comes of that is
    /// not recorded.
    ///
    /// # Errors
    /// The database can't be written.
    pub fn take_out(&mut self, photo: PhotoId, now: &str) -> Result<bool, StoreError> {
        let change = self.change()?;
        let taken = || -> rusqlite::Result<bool> {
            let left = change.execute("DELETE FROM waiting WHERE photo_id = ?1", [photo.0])?;
            if left == 0 {
                return Ok(false);
            }
            let detail = text::requeue::photo_it_and_its_marks_stay(photo);
            journal::note_about(
                &change,
                About::Photo(photo.0),
                now,
                "photo taken out of the queue",
                &detail,
            )?;
            Ok(true)
        };
        let taken = taken().map_err(StoreError::database(
            text::doing::take_a_photo_out_of_the_queue(),
        ))?;
        change.commit().map_err(StoreError::database(
            text::doing::take_a_photo_out_of_the_queue(),
        ))?;
        Ok(taken)
    }

    /// Has a photo read once more where its pieces are marked. What was read before
    /// stays as history, and counts until the new reading is there.
    ///
    /// # Errors
    /// The photo is not there or was never marked, or the database can't be written.
    pub fn read_again(&mut self, photo: PhotoId, now: &str) -> Result<(), StoreError> {
        let stored = self.photo(photo)?.ok_or(StoreError::Unknown {
            what: text::thing::photo(),
            id: photo.0,
        })?;
        self.mark_areas(photo, stored.areas, now)
    }
}
