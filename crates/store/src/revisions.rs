//! What is kept revision by revision: plans and recipes, each with a table of its own and one of its
//! revisions.

use crate::text;
use crate::{Bench, StoreError, slug};
use rusqlite::{Connection, OptionalExtension, params};
use std::collections::HashSet;

/// One revision of a plan or of a recipe.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Revision {
    /// Its number, from 1.
    pub number: u32,
    /// What is new in it.
    pub change: String,
    /// When it was made, RFC 3339.
    pub made_at: String,
}

/// The name of the table, which is the thing's name too: `plan`, `recipe`.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Revised(pub &'static str);

impl Revised {
    /// Begins a new thing under an address that is free; its number in the database, and the address.
    pub(crate) fn begin(
        self,
        change: &Connection,
        name: &str,
        now: &str,
    ) -> rusqlite::Result<(i64, String)> {
        let Self(what) = self;
        let taken = change
            .prepare_cached(&format!("SELECT slug FROM {what}"))?
            .query_map([], |row| row.get(0))?
            .collect::<rusqlite::Result<HashSet<String>>>()?;
        let slug = slug::free(&slug::plain(name), &taken);
        change.execute(
            &format!("INSERT INTO {what} (slug, made_at) VALUES (?1, ?2)"),
            params![slug, now],
        )?;
        Ok((change.last_insert_rowid(), slug))
    }

    /// Number in the database and newest revision of the thing of that slug.
    pub(crate) fn newest(
        self,
        change: &Connection,
        slug: &str,
    ) -> rusqlite::Result<Option<(i64, u32)>> {
        let Self(what) = self;
        change
            .prepare_cached(&format!(
                "SELECT {what}.id, max(number) FROM {what}
                 JOIN {what}_revision ON {what}_id = {what}.id WHERE slug = ?1 GROUP BY {what}.id"
            ))?
            .query_row([slug], |row| Ok((row.get(0)?, row.get(1)?)))
            .optional()
    }

    /// Number in the database and next revision of the thing of that slug, if `upon` is the newest.
    ///
    /// # Errors
    /// There is no such thing, `upon` is no longer its newest revision, or the database can't be read.
    pub(crate) fn next_upon(
        self,
        change: &Connection,
        slug: &str,
        upon: u32,
        doing: &'static str,
    ) -> Result<(i64, u32), StoreError> {
        let Self(what) = self;
        let newest = self.newest(change, slug);
        let Some((id, number)) = newest.map_err(StoreError::database(doing))? else {
            return Err(StoreError::input(
                what,
                text::revisions::there_is_no_such(what),
            ));
        };
        if number == upon {
            return Ok((id, number + 1));
        }
        Err(StoreError::input(
            "revision",
            text::revisions::the_was_changed_in_the_meantime(what, upon, number),
        ))
    }

    /// Keeps a revision.
    pub(crate) fn revise(
        self,
        change: &Connection,
        (id, number): (i64, u32),
        content: &str,
        why: &str,
        now: &str,
    ) -> rusqlite::Result<()> {
        let Self(what) = self;
        change
            .prepare_cached(&format!(
                "INSERT INTO {what}_revision ({what}_id, number, content, change, made_at)
                 VALUES (?1, ?2, ?3, ?4, ?5)"
            ))?
            .execute(params![id, number, content, why, now])?;
        Ok(())
    }
}

impl Bench {
    /// Number in the database, number and content of a revision, the newest where none is named.
    pub(crate) fn revision(
        &self,
        Revised(what): Revised,
        slug: &str,
        number: Option<u32>,
    ) -> rusqlite::Result<Option<(i64, u32, String)>> {
        self.database
            .prepare_cached(&format!(
                "SELECT {what}.id, number, content
                 FROM {what} JOIN {what}_revision ON {what}_id = {what}.id
                 WHERE slug = ?1 AND (?2 IS NULL OR number = ?2) ORDER BY number DESC LIMIT 1"
            ))?
            .query_row(params![slug, number], |row| {
                Ok((row.get(0)?, row.get(1)?, row.get(2)?))
            })
            .optional()
    }

    /// All revisions, newest first.
    pub(crate) fn revisions(
        &self,
        Revised(what): Revised,
        id: i64,
    ) -> rusqlite::Result<Vec<Revision>> {
        self.database
            .prepare_cached(&format!(
                "SELECT number, change, made_at FROM {what}_revision WHERE {what}_id = ?1
                 ORDER BY number DESC"
            ))?
            .query_map([id], |row| {
                Ok(Revision {
                    number: row.get(0)?,
                    change: row.get(1)?,
                    made_at: row.get(2)?,
                })
            })?
            .collect()
    }
}
