//! Revisions of a trial's plan and of its recipes, as entries of its journal: told from the rows that
//! these keep, since one plan or recipe serves several trials.

use crate::journal::{Entry, Numbered, Place, RevisedThing, Seen, SeenRevision};
use crate::text::revision_journal as say;
use crate::told::{Names, ended};
use crate::{StoreError, text};
use rusqlite::{Connection, Row, params};
use trial::TrialId;

/// Revisions of the plan that a trial was started from, newest first, `most` of them at most, of those
/// before a number. Without `trial` there are none: the journal of the bench notes them itself.
pub(crate) fn plans(
    database: &Connection,
    trial: Option<TrialId>,
    before: i64,
    most: u32,
) -> Result<Numbered, StoreError> {
    const QUERY: &str =
        "SELECT revision.id, revision.number, revision.change, revision.made_at, slug, followed.id
         FROM planned_trial
         JOIN plan_revision AS followed ON followed.id = planned_trial.revision_id
         JOIN plan ON plan.id = followed.plan_id
         JOIN plan_revision AS revision ON revision.plan_id = plan.id
         WHERE planned_trial.trial_id = ?1 AND revision.id < ?2
         ORDER BY revision.id DESC LIMIT ?3";
    let names = Names::new(database);
    let of = (RevisedThing::Plan, QUERY);
    rows(database, of, trial, before, most, |row, seen| {
        let followed: i64 = row.get(5)?;
        let what = match seen.revision.number {
            1 => "plan kept",
            _ => "plan changed",
        };
        let revision = &seen.revision;
        let sentence = say::plan_revised(
            names.plan(&revision.slug),
            revision.number,
            ended(&seen.change),
        );
        let sentence = match followed == seen.number {
            true => say::which_the_trial_follows(sentence),
            false => sentence,
        };
        Ok((what, sentence))
    })
}

/// The same of recipes that are for the trial or its plan, or by which one of its runs was dyed.
pub(crate) fn recipes(
    database: &Connection,
    trial: Option<TrialId>,
    before: i64,
    most: u32,
) -> Result<Numbered, StoreError> {
    const QUERY: &str = "SELECT recipe_revision.id, number, change, recipe_revision.made_at, slug
         FROM recipe JOIN recipe_revision ON recipe_id = recipe.id
         WHERE recipe.id IN (
            SELECT recipe_id FROM recipe_aim AS aim
            WHERE (trial_id = ?1 OR plan_id = (
                    SELECT plan_id FROM planned_trial
                    JOIN plan_revision ON plan_revision.id = revision_id
                    WHERE planned_trial.trial_id = ?1))
              AND id = (SELECT max(id) FROM recipe_aim WHERE recipe_id = aim.recipe_id)
            UNION SELECT recipe_id FROM run
            JOIN recipe_revision ON recipe_revision.id = revision_id WHERE run.trial_id = ?1)
           AND recipe_revision.id < ?2
         ORDER BY recipe_revision.id DESC LIMIT ?3";
    let names = Names::new(database);
    let of = (RevisedThing::Recipe, QUERY);
    rows(database, of, trial, before, most, |_, seen| {
        let what = match seen.revision.number {
            1 => "recipe kept",
            _ => "recipe changed",
        };
        let revision = &seen.revision;
        let sentence = say::recipe_revised(
            names.recipe(&revision.slug),
            revision.number,
            ended(&seen.change),
        );
        Ok((what, sentence))
    })
}

/// A row as both queries begin.
struct Revised {
    /// Its number in the database.
    number: i64,
    revision: SeenRevision,
    /// What is new in it.
    change: String,
}

fn rows(
    database: &Connection,
    (of, query): (RevisedThing, &str),
    trial: Option<TrialId>,
    before: i64,
    most: u32,
    said: impl Fn(&Row<'_>, &Revised) -> rusqlite::Result<(&'static str, String)>,
) -> Result<Numbered, StoreError> {
    let Some(trial) = trial else {
        return Ok(Vec::new());
    };
    let entry = |row: &Row<'_>| -> rusqlite::Result<(i64, Entry)> {
        let (number, change): (u32, String) = (row.get(1)?, row.get(2)?);
        let seen = Revised {
            number: row.get(0)?,
            change,
            revision: SeenRevision {
                of,
                slug: row.get(4)?,
                number,
            },
        };
        let (what, sentence) = said(row, &seen)?;
        let entry = Entry {
            place: Place::NEWEST,
            at: row.get(3)?,
            what: what.to_owned(),
            sentence,
            see: Some(Seen::Revision(seen.revision)),
            kept: None,
            trial: None,
        };
        Ok((seen.number, entry))
    };
    let read = || -> rusqlite::Result<Numbered> {
        database
            .prepare_cached(query)?
            .query_map(params![trial.0, before, most], entry)?
            .collect()
    };
    read().map_err(StoreError::database(text::doing::read_the_revisions()))
}
