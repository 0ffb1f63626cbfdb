//! The queue: photos that wait to be read, oldest first.

use crate::journal::About;
use crate::text;
use crate::{Bench, Outcome, StoreError, journal, json, outcome::Colour, parts, photo_maps};
use photo::{Area, ChartReference, PhotoReading, Refusal, Request};
use rusqlite::{Connection, OptionalExtension, params};
use std::panic::{AssertUnwindSafe, catch_unwind};
use trial::{Photo, PhotoId, PhotoState};

/// What reads a photo's file: [`photo::read`], or a stand-in in tests.
pub type Reader<'r> = dyn Fn(&[u8], &Request) -> Result<PhotoReading, Refusal> + 'r;

/// A photo whose turn it is, with its file. It stays in the queue until what came
/// of it is recorded, so that nothing is lost if that never happens.
#[derive(Debug, Clone)]
pub struct Waiting {
    photo: Photo,
    marking: i64,
    file: Result<(Vec<u8>, ChartReference), Outcome>,
}

impl Waiting {
    /// The photo.
    pub fn photo(&self) -> &Photo {
        &self.photo
    }

    /// Reads the photo; slow, and needs no bench.
    ///
    /// A file that is missing or damaged, and a reader that breaks down, become
    /// refusals: one bad photo must not hold up the others for ever.
    pub fn read(&self, reader: &Reader<'_>) -> Outcome {
        let (bytes, chart) = match &self.file {
            Ok(file) => file,
            Err(outcome) => return outcome.clone(),
        };
        let request = Request {
            areas: self
                .photo
                .areas
                .iter()
                .map(|area| Area {
                    id: area.piece.to_string(),
                    polygon: area.polygon.clone(),
                })
                .collect(),
            corners: self.photo.corners,
            chart: chart.clone(),
            ..Request::default()
        };
        // The reader only looks at what it is lent, so nothing is left half changed.
        match catch_unwind(AssertUnwindSafe(|| reader(bytes, &request))) {
            Ok(told) => Outcome::told(&self.photo.areas, told),
            Err(_) => Outcome::refused(
                "reader_failed",
                text::queue::woadstone_broke_down_over_this_photo().into(),
            ),
        }
    }
}

impl Bench {
    /// Reads the photo that has waited longest through [`photo::read`], adds the readings
    /// of its pieces and its new state in one change, and gives that state; none if no
    /// photo waits.
    ///
    /// # Errors
    /// The vault or the database can't be used; the photo then goes on waiting.
    pub fn read_next(&mut self, now: &str) -> Result<Option<(PhotoId, PhotoState)>, StoreError> {
        self.read_next_with(now, &photo::read)
    }

    /// Like [`Bench::read_next`], with a reader of the caller's.
    ///
    /// # Errors
    /// As of [`Bench::read_next`].
    pub fn read_next_with(
        &mut self,
        now: &str,
        reader: &Reader<'_>,
    ) -> Result<Option<(PhotoId, PhotoState)>, StoreError> {
        while let Some(waiting) = self.next_waiting()? {
            let outcome = waiting.read(reader);
            if let Some(state) = self.record(&waiting, outcome, now)? {
                return Ok(Some((waiting.photo.id, state)));
            }
        }
        Ok(None)
    }

    /// The photo that has waited longest, with its file; none if no photo waits.
    ///
    /// # Errors
    /// The vault or the database can't be read.
    pub fn next_waiting(&self) -> Result<Option<Waiting>, StoreError> {
        loop {
            let Some((marking, photo)) = first(&self.database).map_err(StoreError::database(
                text::doing::look_at_the_photos_that_wait(),
            ))?
            else {
                return Ok(None);
            };
            let (photo, newest) = self.marked_photo(photo)?.ok_or(StoreError::Unknown {
                what: text::thing::photo(),
                id: photo.0,
            })?;
            // Another handle marked it anew between the two looks.
            if newest != Some(marking) {
                continue;
            }
            let file = self.vault.get(&photo.hash).and_then(|bytes| {
                let chart = self.chart_of(&photo)?;
                Ok((bytes, chart))
            });
            let file = match file {
                Ok(file) => Ok(file),
                Err(
                    error @ (StoreError::VaultFileMissing { .. }
                    | StoreError::VaultFileDamaged { .. }
                    | StoreError::Stored { .. }),
                ) => Err(Outcome::refused(error.code(), error.to_string())),
                Err(error) => return Err(error),
            };
            return Ok(Some(Waiting {
                photo,
                marking,
                file,
            }));
        }
    }

