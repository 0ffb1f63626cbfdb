//! Runs: a recipe's run sheet while it is followed. Events are added, never changed.

use crate::journal::About;
use crate::text;
use crate::{Bench, StoreError, journal, run_events, stock};
use dyeing::{
    Plan,
    run::{Departure, Run, RunSheet, What},
};
use locale::{Locale, Measures};
use rusqlite::{OptionalExtension, Row, params};
use trial::{Departed, TrialId};

/// A run as a list shows it.
#[derive(Debug, Clone, PartialEq)]
pub struct RunSummary {
    /// Its number on the bench.
    pub id: i64,
    /// What the person calls it.
    pub title: String,
    /// Name of its recipe.
    pub recipe: String,
    /// When it began, RFC 3339.
    pub begun_at: String,
    /// How many of its clocks run.
    pub clocks: usize,
    /// Whether it is over.
    pub finished: bool,
}

/// A run with all that happened.
#[derive(Debug, Clone, PartialEq)]
pub struct KeptRun {
    /// Its number on the bench.
    pub id: i64,
    /// What the person calls it.
    pub title: String,
    /// The recipe's name in addresses.
    pub recipe: String,
    /// The recipe's revision, from 1.
    pub revision: u32,
    /// Slug and title of the trial it belongs to.
    pub trial: Option<(String, String)>,
    /// When it began, RFC 3339.
    pub begun_at: String,
    /// Its sheet and what happened.
    pub run: Run,
}

/// An event to be added to a run.
#[derive(Debug, Clone, PartialEq)]
pub struct NewEvent {
    /// The step it belongs to; none for the run as a whole.
    pub step: Option<u32>,
    /// When it happened, s since 1970.
    pub at_s: i64,
    /// What happened.
    pub what: What,
    /// Number of the earlier event that it corrects or withdraws.
    pub of: Option<u32>,
}

/// Columns of a run, for [`row`].
const COLUMNS: &str =
    "run.id, run.title, recipe.slug, number, trial.slug, trial.title, begun_at, sheet";
const TABLES: &str = "run JOIN recipe_revision ON recipe_revision.id = revision_id
     JOIN recipe ON recipe.id = recipe_id LEFT JOIN trial ON trial.id = run.trial_id";

impl Bench {
    /// Begins a run by a recipe's revision and gives its number. The sheet is kept as it is now, and
    /// what the baths need is taken from the lots of materials of the same names.
    ///
    /// # Errors
    /// There is no such revision or trial, or the database can't be written.
    pub fn begin_run(
        &mut self,
        recipe: &str,
        number: u32,
        trial: Option<&str>,
        title: &str,
        now: &str,
    ) -> Result<i64, StoreError> {
        let Some(kept) = self.recipe(recipe, Some(number))? else {
            return Err(StoreError::input(
                "recipe",
                text::runs::there_is_no_such_recipe(),
            ));
        };
        let trial_id = match trial {
            None => None,
            Some(slug) => Some(
                self.trial(slug)?
                    .ok_or_else(|| StoreError::input("trial", text::runs::there_is_no_trial(slug)))?
                    .id
                    .0,
            ),
        };
        // What is kept is data: pages write it anew in the reader's measures.
        let plan = locale::within(Locale::DATA, || Plan::of(&kept.recipe))
            .map_err(|error| StoreError::input("recipe", error.to_string()))?;
        let title = match title.trim() {
            "" => kept.recipe.name.as_str(),
            title => title,
        };
        let sheet = locale::within(Locale::DATA, || RunSheet::of(&plan));
        let sheet = run_events::sheet_text(&sheet)?;
        let change = self.change()?;
        let id = change
            .execute(
                "INSERT INTO run (revision_id, trial_id, title, sheet, begun_at)
                 SELECT recipe_revision.id, ?3, ?4, ?5, ?6 FROM recipe_revision
                 JOIN recipe ON recipe.id = recipe_id WHERE slug = ?1 AND number = ?2",
                params![recipe, number, trial_id, title, sheet, now],
            )
            .and_then(|_| {
                let id = change.last_insert_rowid();
                let detail = text::runs::by_revision(title, recipe, number);
                let about = trial_id.map_or(About::Bench, About::Trial);
                journal::note_about(&change, about, now, "run begun", &detail).map(|()| id)
            })
            .map_err(StoreError::database(text::doing::begin_a_run()))?;
        stock::take_for_run(&change, id, &plan, now)?;
        change
            .commit()
            .map_err(StoreError::database(text::doing::begin_a_run()))?;
        Ok(id)
    }

    /// Adds what happened to a run; false if it says nothing new (a button pressed twice). When this
    /// returns, the event is on the disk.
    ///
    /// # Errors
    /// There is no such run, the run doesn't take the event (see [`Run::takes`]), or the database
    /// can't be written.
    pub fn note_run(&mut self, id: i64, event: &NewEvent, now_s: i64) -> Result<bool, StoreError> {
        let change = self.change()?;
        let sheet: Option<String> = change
            .query_row("SELECT sheet FROM run WHERE id = ?1", [id], |row| {
                row.get(0)
            })
            .optional()
            .map_err(StoreError::database(
                text::doing::note_what_happened_in_a_run(),
            ))?;
        let Some(sheet) = sheet else {
            return Err(StoreError::Unknown {
                what: text::thing::run(),
                id,
            });
        };
        let run = Run::new(run_events::sheet(&sheet)?, run_events::of_run(&change, id)?);
        let new = run
            .takes(event.step, &event.what, event.of, event.at_s, now_s)
            .map_err(|error| StoreError::input("event", error.to_string()))?;
        if new {
            let number = run.events().len() as u32 + 1;
            run_events::insert(&change, id, number, event, now_s).map_err(StoreError::database(
                text::doing::note_what_happened_in_a_run(),
            ))?;
            change.commit().map_err(StoreError::database(
                text::doing::note_what_happened_in_a_run(),
            ))?;
        }
        Ok(new)
    }

