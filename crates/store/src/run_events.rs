//! Rows of what happened in runs.

use crate::text;
use crate::{StoreError, runs::NewEvent};
use dyeing::{
    Celsius,
    run::{Event, RunSheet, What},
};
use rusqlite::{Connection, Row, params};

pub(crate) fn sheet_text(sheet: &RunSheet) -> Result<String, StoreError> {
    serde_json::to_string(sheet).map_err(odd)
}

pub(crate) fn sheet(text: &str) -> Result<RunSheet, StoreError> {
    serde_json::from_str(text).map_err(odd)
}

fn odd(error: serde_json::Error) -> StoreError {
    StoreError::Stored {
        what: text::thing::run_sheet(),
        cause: error.to_string(),
    }
}

/// Columns of an event, for [`event`].
pub(crate) const COLUMNS: &str =
    "number, step, kind, temperature_c, words, of_event, at_s, noted_s";

/// Every event of a run, in the order in which they were noted.
pub(crate) fn of_run(database: &Connection, run: i64) -> Result<Vec<Event>, StoreError> {
    let read = || -> rusqlite::Result<Vec<Result<Event, StoreError>>> {
        database
            .prepare_cached(&format!(
                "SELECT {COLUMNS} FROM run_event WHERE run_id = ?1 ORDER BY number"
            ))?
            .query_map([run], |row| event(row, 0))?
            .collect()
    };
    let rows = read().map_err(StoreError::database(
        text::doing::read_what_happened_in_a_run(),
    ))?;
    rows.into_iter().collect()
}

/// Takes [`COLUMNS`], which begin at `from`.
pub(crate) fn event(row: &Row<'_>, from: usize) -> rusqlite::Result<Result<Event, StoreError>> {
    let kind: String = row.get(from + 2)?;
    let celsius: Option<f64> = row.get(from + 3)?;
    let words: Option<String> = row.get(from + 4)?;
    let odd = |cause: String| StoreError::Stored {
        what: text::thing::event_of_a_run(),
        cause,
    };
    let words = words.unwrap_or_default();
    let what = match (kind.as_str(), celsius) {
        ("started", _) => What::Started,
        ("stopped", _) => What::Stopped,
        ("finished", _) => What::Finished,
        ("departed", _) => What::Departed(words),
        ("remarked", _) => What::Remarked(words),
        ("withdrawn", _) => What::Withdrawn(words),
        ("temperature", Some(celsius)) => match Celsius::new(celsius) {
            Ok(celsius) => What::Temperature(celsius),
            Err(error) => return Ok(Err(odd(error.to_string()))),
        },
        _ => return Ok(Err(odd(format!("kind \"{kind}\"")))),
    };
    Ok(Ok(Event {
        number: row.get(from)?,
        step: row.get(from + 1)?,
        of: row.get(from + 5)?,
        at_s: row.get(from + 6)?,
        noted_s: row.get(from + 7)?,
        what,
    }))
}

pub(crate) fn insert(
    change: &Connection,
    run: i64,
    number: u32,
    event: &NewEvent,
    now_s: i64,
) -> rusqlite::Result<()> {
    let (kind, celsius, words) = match &event.what {
        What::Started => ("started", None, None),
        What::Stopped => ("stopped", None, None),
        What::Finished => ("finished", None, None),
        What::Temperature(celsius) => ("temperature", Some(celsius.celsius()), None),
        What::Departed(words) => ("departed", None, Some(words)),
        What::Remarked(words) => ("remarked", None, Some(words)),
        What::Withdrawn(words) => ("withdrawn", None, Some(words)),
    };
    change
        .prepare_cached(
            "INSERT INTO run_event
                (run_id, number, step, kind, temperature_c, words, of_event, at_s, noted_s)
             VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9)",
        )?
        .execute(params![
            run, number, event.step, kind, celsius, words, event.of, event.at_s, now_s
        ])?;
    Ok(())
}
