//! The journal: every change of the bench, in words.

use crate::text;
use crate::told::{self, Names};
use crate::{Bench, StoreError, event_words, revision_journal, run_journal};
use rusqlite::{Connection, params};
use std::{fmt, str::FromStr};
use trial::TrialId;

/// A change of the bench.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Entry {
    /// Where it stands.
    pub place: Place,
    /// When it was made, RFC 3339.
    pub at: String,
    /// What was done, by the name that is kept, such as `photo added`.
    pub what: String,
    /// What was done, as a sentence. Plans and recipes of which the address is kept are called as they
    /// are now.
    pub sentence: String,
    /// What it is about, where that has a page.
    pub see: Option<Seen>,
    /// What is kept of it, where that says more than the sentence, such as a checksum.
    pub kept: Option<String>,
    /// Slug and title of the trial it is about, if it is about one.
    pub trial: Option<(String, String)>,
}

/// What an entry leads to.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Seen {
    /// The photo of that number, of the entry's trial.
    Photo(i64),
    /// The plan of that slug.
    Plan(String),
    /// The recipe of that slug.
    Recipe(String),
    /// The material of that number.
    Material(i64),
    /// The run of that number.
    Run(i64),
    /// A revision of a plan or recipe.
    Revision(SeenRevision),
}

/// A revision that an entry tells of.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SeenRevision {
    /// Of what.
    pub of: RevisedThing,
    /// Its name in addresses.
    pub slug: String,
    /// The revision's number, from 1.
    pub number: u32,
}

/// What is kept revision by revision.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum RevisedThing {
    /// A plan.
    Plan,
    /// A recipe.
    Recipe,
}

/// A place in the journal. What happens in runs is kept with the runs, revisions with plans and
/// recipes, so it takes a number for each of: other changes, events of runs, readings of waters,
/// revisions of plans, of recipes; older ones have smaller numbers.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Place([i64; KINDS]);

const KINDS: usize = 5;

impl Place {
    /// After the newest entry.
    pub const NEWEST: Self = Self([i64::MAX; KINDS]);
}

impl fmt::Display for Place {
    fn fmt(&self, to: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(to, "{}", self.0.map(|number| number.to_string()).join("."))
    }
}

impl FromStr for Place {
    type Err = &'static str;

    fn from_str(text: &str) -> Result<Self, Self::Err> {
        let numbers: Option<Vec<i64>> = text.split('.').map(|n| n.parse().ok()).collect();
        let numbers = numbers.and_then(|numbers| numbers.try_into().ok());
        let numbers = numbers.ok_or_else(text::journal::a_place_is_five_numbers);
        numbers.map(Self)
    }
}

/// Entries with their numbers, of one kind, newest first.
pub(crate) type Numbered = Vec<(i64, Entry)>;

impl Bench {
    /// The newest changes before a place, newest first, `most` of them at most; with `trial`, only
    /// those about it, with the revisions of its plan and its recipes. What happened in runs stands
    /// among them by the time when it was noted.
    ///
    /// # Errors
    /// The database can't be read, or holds an event that can't be understood.
    pub fn journal(
        &self,
        trial: Option<TrialId>,
        before: Place,
        most: u32,
    ) -> Result<Vec<Entry>, StoreError> {
        let mut place = before.0;
        let mut kinds = [
            self.changes(trial, place[0], most)?,
            run_journal::events(&self.database, trial, place[1], most)?,
            run_journal::waters(&self.database, trial, place[2], most)?,
            revision_journal::plans(&self.database, trial, place[3], most)?,
            revision_journal::recipes(&self.database, trial, place[4], most)?,
        ]
        .map(|entries| entries.into_iter().peekable());
        let mut merged = Vec::new();
        while merged.len() < most as usize {
            let mut newest: Option<(String, usize)> = None;
            for (kind, entries) in kinds.iter_mut().enumerate() {
                let at = entries.peek().map(|(_, entry)| (entry.at.clone(), kind));
                newest = newest.max(at);
            }
            let Some((_, kind)) = newest else { break };
            let Some((number, entry)) = kinds[kind].next() else {
                break;
            };
            place[kind] = number;
            let place = Place(place);
            merged.push(Entry { place, ..entry });
        }
        Ok(merged)
    }

    /// What is kept in the journal itself.
    fn changes(
        &self,
        trial: Option<TrialId>,
        before: i64,
        most: u32,
    ) -> Result<Numbered, StoreError> {
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
        let names = Names::new(&self.database);
        let read = || -> rusqlite::Result<Numbered> {
            let of = params![most, before, trial.map(|id| id.0)];
            self.database
                .prepare_cached(&query)?
                .query_map(of, |row| {
                    let slug: Option<String> = row.get(4)?;
                    let (what, kept): (String, String) = (row.get(2)?, row.get(3)?);
                    let told = told::told(&what, &kept, &names);
                    let entry = Entry {
                        place: Place::NEWEST,
                        at: row.get(1)?,
                        what,
                        sentence: told.sentence,
                        see: told.see,
                        kept: told.keeps_more.then_some(kept),
                        trial: slug.zip(row.get(5)?),
                    };
                    Ok((row.get(0)?, entry))
                })?
                .collect()
        };
        read().map_err(StoreError::database(text::doing::read_its_journal()))
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
    debug_assert!(event_words::named(what).is_some(), "no words for {what}");
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