    /// The run of that number, if there is one.
    ///
    /// # Errors
    /// The database can't be read, or holds a run that can't be understood.
    pub fn run(&self, id: i64) -> Result<Option<KeptRun>, StoreError> {
        Ok(self.select("run.id = ?1", id)?.pop())
    }

    /// The same with its sheet in the measures of the locale; what is kept is metric.
    ///
    /// # Errors
    /// The database can't be read, or holds a run that can't be understood.
    pub fn run_as_shown(&self, id: i64) -> Result<Option<KeptRun>, StoreError> {
        self.run(id)?.map(|kept| self.shown(kept)).transpose()
    }

    fn shown(&self, mut kept: KeptRun) -> Result<KeptRun, StoreError> {
        if locale::current().measures != Measures::Metric {
            let recipe = match self.recipe(&kept.recipe, Some(kept.revision)) {
                // Its sheet stands by itself, so it is told without the recipe.
                Err(StoreError::Stored { .. }) => None,
                found => found?,
            };
            let recipe = recipe.as_ref().map(|of| &of.recipe);
            kept.run.sheet = kept.run.sheet.rewritten(recipe);
        }
        Ok(kept)
    }

    /// Every run, newest first.
    ///
    /// # Errors
    /// The database can't be read, or holds a run that can't be understood.
    pub fn runs(&self) -> Result<Vec<RunSummary>, StoreError> {
        Ok(self.select("?1 = ?1", 0)?.iter().map(summary).collect())
    }

    /// The runs of a trial, newest first.
    ///
    /// # Errors
    /// The database can't be read, or holds a run that can't be understood.
    pub fn runs_of_trial(&self, trial: TrialId) -> Result<Vec<RunSummary>, StoreError> {
        let runs = self.select("run.trial_id = ?1", trial.0)?;
        Ok(runs.iter().map(summary).collect())
    }

    /// What was done otherwise than the run sheets and labels say while a trial's pieces were dyed,
    /// in words and in the measures of the locale, run by run.
    ///
    /// # Errors
    /// The database can't be read, or holds a run that can't be understood.
    pub fn departures_of_trial(&self, trial: TrialId) -> Result<Vec<Departed>, StoreError> {
        let mut runs = self.select("run.trial_id = ?1", trial.0)?;
        runs.reverse();
        let mut found: Vec<Departed> = Vec::new();
        for kept in runs {
            let kept = self.shown(kept)?;
            for Departure { arms, sentence, .. } in kept.run.departures() {
                let departed = Departed {
                    run: kept.id,
                    title: kept.title.clone(),
                    arms,
                    sentence,
                };
                // A recipe's departure from a label is one, however many runs followed it.
                if !found
                    .iter()
                    .any(|f| f.sentence == departed.sentence && f.title == departed.title)
                {
                    found.push(departed);
                }
            }
        }
        Ok(found)
    }

    pub(crate) fn runs_of_recipe(&self, recipe: i64) -> Result<Vec<RunSummary>, StoreError> {
        let runs = self.select("recipe_id = ?1", recipe)?;
        Ok(runs.iter().map(summary).collect())
    }

    fn select(&self, condition: &str, at: i64) -> Result<Vec<KeptRun>, StoreError> {
        let read = || -> rusqlite::Result<Vec<(KeptRow, String)>> {
            self.database
                .prepare_cached(&format!(
                    "SELECT {COLUMNS} FROM {TABLES} WHERE {condition} ORDER BY run.id DESC"
                ))?
                .query_map([at], |line| Ok((row(line)?, line.get(7)?)))?
                .collect()
        };
        let rows = read().map_err(StoreError::database(text::doing::read_a_run()))?;
        rows.into_iter()
            .map(|(row, sheet)| {
                let events = run_events::of_run(&self.database, row.id)?;
                Ok(KeptRun {
                    id: row.id,
                    title: row.title,
                    recipe: row.recipe,
                    revision: row.revision,
                    trial: row.trial,
                    begun_at: row.begun_at,
                    run: Run::new(run_events::sheet(&sheet)?, events),
                })
            })
            .collect()
    }
}

/// A run without its sheet and events.
struct KeptRow {
    id: i64,
    title: String,
    recipe: String,
    revision: u32,
    trial: Option<(String, String)>,
    begun_at: String,
}

fn row(row: &Row<'_>) -> rusqlite::Result<KeptRow> {
    let trial: Option<String> = row.get(4)?;
    let title: Option<String> = row.get(5)?;
    Ok(KeptRow {
        id: row.get(0)?,
        title: row.get(1)?,
        recipe: row.get(2)?,
        revision: row.get(3)?,
        trial: trial.zip(title),
        begun_at: row.get(6)?,
    })
}

fn summary(kept: &KeptRun) -> RunSummary {
    RunSummary {
        id: kept.id,
        title: kept.title.clone(),
        recipe: kept.run.sheet.recipe.clone(),
        begun_at: kept.begun_at.clone(),
        clocks: kept.run.running().len(),
        finished: kept.run.is_finished(),
    }
}
