//! What happened in runs, as entries of the journal: told from the rows that the runs keep.

use crate::journal::{Entry, Numbered, Place};
use crate::text;
use crate::{StoreError, run_events, waters};
use dyeing::balance::WaterNote;
use dyeing::run::{Event, RunSheet, What};
use rusqlite::{Connection, Row, params};
use std::collections::HashMap;
use trial::TrialId;

/// The run of a row, for [`KeptIn`]; first of all columns.
const RUN: &str = "run.id, run.title, trial.slug, trial.title";
const OF_RUN: &str = "JOIN run ON run.id = run_id LEFT JOIN trial ON trial.id = run.trial_id";

/// Taps, temperatures, departures and remarks of runs, newest first, `most` of them at most, of
/// those before a number; with `trial`, only those of its runs.
pub(crate) fn events(
    database: &Connection,
    trial: Option<TrialId>,
    before: i64,
    most: u32,
) -> Result<Numbered, StoreError> {
    let query = format!(
        "SELECT {RUN}, run_event.id, {}, strftime('%Y-%m-%d %H:%M UTC', at_s, 'unixepoch'),
            strftime('%Y-%m-%dT%H:%M:%SZ', noted_s, 'unixepoch')
         FROM run_event {OF_RUN}
         WHERE run_event.id < ?2 AND {} ORDER BY run_event.id DESC LIMIT ?1",
        run_events::COLUMNS,
        about(trial)
    );
    let rows = rows(database, &query, trial, before, most, |row| {
        let event = run_events::event(row, 5)?;
        Ok((event, row.get::<_, String>(13)?, row.get::<_, String>(14)?))
    })?;
    let mut sheets = HashMap::new();
    let told = rows.into_iter().map(|(number, kept, (event, at, noted))| {
        let event = event?;
        if let (None, Some(_)) = (sheets.get(&kept.id), event.step) {
            sheets.insert(kept.id, sheet(database, kept.id)?);
        }
        let (what, mut detail) = said(&event);
        detail.push_str(&kept.words);
        if let Some(step) = event.step {
            detail.push_str(&text::run_journal::step(step));
            let steps = sheets.get(&kept.id).map(|sheet: &RunSheet| &sheet.steps);
            let title = steps.and_then(|steps| steps.iter().find(|s| s.number == step));
            if let Some(step) = title {
                detail.push_str(&format!(" ({})", step.title));
            }
        }
        if event.at_s.abs_diff(event.noted_s) >= 60 {
            detail.push_str(&text::run_journal::at(&at));
        }
        if let Some(of) = event.of {
            detail.push_str(&text::run_journal::instead_of_note(of));
        }
        Ok((number, kept.entry(noted, what, detail)))
    });
    told.collect()
}

/// The same for what was read of the waters of runs.
pub(crate) fn waters(
    database: &Connection,
    trial: Option<TrialId>,
    before: i64,
    most: u32,
) -> Result<Numbered, StoreError> {
    let query = format!(
        "SELECT {RUN}, water_reading.id, content, of_event,
            strftime('%Y-%m-%dT%H:%M:%SZ', noted_s, 'unixepoch')
         FROM water_reading {OF_RUN}
         WHERE water_reading.id < ?2 AND {} ORDER BY water_reading.id DESC LIMIT ?1",
        about(trial)
    );
    let rows = rows(database, &query, trial, before, most, |row| {
        let of: Option<u32> = row.get(6)?;
        Ok((row.get::<_, String>(5)?, of, row.get::<_, String>(7)?))
    })?;
    let told = rows
        .into_iter()
        .map(|(number, kept, (content, of, noted))| {
            let (what, words) = match waters::note(&content)? {
                WaterNote::Bath(_) => ("spent bath read", String::new()),
                WaterNote::Rinse(_) => ("rinse read", String::new()),
                WaterNote::Calibration(_) => ("standards for waters kept", String::new()),
                WaterNote::Withdrawn(why) => ("reading of a water taken back", with_break(why)),
            };
            let instead = of.map_or(String::new(), |of| {
                text::run_journal::instead_of_reading(of)
            });
            let detail = format!("{words}{}{instead}", kept.words);
            Ok((number, kept.entry(noted, what, detail)))
        });
    told.collect()
}

/// What happened, and the words that were noted with it.
fn said(event: &Event) -> (&'static str, String) {
    match &event.what {
        What::Started => ("clock started", String::new()),
        What::Stopped => ("clock stopped", String::new()),
        What::Temperature(at) => ("temperature noted", with_break(at.to_string())),
        What::Departed(words) => ("done otherwise", with_break(words.clone())),
        What::Remarked(words) => ("remark", with_break(words.clone())),
        What::Finished => ("run finished", String::new()),
        What::Withdrawn(why) => ("note taken back", with_break(why.clone())),
    }
}

fn with_break(words: String) -> String {
    match words.is_empty() {
        true => words,
        false => words + " \u{b7} ",
    }
}

/// The run in which something was noted.
struct KeptIn {
    id: i64,
    words: String,
    trial: Option<(String, String)>,
}

impl KeptIn {
    fn of(row: &Row<'_>) -> rusqlite::Result<Self> {
        let title: String = row.get(1)?;
        let slug: Option<String> = row.get(2)?;
        Ok(Self {
            id: row.get(0)?,
            words: text::run_journal::run(&title),
            trial: slug.zip(row.get(3)?),
        })
    }

    fn entry(self, at: String, what: &str, detail: String) -> Entry {
        Entry {
            place: Place::NEWEST,
            at,
            what: what.to_owned(),
            detail,
            run: Some(self.id),
            revision: None,
            trial: self.trial,
        }
    }
}

/// A query for each, so that each goes by its index.
fn about(trial: Option<TrialId>) -> &'static str {
    match trial {
        Some(_) => "run.trial_id = ?3",
        None => "?3 IS NULL",
    }
}

/// Numbers, runs and what `take` takes of the rows of a query.
fn rows<T>(
    database: &Connection,
    query: &str,
    trial: Option<TrialId>,
    before: i64,
    most: u32,
    take: impl Fn(&Row<'_>) -> rusqlite::Result<T>,
) -> Result<Vec<(i64, KeptIn, T)>, StoreError> {
    let read = || -> rusqlite::Result<Vec<(i64, KeptIn, T)>> {
        database
            .prepare_cached(query)?
            .query_map(params![most, before, trial.map(|id| id.0)], |row| {
                Ok((row.get(4)?, KeptIn::of(row)?, take(row)?))
            })?
            .collect()
    };
    read().map_err(StoreError::database(
        text::doing::read_what_happened_in_runs(),
    ))
}

fn sheet(database: &Connection, run: i64) -> Result<RunSheet, StoreError> {
    let text: String = database
        .prepare_cached("SELECT sheet FROM run WHERE id = ?1")
        .and_then(|mut query| query.query_row([run], |row| row.get(0)))
        .map_err(StoreError::database(
            text::doing::read_what_happened_in_runs(),
        ))?;
    run_events::sheet(&text)
}
