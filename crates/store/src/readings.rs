//! Readings of pieces.

use crate::text;
use crate::{Bench, StoreError, json, parts, parts::StoredSplit};
use rusqlite::{OptionalExtension, Row};
use trial::{Doubt, Origin, PhotoId, PieceId, Reading, ReadingId, Source, TrialId};

const COLUMNS: &str = "reading.id, reading.piece_id, marking.photo_id,
    coalesce(corrected_stage.stage, reading.stage) AS stage,
    reading.cielab_l, reading.cielab_a, reading.cielab_b, reading.covariance, reading.pixels,
    reading.view, reading.source, reading.notes, reading.made_at, delivery.by_whom,
    delivery.measured_on, delivery.instrument, delivery.file_name, delivered.spectrum";

/// What stands beside a reading: the marks of its photo and its stage, or how it was delivered.
const BESIDE: &str = "LEFT JOIN marking ON marking.id = reading.marking_id
    LEFT JOIN corrected_stage ON corrected_stage.photo_id = marking.photo_id
    LEFT JOIN delivered ON delivered.reading_id = reading.id
    LEFT JOIN delivery ON delivery.id = delivered.delivery_id";

impl Bench {
    /// The readings of a trial that count, by stage and then in the order they were made.
    ///
    /// Of a photo those count that were made by its newest marks that could be read; a
    /// piece that was marked before and is not on those marks has no reading there. Of
    /// those from elsewhere all count that were not withdrawn.
    ///
    /// # Errors
    /// The database can't be read.
    pub fn current_readings(&self, trial: TrialId) -> Result<Vec<Reading>, StoreError> {
        self.readings(
            &format!(
                "WITH counting AS (
                    SELECT max(marking.id) AS marking_id
                    FROM photo
                    JOIN marking ON marking.photo_id = photo.id
                    JOIN outcome ON outcome.marking_id = marking.id
                    WHERE photo.trial_id = ?1 AND outcome.refusal_code IS NULL
                        AND photo.id NOT IN (SELECT thing FROM binned WHERE kind = 'photo')
                    GROUP BY photo.id
                 )
                 SELECT {COLUMNS}, {}
                 FROM piece
                 JOIN reading ON reading.piece_id = piece.id
                 {BESIDE} {}
                 WHERE piece.trial_id = ?1
                    AND reading.id NOT IN
                        (SELECT reading_id FROM withdrawal WHERE reading_id IS NOT NULL)
                    AND (reading.marking_id IS NULL
                        OR reading.marking_id IN (SELECT marking_id FROM counting))
                 ORDER BY stage, reading.id",
                parts::COLUMNS,
                parts::BESIDE
            ),
            trial.0,
        )
    }

    /// What the readings of a photo that count have in common; none where the photo
    /// was not read, or by an older program that did not keep it.
    ///
    /// # Errors
    /// The database can't be read.
    pub fn doubt(&self, photo: PhotoId) -> Result<Option<Doubt>, StoreError> {
        let text = self
            .beside_counting(photo, ("doubt", "together"))
            .map_err(StoreError::database(text::doing::read_its_readings()))?;
        text.map(|text| json::doubt(&text)).transpose()
    }

    /// What a column of a table holds beside the marking by which a photo's reading counts; none
    /// where the photo was not read or nothing was kept.
    pub(crate) fn beside_counting(
        &self,
        photo: PhotoId,
        (table, column): (&'static str, &'static str),
    ) -> rusqlite::Result<Option<String>> {
        let found = self
            .database
            .prepare_cached(&format!(
                "SELECT {table}.{column}
                 FROM marking
                 JOIN outcome ON outcome.marking_id = marking.id
                 LEFT JOIN {table} ON {table}.marking_id = marking.id
                 WHERE marking.photo_id = ?1 AND outcome.refusal_code IS NULL
                 ORDER BY marking.id DESC LIMIT 1"
            ))?
            .query_row([photo.0], |row| row.get(0))
            .optional()?;
        Ok(found.flatten())
    }

    /// Every reading of a piece, also those that no longer count, in the order they were made.
    ///
    /// # Errors
    /// The database can't be read.
    pub fn readings_of(&self, piece: PieceId) -> Result<Vec<Reading>, StoreError> {
        self.readings(
            &format!(
                "SELECT {COLUMNS}, {}
                 FROM reading {BESIDE} {}
                 WHERE reading.piece_id = ?1 ORDER BY reading.id",
                parts::COLUMNS,
                parts::BESIDE
            ),
            piece.0,
        )
    }

    /// What was read by one act of marking, in the order the pieces were marked.
    pub(crate) fn readings_of_marking(&self, marking: i64) -> Result<Vec<Reading>, StoreError> {
        self.readings(
            &format!(
                "SELECT {COLUMNS}, {}
                 FROM reading {BESIDE} {}
                 WHERE reading.marking_id = ?1 ORDER BY reading.id",
                parts::COLUMNS,
                parts::BESIDE
            ),
            marking,
        )
    }

    fn readings(&self, query: &str, of: i64) -> Result<Vec<Reading>, StoreError> {
        let read = || -> rusqlite::Result<Vec<Stored>> {
            self.database
                .prepare_cached(query)?
                .query_map([of], stored)?
                .collect()
        };
        let stored = read().map_err(StoreError::database(text::doing::read_its_readings()))?;
        stored.into_iter().map(Stored::into_reading).collect()
    }
}

/// A reading, and what of it is still text.
struct Stored {
    reading: Reading,
    covariance: String,
    notes: String,
    source: String,
    spectrum: Option<String>,
    split: Option<StoredSplit>,
}

/// Where the columns of a reading's parts begin.
const PARTS_FROM: usize = 18;

fn stored(row: &Row<'_>) -> rusqlite::Result<Stored> {
    let photo: Option<i64> = row.get(2)?;
    let pixels: i64 = row.get(8)?;
    let by: Option<String> = row.get(13)?;
    let origin = match by {
        None => None,
        Some(by) => Some(Origin {
            by,
            on: row.get(14)?,
            instrument: row.get(15)?,
            file: row.get(16)?,
            spectrum: None,
        }),
    };
    let reading = Reading {
        id: ReadingId(row.get(0)?),
        piece: PieceId(row.get(1)?),
        photo: photo.map(PhotoId),
        stage: row.get(3)?,
        lab: [row.get(4)?, row.get(5)?, row.get(6)?],
        cov: [[0.0; 3]; 3],
        // The table refuses negative counts.
        pixels: pixels.unsigned_abs(),
        split: None,
        view: row.get(9)?,
        source: Source::Photo,
        origin,
        notes: Vec::new(),
        made_at: row.get(12)?,
    };
    Ok(Stored {
        reading,
        covariance: row.get(7)?,
        source: row.get(10)?,
        notes: row.get(11)?,
        spectrum: row.get(17)?,
        split: StoredSplit::of(row, PARTS_FROM)?,
    })
}

impl Stored {
    fn into_reading(self) -> Result<Reading, StoreError> {
        let mut reading = self.reading;
        reading.cov = json::covariance(&self.covariance)?;
        reading.notes = json::notes(&self.notes)?;
        reading.source = self.source.parse().map_err(|cause| StoreError::Stored {
            what: text::thing::reading(),
            cause,
        })?;
        reading.split = self.split.map(StoredSplit::into_split).transpose()?;
        if let (Some(origin), Some(text)) = (&mut reading.origin, &self.spectrum) {
            origin.spectrum = Some(json::spectrum(text)?);
        }
        Ok(reading)
    }
}
