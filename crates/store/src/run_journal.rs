//! What happened in runs, as entries of the journal: told from the rows that the runs keep.

use crate::journal::{Entry, Numbered, Place, Seen};
use crate::text;
use crate::text::run_journal as say;
use crate::told::ended;
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
        "SELECT {RUN}, run_event.id, {}, strftime('%Y-%m-%dT%H:%M:%SZ', at_s, 'unixepoch'),
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
        let title = event.step.and_then(|step| {
            let steps = sheets.get(&kept.id).map(|sheet: &RunSheet| &sheet.steps)?;
            Some(steps.iter().find(|s| s.number == step)?.title.clone())
        });
        let place = match (event.step, title) {
            (None, _) => say::in_run(&kept.title),
            (Some(step), None) => say::at_step(step, &kept.title),
            (Some(step), Some(title)) => say::at_step_titled(step, title, &kept.title),
        };
        let (what, mut sentence) = said(&event, &kept.title, &place);
        if event.at_s.abs_diff(event.noted_s) >= 60 {
            let clock = locale::time_at(&at).unwrap_or_else(|| at.clone());
            sentence = say::happened_at(sentence, locale::day(&at), clock);
        }
        if event.of.is_some() && !matches!(event.what, What::Withdrawn(_)) {
            sentence = say::in_place_of_another(sentence);
        }
        Ok((number, kept.entry(noted, what, sentence)))
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
            let place = say::in_run(&kept.title);
            let (what, mut sentence) = match waters::note(&content)? {
                WaterNote::Bath(_) => ("spent bath read", say::bath_read(place)),
                WaterNote::Rinse(_) => ("rinse read", say::rinse_read(place)),
                WaterNote::Calibration(_) => {
                    ("standards for waters kept", say::standards_kept(place))
                }
                WaterNote::Withdrawn(why) => (
                    "reading of a water taken back",
                    say::reading_taken_back(place, ended(&why)),
                ),
            };
            if of.is_some() && what != "reading of a water taken back" {
                sentence = say::in_place_of_another(sentence);
            }
            Ok((number, kept.entry(noted, what, sentence)))
        });
    told.collect()
}

/// What happened, and the sentence that tells it; `place` is the step and the run, in words.
fn said(event: &Event, run: &str, place: &str) -> (&'static str, String) {
    match &event.what {
        What::Started => ("clock started", say::clock_started(place)),
        What::Stopped => ("clock stopped", say::clock_stopped(place)),
        What::Temperature(at) => ("temperature noted", say::temperature_noted(at, place)),
        What::Departed(words) => ("done otherwise", say::done_otherwise(place, ended(words))),
        What::Remarked(words) => ("remark", say::remark(place, ended(words))),
        What::Finished => ("run finished", say::run_finished(run)),
        What::Withdrawn(why) => ("note taken back", say::note_taken_back(place, ended(why))),
    }
}

/// The run in which something was noted.
struct KeptIn {
    id: i64,
    title: String,
    trial: Option<(String, String)>,
}

impl KeptIn {
    fn of(row: &Row<'_>) -> rusqlite::Result<Self> {
        let slug: Option<String> = row.get(2)?;
        Ok(Self {
            id: row.get(0)?,
            title: row.get(1)?,
            trial: slug.zip(row.get(3)?),
        })
    }

    fn entry(self, at: String, what: &str, sentence: String) -> Entry {
        Entry {
            place: Place::NEWEST,
            at,
            what: what.to_owned(),
            sentence,
            see: Some(Seen::Run(self.id)),
            kept: None,
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