    /// The values of the chart that lies on a photo.
    fn chart_of(&self, photo: &Photo) -> Result<ChartReference, StoreError> {
        let Some(id) = photo.chart else {
            return Ok(ChartReference::published());
        };
        let kept = self.chart(id)?.ok_or(StoreError::Unknown {
            what: text::thing::chart(),
            id: id.0,
        })?;
        Ok(kept.reference)
    }

    /// Records what came of a waiting photo in one change, and gives its new state;
    /// none, and no change, if it was marked anew or recorded since it was taken.
    ///
    /// # Errors
    /// The database can't be written; the photo then goes on waiting.
    pub fn record(
        &mut self,
        waiting: &Waiting,
        outcome: Outcome,
        now: &str,
    ) -> Result<Option<PhotoState>, StoreError> {
        let change = self.change()?;
        let recorded = || -> rusqlite::Result<bool> {
            let left = change.execute(
                "DELETE FROM waiting WHERE marking_id = ?1",
                [waiting.marking],
            )?;
            if left == 0 {
                return Ok(false);
            }
            insert_state(&change, waiting, &outcome, now)?;
            insert_doubt(&change, waiting, &outcome)?;
            photo_maps::insert(&change, waiting.marking, &outcome)?;
            for colour in &outcome.colours {
                insert_colour(&change, waiting, colour, now)?;
            }
            Ok(true)
        };
        let recorded =
            recorded().map_err(StoreError::database(text::doing::record_what_was_read()))?;
        change
            .commit()
            .map_err(StoreError::database(text::doing::record_what_was_read()))?;
        Ok(recorded.then_some(outcome.state))
    }
}

fn first(database: &Connection) -> rusqlite::Result<Option<(i64, PhotoId)>> {
    database
        .prepare_cached("SELECT marking_id, photo_id FROM waiting ORDER BY marking_id LIMIT 1")?
        .query_row([], |row| Ok((row.get(0)?, PhotoId(row.get(1)?))))
        .optional()
}

fn insert_doubt(change: &Connection, waiting: &Waiting, outcome: &Outcome) -> rusqlite::Result<()> {
    if let Some(doubt) = &outcome.doubt {
        change.execute(
            "INSERT INTO doubt (marking_id, together) VALUES (?1, ?2)",
            params![waiting.marking, json::doubt_text(doubt)],
        )?;
    }
    Ok(())
}

fn insert_state(
    change: &Connection,
    waiting: &Waiting,
    outcome: &Outcome,
    now: &str,
) -> rusqlite::Result<()> {
    let photo = &waiting.photo;
    let (fit, refusal, notes) = match &outcome.state {
        PhotoState::Refused { code, message } => {
            (None, Some((code, message)), json::notes_text(&[]))
        }
        PhotoState::Read {
            model,
            loo_de00_median,
            flags,
        } => (
            Some((model, loo_de00_median)),
            None,
            json::notes_text(flags),
        ),
        // An outcome is made of a reader's answer and is never one of these.
        PhotoState::Unmarked | PhotoState::Waiting | PhotoState::TakenOut => return Ok(()),
    };
    change.execute(
        "INSERT INTO outcome
            (marking_id, model, loo_de00_median, refusal_code, refusal_message, notes, made_at)
         VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)",
        params![
            waiting.marking,
            fit.map(|(model, _)| model),
            fit.map(|(_, loo)| loo),
            refusal.map(|(code, _)| code),
            refusal.map(|(_, message)| message),
            notes,
            now
        ],
    )?;
    match refusal {
        Some((code, message)) => {
            let detail = text::queue::photo(photo.id, code, message);
            journal::note_about(
                change,
                About::Photo(photo.id.0),
                now,
                "photo refused",
                &detail,
            )
        }
        None => {
            let detail =
                text::queue::pieces_read(outcome.colours.len(), photo.areas.len(), photo.id);
            journal::note_about(change, About::Photo(photo.id.0), now, "photo read", &detail)
        }
    }
}

fn insert_colour(
    change: &Connection,
    waiting: &Waiting,
    colour: &Colour,
    now: &str,
) -> rusqlite::Result<()> {
    let [l, a, b] = colour.lab;
    change
        .prepare_cached(
            "INSERT INTO reading (piece_id, marking_id, stage, cielab_l, cielab_a, cielab_b,
                covariance, pixels, view, source, notes, made_at)
             VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, 'photo', ?10, ?11)",
        )?
        .execute(params![
            colour.piece.0,
            waiting.marking,
            waiting.photo.stage,
            l,
            a,
            b,
            json::covariance_text(&colour.cov),
            i64::try_from(colour.pixels).unwrap_or(i64::MAX),
            colour.view,
            json::notes_text(&colour.notes),
            now
        ])?;
    match &colour.split {
        Some(split) => parts::insert(change, change.last_insert_rowid(), split),
        None => Ok(()),
    }
}
