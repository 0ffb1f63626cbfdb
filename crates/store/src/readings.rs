//! Readings of pieces.

use crate::{Bench, StoreError, json};
use rusqlite::Row;
use trial::{PhotoId, PieceId, Reading, ReadingId, TrialId};

const READ: &str = "read its readings";

const COLUMNS: &str = "reading.id, reading.piece_id, marking.photo_id, reading.stage,
    reading.cielab_l, reading.cielab_a, reading.cielab_b, reading.covariance, reading.pixels,
    reading.view, reading.source, reading.notes, reading.made_at";

impl Bench {
    /// The readings of a trial that count, by stage and then in the order they were made.
    ///
    /// Of a photo those count that were made by its newest marks that could be read; a
    /// piece that was marked before and is not on those marks has no reading there.
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
                    GROUP BY photo.id
                 )
                 SELECT {COLUMNS}
                 FROM piece
                 JOIN reading ON reading.piece_id = piece.id
                 LEFT JOIN marking ON marking.id = reading.marking_id
                 WHERE piece.trial_id = ?1
                    AND (reading.marking_id IS NULL
                        OR reading.marking_id IN (SELECT marking_id FROM counting))
                 ORDER BY reading.stage, reading.id"
            ),
            trial.0,
        )
    }

    /// Every reading of a piece, also those that no longer count, in the order they were made.
    ///
    /// # Errors
    /// The database can't be read.
    pub fn readings_of(&self, piece: PieceId) -> Result<Vec<Reading>, StoreError> {
        self.readings(
            &format!(
                "SELECT {COLUMNS}
                 FROM reading LEFT JOIN marking ON marking.id = reading.marking_id
                 WHERE reading.piece_id = ?1 ORDER BY reading.id"
            ),
            piece.0,
        )
    }

    fn readings(&self, query: &str, of: i64) -> Result<Vec<Reading>, StoreError> {
        let read = || -> rusqlite::Result<Vec<(Reading, String, String)>> {
            self.database
                .prepare_cached(query)?
                .query_map([of], stored)?
                .collect()
        };
        read()
            .map_err(StoreError::database(READ))?
            .into_iter()
            .map(|(reading, covariance, notes)| {
                Ok(Reading {
                    cov: json::covariance(&covariance)?,
                    notes: json::notes(&notes)?,
                    ..reading
                })
            })
            .collect()
    }
}

/// A reading without its covariance and notes, and these as text.
fn stored(row: &Row<'_>) -> rusqlite::Result<(Reading, String, String)> {
    let photo: Option<i64> = row.get(2)?;
    let pixels: i64 = row.get(8)?;
    let reading = Reading {
        id: ReadingId(row.get(0)?),
        piece: PieceId(row.get(1)?),
        photo: photo.map(PhotoId),
        stage: row.get(3)?,
        lab: [row.get(4)?, row.get(5)?, row.get(6)?],
        cov: [[0.0; 3]; 3],
        // The table refuses negative counts.
        pixels: pixels.unsigned_abs(),
        view: row.get(9)?,
        source: row.get(10)?,
        notes: Vec::new(),
        made_at: row.get(12)?,
    };
    Ok((reading, row.get(7)?, row.get(11)?))
}
