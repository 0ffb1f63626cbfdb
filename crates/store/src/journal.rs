//! The journal: every change of the bench, in words.

use crate::{Bench, StoreError};
use rusqlite::{Connection, params};
use trial::TrialId;

/// A change of the bench.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Entry {
    /// Its number; later entries have greater ones.
    pub id: i64,
    /// When it was made, RFC 3339.
    pub at: String,
    /// What was done, such as `photo added`.
    pub what: String,
    /// To what, in words.
    pub detail: String,
    /// Slug and title of the trial it is about, if it is about one.
    pub trial: Option<(String, String)>,
}

impl Bench {
    /// The newest changes, newest first, `most` of them at most; with `before`, only
    /// those older than the entry of that number; with `trial`, only those about it.
    ///
    /// # Errors
    /// The database can't be read.
    pub fn journal(
        &self,
        trial: Option<TrialId>,
        before: Option<i64>,
        most: u32,
    ) -> Result<Vec<Entry>, StoreError> {
        // One query for each, so that each goes by its index.
        let about = match trial {
            Some(_) => "journal.trial_id = ?3",
            None => "?3 IS NULL",
        };
        let query = format!(
            "SELECT journal.id, at, what, detail, slug, title
             FROM journal LEFT JOIN trial ON trial.id = journal.trial_id
             WHERE journal.id < ?2 AND {about} ORDER BY journal.id DESC LIMIT ?1"
        );
        let read = || -> rusqlite::Result<Vec<Entry>> {
            let of = params![most, before.unwrap_or(i64::MAX), trial.map(|id| id.0)];
            self.database
                .prepare_cached(&query)?
                .query_map(of, |row| {
                    let slug: Option<String> = row.get(4)?;
                    Ok(Entry {
                        id: row.get(0)?,
                        at: row.get(1)?,
                        what: row.get(2)?,
                        detail: row.get(3)?,
                        trial: slug.zip(row.get(5)?),
                    })
                })?
                .collect()
        };
        read().map_err(StoreError::database("read its journal"))
    }
}

/// What an entry is about; its trial is found by it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum About {
    /// No trial.
    Bench,
    /// The trial of that number.
    Trial(i64),
    /// The trial of the photo of that number.
    Photo(i64),
    /// The trial of the piece of that number.
    Piece(i64),
}

/// Adds to the journal, within the change that it tells of.
pub(crate) fn note(
    change: &Connection,
    at: &str,
    what: &str,
    detail: &str,
) -> rusqlite::Result<()> {
    note_about(change, About::Bench, at, what, detail)
}

/// The same for a change of a trial.
pub(crate) fn note_about(
    change: &Connection,
    about: About,
    at: &str,
    what: &str,
    detail: &str,
) -> rusqlite::Result<()> {
    let (trial, id) = match about {
        About::Bench => ("NULL", None),
        About::Trial(id) => ("?4", Some(id)),
        About::Photo(id) => ("(SELECT trial_id FROM photo WHERE id = ?4)", Some(id)),
        About::Piece(id) => ("(SELECT trial_id FROM piece WHERE id = ?4)", Some(id)),
    };
    let insert =
        format!("INSERT INTO journal (at, what, detail, trial_id) VALUES (?1, ?2, ?3, {trial})");
    let mut insert = change.prepare_cached(&insert)?;
    match id {
        None => insert.execute(params![at, what, detail])?,
        Some(id) => insert.execute(params![at, what, detail, id])?,
    };
    Ok(())
}
