//! A photo's row, and the photo made of it.

use crate::{StoreError, json};
use rusqlite::Row;
use trial::{ChartId, Photo, PhotoArea, PhotoId, PhotoState, TrialId};

/// A photo's row beside its stage, its newest marking and what came of it.
pub(crate) const SELECT: &str = "
    SELECT photo.id, photo.trial_id, coalesce(corrected_stage.stage, photo.stage) AS stage,
        photo.name, photo.sha256, photo.file_bytes,
        photo.width_px, photo.height_px, photo.corners_px, photo.added_at, photo.chart_id,
        marking.id AS marking_id, outcome.model, outcome.loo_de00_median, outcome.notes,
        outcome.refusal_code, outcome.refusal_message,
        EXISTS (SELECT 1 FROM waiting WHERE waiting.marking_id = marking.id) AS waits
    FROM photo
    LEFT JOIN corrected_stage ON corrected_stage.photo_id = photo.id
    LEFT JOIN marking ON marking.id = (SELECT max(id) FROM marking WHERE photo_id = photo.id)
    LEFT JOIN outcome ON outcome.marking_id = marking.id";

/// A photo whose lists are still text.
pub(crate) struct PhotoRow {
    photo: Photo,
    corners: Option<String>,
    /// Notes on the photo as a whole, once it was read or refused.
    notes: Option<String>,
    /// The number of its newest marking.
    pub(crate) marking: Option<i64>,
}

/// Takes a row of [`SELECT`].
pub(crate) fn row(row: &Row<'_>) -> rusqlite::Result<PhotoRow> {
    let marking: Option<i64> = row.get("marking_id")?;
    let notes: Option<String> = row.get("notes")?;
    let file_bytes: i64 = row.get("file_bytes")?;
    Ok(PhotoRow {
        photo: Photo {
            id: PhotoId(row.get("id")?),
            trial: TrialId(row.get("trial_id")?),
            stage: row.get("stage")?,
            name: row.get("name")?,
            hash: row.get("sha256")?,
            // The table refuses negative sizes.
            bytes: file_bytes.unsigned_abs(),
            width: row.get("width_px")?,
            height: row.get("height_px")?,
            corners: None,
            chart: row.get::<_, Option<i64>>("chart_id")?.map(ChartId),
            areas: Vec::new(),
            state: match (marking, &notes) {
                (None, _) => PhotoState::Unmarked,
                (Some(_), None) if row.get("waits")? => PhotoState::Waiting,
                (Some(_), None) => PhotoState::TakenOut,
                (Some(_), Some(_)) => told(row)?,
            },
            added_at: row.get("added_at")?,
        },
        corners: row.get("corners_px")?,
        notes,
        marking,
    })
}

/// What came of reading a photo, its notes still to be filled in.
pub(crate) fn told(row: &Row<'_>) -> rusqlite::Result<PhotoState> {
    let refusal: Option<String> = row.get("refusal_code")?;
    Ok(match refusal {
        Some(code) => PhotoState::Refused {
            code,
            message: row.get("refusal_message")?,
        },
        None => PhotoState::Read {
            model: row.get("model")?,
            loo_de00_median: row.get("loo_de00_median")?,
            flags: Vec::new(),
        },
    })
}

impl PhotoRow {
    /// The photo with its lists, `areas` being those of its newest marking.
    pub(crate) fn into_photo(self, areas: Vec<PhotoArea>) -> Result<Photo, StoreError> {
        let mut photo = self.photo;
        photo.areas = areas;
        photo.corners = self.corners.as_deref().map(json::corners).transpose()?;
        if let (PhotoState::Read { flags, .. }, Some(notes)) = (&mut photo.state, &self.notes) {
            *flags = json::notes(notes)?;
        }
        Ok(photo)
    }
}
