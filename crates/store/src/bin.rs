//! The bin: what a person doesn't want to see any more, and may want back.

use crate::text;
use crate::{
    Bench, StoreError,
    journal::{self, About},
};
use rusqlite::{Connection, OptionalExtension, params};
use trial::PhotoId;

/// Something that can be put in the bin.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Thing<'a> {
    /// The trial of that slug, with all that belongs to it.
    Trial(&'a str),
    /// The plan of that slug; trials started from it stay.
    Plan(&'a str),
    /// The recipe of that slug; its runs stay.
    Recipe(&'a str),
    /// A photo; its readings don't count while it is in the bin.
    Photo(PhotoId),
}

/// Something that lies in the bin.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Binned {
    /// `trial`, `plan`, `recipe` or `photo`.
    pub kind: String,
    /// Its name in addresses, or a photo's number.
    pub name: String,
    /// What it is called.
    pub title: String,
    /// When it was put there, RFC 3339.
    pub at: String,
}

impl Bench {
    /// Puts something in the bin; nothing changes if it is there already.
    ///
    /// # Errors
    /// There is no such thing, or the database can't be written.
    pub fn put_in_bin(&mut self, thing: Thing<'_>, now: &str) -> Result<(), StoreError> {
        self.bin_act(thing, true, now)
    }

    /// Takes something out of the bin; nothing changes if it isn't there.
    ///
    /// # Errors
    /// There is no such thing, or the database can't be written.
    pub fn restore(&mut self, thing: Thing<'_>, now: &str) -> Result<(), StoreError> {
        self.bin_act(thing, false, now)
    }

    /// Whether it lies in the bin; false also for what isn't there at all.
    ///
    /// # Errors
    /// The database can't be read.
    pub fn is_binned(&self, thing: Thing<'_>) -> Result<bool, StoreError> {
        let read = || -> rusqlite::Result<bool> {
            let Some((id, _)) = thing.find(&self.database)? else {
                return Ok(false);
            };
            lies_there(&self.database, thing.kind(), id)
        };
        read().map_err(StoreError::database(text::doing::look_into_its_bin()))
    }

    /// What lies in the bin, the last put there first.
    ///
    /// # Errors
    /// The database can't be read.
    pub fn bin(&self) -> Result<Vec<Binned>, StoreError> {
        let read = || -> rusqlite::Result<Vec<(String, i64, String)>> {
            self.database
                .prepare_cached("SELECT kind, thing, at FROM binned ORDER BY id DESC")?
                .query_map([], |row| Ok((row.get(0)?, row.get(1)?, row.get(2)?)))?
                .collect()
        };
        let found = read().map_err(StoreError::database(text::doing::look_into_its_bin()))?;
        let named = found.into_iter().map(|(kind, id, at)| {
            let (name, title) = called(&self.database, &kind, id)?;
            Ok(Binned {
                kind,
                name,
                title,
                at,
            })
        });
        named
            .collect::<rusqlite::Result<_>>()
            .map_err(StoreError::database(text::doing::look_into_its_bin()))
    }

    fn bin_act(&mut self, thing: Thing<'_>, into_bin: bool, now: &str) -> Result<(), StoreError> {
        let change = self.change()?;
        let kind = thing.kind();
        let act = || -> rusqlite::Result<bool> {
            let Some((id, about)) = thing.find(&change)? else {
                return Ok(false);
            };
            if lies_there(&change, kind, id)? != into_bin {
                change.execute(
                    "INSERT INTO bin_act (kind, thing, into_bin, at) VALUES (?1, ?2, ?3, ?4)",
                    params![kind, id, into_bin, now],
                )?;
                let what = match into_bin {
                    true => "put in the bin",
                    false => "taken out of the bin",
                };
                let (_, title) = called(&change, kind, id)?;
                journal::note_about(
                    &change,
                    about,
                    now,
                    what,
                    &text::bin::thing_titled(thing.in_words(), title),
                )?;
            }
            Ok(true)
        };
        if !act().map_err(StoreError::database(
            text::doing::move_something_into_its_bin_or_out(),
        ))? {
            return Err(StoreError::input(
                "thing",
                text::bin::there_is_no_such(thing.in_words()),
            ));
        }
        change.commit().map_err(StoreError::database(
            text::doing::move_something_into_its_bin_or_out(),
        ))
    }
}

impl Thing<'_> {
    fn in_words(self) -> &'static str {
        match self {
            Self::Trial(_) => text::thing::trial(),
            Self::Plan(_) => text::thing::plan(),
            Self::Recipe(_) => text::thing::recipe(),
            Self::Photo(_) => text::thing::photo(),
        }
    }

    fn kind(self) -> &'static str {
        match self {
            Self::Trial(_) => "trial",
            Self::Plan(_) => "plan",
            Self::Recipe(_) => "recipe",
            Self::Photo(_) => "photo",
        }
    }

    /// Its number, and what an entry of the journal about it is about.
    fn find(self, database: &Connection) -> rusqlite::Result<Option<(i64, About)>> {
        let id: Option<i64> = match self {
            Self::Photo(id) => database
                .prepare_cached("SELECT id FROM photo WHERE id = ?1")?
                .query_row([id.0], |row| row.get(0))
                .optional()?,
            Self::Trial(slug) | Self::Plan(slug) | Self::Recipe(slug) => database
                .prepare_cached(&format!("SELECT id FROM {} WHERE slug = ?1", self.kind()))?
                .query_row([slug], |row| row.get(0))
                .optional()?,
        };
        Ok(id.map(|id| {
            let about = match self {
                Self::Trial(_) => About::Trial(id),
                Self::Photo(_) => About::Photo(id),
                Self::Plan(_) | Self::Recipe(_) => About::Bench,
            };
            (id, about)
        }))
    }
}

fn lies_there(database: &Connection, kind: &str, id: i64) -> rusqlite::Result<bool> {
    database
        .prepare_cached("SELECT EXISTS (SELECT 1 FROM binned WHERE kind = ?1 AND thing = ?2)")?
        .query_row(params![kind, id], |row| row.get(0))
}

/// Its name in addresses and what it is called.
fn called(database: &Connection, kind: &str, id: i64) -> rusqlite::Result<(String, String)> {
    let query = match kind {
        "trial" => "SELECT slug, title FROM trial WHERE id = ?1",
        "photo" => {
            "SELECT CAST(photo.id AS TEXT), photo.name || ', ' || trial.title
             FROM photo JOIN trial ON trial.id = trial_id WHERE photo.id = ?1"
        }
        "plan" => "SELECT slug, slug FROM plan WHERE id = ?1",
        _ => "SELECT slug, slug FROM recipe WHERE id = ?1",
    };
    database
        .prepare_cached(query)?
        .query_row([id], |row| Ok((row.get(0)?, row.get(1)?)))
}
