//! Marking where the pieces lie on a photo.

use crate::journal::About;
use crate::text;
use crate::{Bench, StoreError, journal, json};
use rusqlite::{Connection, OptionalExtension, params};
use std::collections::HashSet;
use trial::{PhotoArea, PhotoId, TrialId};

impl Bench {
    /// Notes where the pieces lie on a photo, which then waits to be read.
    ///
    /// Marking again is allowed: what was read by the earlier marks stays as history
    /// and counts until the photo is read by the new ones.
    ///
    /// # Errors
    /// The photo is not there, no area is given, an area has fewer than three corners
    /// or a piece of another trial, a piece is marked twice, or the database can't be
    /// written.
    pub fn mark_areas(
        &mut self,
        photo: PhotoId,
        areas: Vec<PhotoArea>,
        now: &str,
    ) -> Result<(), StoreError> {
        let change = self.change()?;
        let trial =
            trial_of(&change, photo).map_err(StoreError::database(text::doing::mark_a_photo()))?;
        let trial = trial.ok_or(StoreError::Unknown {
            what: text::thing::photo(),
            id: photo.0,
        })?;
        let pieces =
            pieces_of(&change, trial).map_err(StoreError::database(text::doing::mark_a_photo()))?;
        check(&areas, &pieces)?;
        insert(&change, photo, &areas, now)
            .map_err(StoreError::database(text::doing::mark_a_photo()))?;
        change
            .commit()
            .map_err(StoreError::database(text::doing::mark_a_photo()))
    }
}

fn trial_of(change: &Connection, photo: PhotoId) -> rusqlite::Result<Option<TrialId>> {
    change
        .query_row(
            "SELECT trial_id FROM photo WHERE id = ?1",
            [photo.0],
            |row| Ok(TrialId(row.get(0)?)),
        )
        .optional()
}

fn pieces_of(change: &Connection, trial: TrialId) -> rusqlite::Result<HashSet<i64>> {
    change
        .prepare_cached("SELECT id FROM piece WHERE trial_id = ?1")?
        .query_map([trial.0], |row| row.get(0))?
        .collect()
}

fn check(areas: &[PhotoArea], pieces: &HashSet<i64>) -> Result<(), StoreError> {
    let wrong = |message: String| Err(StoreError::input("areas", message));
    if areas.is_empty() {
        return wrong(text::marking::mark_the_area_of_one_piece().into());
    }
    let mut marked = HashSet::new();
    for area in areas {
        let piece = area.piece;
        if !pieces.contains(&piece.0) {
            return wrong(text::marking::piece_number(piece));
        }
        if !marked.insert(piece) {
            return wrong(text::marking::piece_number_is_marked_twice(piece));
        }
        if area.polygon.len() < 3 || area.polygon.iter().flatten().any(|x| !x.is_finite()) {
            return wrong(text::marking::the_area_of_piece_number_needs_three(piece));
        }
    }
    Ok(())
}

fn insert(
    change: &Connection,
    photo: PhotoId,
    areas: &[PhotoArea],
    now: &str,
) -> rusqlite::Result<()> {
    change.execute(
        "INSERT INTO marking (photo_id, marked_at) VALUES (?1, ?2)",
        params![photo.0, now],
    )?;
    let marking = change.last_insert_rowid();
    let mut insert = change.prepare_cached(
        "INSERT INTO area (marking_id, place, piece_id, polygon_px) VALUES (?1, ?2, ?3, ?4)",
    )?;
    for (place, area) in areas.iter().enumerate() {
        // Places are fewer than the pieces of a trial, so this keeps its value.
        let place = place as i64;
        insert.execute(params![
            marking,
            place,
            area.piece.0,
            json::polygon_text(&area.polygon)
        ])?;
    }
    // Marks that were not read yet are overtaken by these.
    change.execute("DELETE FROM waiting WHERE photo_id = ?1", [photo.0])?;
    change.execute(
        "INSERT INTO waiting (marking_id, photo_id) VALUES (?1, ?2)",
        params![marking, photo.0],
    )?;
    let detail = text::marking::pieces_on_photo(areas.len(), photo);
    journal::note_about(change, About::Photo(photo.0), now, "areas marked", &detail)
}
