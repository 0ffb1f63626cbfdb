//! Readings from elsewhere, as they are added.

use crate::journal::About;
use crate::text;
use crate::{Bench, StoreError, journal, json};
use rusqlite::{Connection, params};
use trial::{NewReading, TrialId};

/// The longest text of who, when and with what, letters.
const LONGEST: usize = 400;

/// Readings that come together, in a file or typed.
#[derive(Debug, Clone)]
pub struct Delivery<'a> {
    /// After how many rounds the pieces were measured.
    pub stage: u32,
    /// The file's name; empty where the values were typed.
    pub file_name: &'a str,
    /// The file as it came, or the typed text: it is kept.
    pub content: &'a [u8],
    /// Who measured; may be empty.
    pub by: &'a str,
    /// When, in the person's words; may be empty.
    pub on: &'a str,
    /// With what, in words; may be empty.
    pub instrument: &'a str,
    /// The readings.
    pub readings: &'a [NewReading],
}

impl Bench {
    /// Adds readings from elsewhere to a trial, with what they came in, and gives how many.
    ///
    /// # Errors
    /// No readings; a piece of another trial; a file that was added at this stage before
    /// and still counts; a text that is too long; the database can't be written.
    pub fn add_readings(
        &mut self,
        trial: TrialId,
        delivery: &Delivery<'_>,
        now: &str,
    ) -> Result<usize, StoreError> {
        check(delivery)?;
        let change = self.change()?;
        let refused = refusal(&change, trial, delivery)
            .map_err(StoreError::database(text::doing::add_readings()))?;
        if let Some((field, message)) = refused {
            return Err(StoreError::input(field, message));
        }
        insert(&change, trial, delivery, now)
            .map_err(StoreError::database(text::doing::add_readings()))?;
        change
            .commit()
            .map_err(StoreError::database(text::doing::add_readings()))?;
        Ok(delivery.readings.len())
    }
}

fn check(delivery: &Delivery<'_>) -> Result<(), StoreError> {
    if delivery.readings.is_empty() {
        return Err(StoreError::input(
            "readings",
            text::deliveries::there_is_nothing_to_add_no_name(),
        ));
    }
    for (field, text) in [
        ("by", delivery.by),
        ("on", delivery.on),
        ("instrument", delivery.instrument),
    ] {
        if text.chars().count() > LONGEST {
            let message = text::deliveries::write_this_in_letters_at_most(LONGEST);
            return Err(StoreError::input(field, message));
        }
    }
    let finite = |r: &NewReading| {
        r.lab
            .iter()
            .chain(r.cov.iter().flatten())
            .all(|x| x.is_finite())
    };
    if !delivery.readings.iter().all(finite) {
        return Err(StoreError::input(
            "readings",
            text::deliveries::a_reading_holds_a_number_without(),
        ));
    }
    Ok(())
}

/// What speaks against adding a delivery: the field, the sentence.
fn refusal(
    change: &Connection,
    trial: TrialId,
    delivery: &Delivery<'_>,
) -> rusqlite::Result<Option<(&'static str, String)>> {
    let mut is_piece = change
        .prepare_cached("SELECT EXISTS (SELECT 1 FROM piece WHERE id = ?1 AND trial_id = ?2)")?;
    for reading in delivery.readings {
        if !is_piece.query_row(params![reading.piece.0, trial.0], |row| row.get(0))? {
            return Ok(Some((
                "readings",
                text::deliveries::piece_number(reading.piece),
            )));
        }
    }
    let again: bool = change.query_row(
        "SELECT EXISTS (
            SELECT 1 FROM delivery
            JOIN delivered ON delivered.delivery_id = delivery.id
            JOIN reading ON reading.id = delivered.reading_id
            WHERE delivery.trial_id = ?1 AND delivery.content = ?2 AND reading.stage = ?3
                AND reading.id NOT IN (SELECT reading_id FROM withdrawal WHERE reading_id IS NOT NULL))",
        params![trial.0, delivery.content, delivery.stage],
        |row| row.get(0),
    )?;
    Ok(again.then(|| {
        let message = text::deliveries::these_very_readings_were_added().to_owned();
        ("readings", message)
    }))
}

fn insert(
    change: &Connection,
    trial: TrialId,
    delivery: &Delivery<'_>,
    now: &str,
) -> rusqlite::Result<()> {
    change.execute(
        "INSERT INTO delivery (trial_id, file_name, content, by_whom, measured_on, instrument, added_at)
         VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)",
        params![
            trial.0,
            delivery.file_name,
            delivery.content,
            delivery.by,
            delivery.on,
            delivery.instrument,
            now
        ],
    )?;
    let number = change.last_insert_rowid();
    let mut reading = change.prepare_cached(
        "INSERT INTO reading (piece_id, marking_id, stage, cielab_l, cielab_a, cielab_b,
            covariance, pixels, view, source, notes, made_at)
         VALUES (?1, NULL, ?2, ?3, ?4, ?5, ?6, 0, ?7, ?8, '[]', ?9)",
    )?;
    let mut delivered = change.prepare_cached(
        "INSERT INTO delivered (reading_id, delivery_id, spectrum) VALUES (?1, ?2, ?3)",
    )?;
    for new in delivery.readings {
        let [l, a, b] = new.lab;
        reading.execute(params![
            new.piece.0,
            delivery.stage,
            l,
            a,
            b,
            json::covariance_text(&new.cov),
            new.view.to_string(),
            new.source.as_str(),
            now
        ])?;
        let spectrum = new.spectrum.as_ref().map(json::spectrum_text);
        delivered.execute(params![change.last_insert_rowid(), number, spectrum])?;
    }
    let from = match delivery.file_name {
        "" => text::deliveries::as_typed().to_owned(),
        name => text::deliveries::from_file(name),
    };
    let detail = text::deliveries::readings_from(delivery.readings.len(), from);
    journal::note_about(
        change,
        About::Trial(trial.0),
        now,
        "readings added",
        &detail,
    )
}
