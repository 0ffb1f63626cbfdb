//! Photos of trials.

use crate::journal::About;
use crate::text;
use crate::{
    Bench, StoreError, journal, json, notices,
    photo_row::{PhotoRow, SELECT, row},
    vault::Kept,
};
use rusqlite::{Connection, OptionalExtension, params};
use std::collections::HashMap;
use trial::{ChartId, Photo, PhotoArea, PhotoId, PieceId, TrialId};

/// A photo to be added to a trial.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct NewPhoto<'a> {
    /// The trial it belongs to.
    pub trial: TrialId,
    /// After how many rounds it was taken; 0 is before the first.
    pub stage: u32,
    /// The file's name as it came.
    pub name: &'a str,
    /// The file's content, whole.
    pub bytes: &'a [u8],
    /// Width of the upright photo, pixels.
    pub width: u32,
    /// Height of the upright photo, pixels.
    pub height: u32,
    /// Outer corners of the chart at the brown, bluish-green, black and white patch,
    /// pixels of the upright photo, as a survey found them; none lets reading find it.
    pub corners: Option<[[f64; 2]; 4]>,
    /// The person's own chart that lies on it; none for the usual 24 patches.
    pub chart: Option<ChartId>,
    /// What is to be said of it from now on, in sentences.
    pub notices: &'a [String],
}

impl Bench {
    /// Keeps a photo in the vault and adds it to its trial, unmarked.
    ///
    /// The file comes first and the row after it: a crash between the two leaves a
    /// file that nobody refers to, which is harmless.
    ///
    /// # Errors
    /// The trial is not there, the photo's size or corners make no sense, or the vault
    /// or database can't be written; then a file that no other photo uses is taken away.
    pub fn add_photo(&mut self, new: NewPhoto<'_>, now: &str) -> Result<PhotoId, StoreError> {
        check(&new)?;
        let vault = self.vault.clone();
        let change = self.change()?;
        if !trial_is_there(&change, new.trial)
            .map_err(StoreError::database(text::doing::add_a_photo()))?
        {
            return Err(StoreError::Unknown {
                what: text::thing::trial(),
                id: new.trial.0,
            });
        }
        if let Some(chart) = new.chart
            && !chart_is_there(&change, chart)
                .map_err(StoreError::database(text::doing::add_a_photo()))?
        {
            return Err(StoreError::Unknown {
                what: text::thing::chart(),
                id: chart.0,
            });
        }
        let kept = vault.put(new.bytes)?;
        let added = insert(&change, &new, &kept.hash, now)
            .and_then(|id| change.commit().map(|()| id))
            .map_err(StoreError::database(text::doing::add_a_photo()));
        if added.is_err() {
            self.take_back(&kept);
        }
        added
    }

    /// The photos of a trial, in the order they were added.
    ///
    /// # Errors
    /// The database can't be read.
    pub fn photos(&self, trial: TrialId) -> Result<Vec<Photo>, StoreError> {
        let query = format!(
            "{SELECT} WHERE photo.trial_id = ?1
                AND photo.id NOT IN (SELECT thing FROM binned WHERE kind = 'photo')
             ORDER BY photo.id"
        );
        // One look for both queries: marks made in between would come without their areas.
        let _look = self
            .database
            .unchecked_transaction()
            .map_err(StoreError::database(text::doing::read_its_photos()))?;
        let mut areas = self.areas(
            "SELECT area.marking_id, area.piece_id, area.polygon_px
             FROM photo JOIN area ON area.marking_id =
                (SELECT max(id) FROM marking WHERE photo_id = photo.id)
             WHERE photo.trial_id = ?1 ORDER BY area.marking_id, area.place",
            trial.0,
        )?;
        let read = || -> rusqlite::Result<Vec<PhotoRow>> {
            self.database
                .prepare_cached(&query)?
                .query_map([trial.0], row)?
                .collect()
        };
        read()
            .map_err(StoreError::database(text::doing::read_its_photos()))?
            .into_iter()
            .map(|stored| {
                let areas = stored.marking.and_then(|marking| areas.remove(&marking));
                stored.into_photo(areas.unwrap_or_default())
            })
            .collect()
    }

    /// The photo of that number, if there is one.
    ///
    /// # Errors
    /// The database can't be read.
    pub fn photo(&self, id: PhotoId) -> Result<Option<Photo>, StoreError> {
        Ok(self.marked_photo(id)?.map(|(photo, _)| photo))
    }

    /// The file of a photo, whole and as it was added; `hash` as in [`Photo::hash`].
    ///
    /// # Errors
    /// The file is missing, damaged or can't be read.
    pub fn photo_bytes(&self, hash: &str) -> Result<Vec<u8>, StoreError> {
        self.vault.get(hash)
    }

