//! The journal: every change of the bench, in words.

use crate::{Bench, StoreError};
use rusqlite::{Connection, params};

/// A change of the bench.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Entry {
    /// When it was made, RFC 3339.
    pub at: String,
    /// What was done, such as `photo added`.
    pub what: String,
    /// To what, in words.
    pub detail: String,
}

impl Bench {
    /// The newest changes, newest first, `most` of them at most.
    ///
    /// # Errors
    /// The database can't be read.
    pub fn journal(&self, most: u32) -> Result<Vec<Entry>, StoreError> {
        let read = || -> rusqlite::Result<Vec<Entry>> {
            self.database
                .prepare_cached("SELECT at, what, detail FROM journal ORDER BY id DESC LIMIT ?1")?
                .query_map([most], |row| {
                    Ok(Entry {
                        at: row.get(0)?,
                        what: row.get(1)?,
                        detail: row.get(2)?,
                    })
                })?
                .collect()
        };
        read().map_err(StoreError::database("read its journal"))
    }
}

/// Adds to the journal, within the change that it tells of.
pub(crate) fn note(
    change: &Connection,
    at: &str,
    what: &str,
    detail: &str,
) -> rusqlite::Result<()> {
    change
        .prepare_cached("INSERT INTO journal (at, what, detail) VALUES (?1, ?2, ?3)")?
        .execute(params![at, what, detail])?;
    Ok(())
}