    /// A photo with the number of its newest marking.
    pub(crate) fn marked_photo(
        &self,
        id: PhotoId,
    ) -> Result<Option<(Photo, Option<i64>)>, StoreError> {
        let query = format!("{SELECT} WHERE photo.id = ?1");
        let stored = self
            .database
            .prepare_cached(&query)
            .and_then(|mut query| query.query_row([id.0], row).optional())
            .map_err(StoreError::database(text::doing::read_its_photos()))?;
        let Some(stored) = stored else {
            return Ok(None);
        };
        let marking = stored.marking;
        let areas = match marking {
            Some(marking) => self
                .areas(
                    "SELECT marking_id, piece_id, polygon_px FROM area
                     WHERE marking_id = ?1 ORDER BY place",
                    marking,
                )?
                .remove(&marking)
                .unwrap_or_default(),
            None => Vec::new(),
        };
        Ok(Some((stored.into_photo(areas)?, marking)))
    }

    /// Areas by the number of their marking.
    fn areas(&self, query: &str, of: i64) -> Result<HashMap<i64, Vec<PhotoArea>>, StoreError> {
        let read = || -> rusqlite::Result<Vec<(i64, i64, String)>> {
            self.database
                .prepare_cached(query)?
                .query_map([of], |row| Ok((row.get(0)?, row.get(1)?, row.get(2)?)))?
                .collect()
        };
        let mut areas: HashMap<i64, Vec<PhotoArea>> = HashMap::new();
        for (marking, piece, polygon) in
            read().map_err(StoreError::database(text::doing::read_its_photos()))?
        {
            areas.entry(marking).or_default().push(PhotoArea {
                piece: PieceId(piece),
                polygon: json::polygon(&polygon)?,
            });
        }
        Ok(areas)
    }

    /// Takes a file out of the vault that came for a photo which was not added.
    pub(crate) fn take_back(&mut self, kept: &Kept) {
        if !kept.new {
            return;
        }
        let path = self.vault.path(&kept.hash);
        let vault = self.vault.clone();
        // If this fails too, a file without a row stays: harmless, and the first
        // error is the one to tell.
        let Ok(change) = self.change() else { return };
        let used = change.query_row(
            "SELECT EXISTS (SELECT 1 FROM photo WHERE sha256 = ?1)
                 OR EXISTS (SELECT 1 FROM setup_photo WHERE sha256 = ?1)",
            [&kept.hash],
            |row| row.get::<_, bool>(0),
        );
        if let Ok(false) = used {
            let _ = vault.remove(&path);
        }
    }
}

fn check(new: &NewPhoto<'_>) -> Result<(), StoreError> {
    if new.bytes.is_empty() {
        return Err(StoreError::input(
            "bytes",
            text::photos::the_photos_file_is_empty_choose_another(),
        ));
    }
    if new.width == 0 || new.height == 0 {
        return Err(StoreError::input(
            "width",
            text::photos::the_photo_has_no_width(),
        ));
    }
    if new
        .corners
        .iter()
        .flatten()
        .flatten()
        .any(|x| !x.is_finite())
    {
        return Err(StoreError::input(
            "corners",
            text::photos::the_charts_corners_must_be_four_pairs(),
        ));
    }
    Ok(())
}

fn trial_is_there(change: &Connection, trial: TrialId) -> rusqlite::Result<bool> {
    change.query_row(
        "SELECT EXISTS (SELECT 1 FROM trial WHERE id = ?1)",
        [trial.0],
        |row| row.get(0),
    )
}

fn chart_is_there(change: &Connection, chart: ChartId) -> rusqlite::Result<bool> {
    change.query_row(
        "SELECT EXISTS (SELECT 1 FROM chart WHERE id = ?1)",
        [chart.0],
        |row| row.get(0),
    )
}

fn insert(
    change: &Connection,
    new: &NewPhoto<'_>,
    hash: &str,
    now: &str,
) -> rusqlite::Result<PhotoId> {
    change.execute(
        "INSERT INTO photo
            (trial_id, stage, name, sha256, file_bytes, width_px, height_px, corners_px, added_at,
            chart_id)
         VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10)",
        params![
            new.trial.0,
            new.stage,
            new.name,
            hash,
            // A slice is never longer than isize::MAX, so this keeps its value.
            new.bytes.len() as i64,
            new.width,
            new.height,
            new.corners.as_ref().map(json::corners_text),
            now,
            new.chart.map(|chart| chart.0)
        ],
    )?;
    let id = PhotoId(change.last_insert_rowid());
    notices::insert(change, id, new.notices)?;
    let detail = text::photos::photo_of_trial_after_round_bytes_sha(
        id,
        new.name,
        new.trial,
        new.stage,
        new.bytes.len(),
        hash,
    );
    journal::note_about(
        change,
        About::Trial(new.trial.0),
        now,
        "photo added",
        &detail,
    )?;
    Ok(id)
}
