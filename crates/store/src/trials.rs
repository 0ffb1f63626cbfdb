//! Trials on the bench.

use crate::journal::About;
use crate::text;
use crate::{Bench, StoreError, journal, slug, tags};
use photo::board::Code;
use rusqlite::{Connection, OptionalExtension, Row, params};
use std::collections::HashSet;
use trial::{Arm, ArmId, NewTrial, Piece, PieceId, Role, Trial, TrialId};

/// A trial as a list shows it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TrialSummary {
    /// Its number.
    pub id: TrialId,
    /// Its name in addresses.
    pub slug: String,
    /// Its title.
    pub title: String,
    /// What is asked, in words.
    pub question: String,
    /// True for a demo: no such pieces were dyed.
    pub invented: bool,
    /// When it was entered, RFC 3339.
    pub made_at: String,
    /// How many arms it has.
    pub arms: usize,
    /// How many pieces it has.
    pub pieces: usize,
    /// At how many stages there are photos.
    pub stages: usize,
}

impl Bench {
    /// Enters a trial and gives it a slug made of its title.
    ///
    /// # Errors
    /// What [`NewTrial::validate`] finds wrong, or the database can't be written.
    pub fn create_trial(&mut self, new: &NewTrial, now: &str) -> Result<TrialId, StoreError> {
        new.validate()?;
        let change = self.change()?;
        let id = insert(&change, new, now)
            .map_err(StoreError::database(text::doing::enter_a_trial()))?;
        change
            .commit()
            .map_err(StoreError::database(text::doing::enter_a_trial()))?;
        Ok(id)
    }

    /// Every trial, newest first.
    ///
    /// # Errors
    /// The database can't be read.
    pub fn trials(&self) -> Result<Vec<TrialSummary>, StoreError> {
        self.trials_before(None, u32::MAX)
    }

    /// The newest trials, newest first, `most` of them at most; with `before`, only
    /// those older than the trial of that number.
    ///
    /// # Errors
    /// The database can't be read.
    pub fn trials_before(
        &self,
        before: Option<TrialId>,
        most: u32,
    ) -> Result<Vec<TrialSummary>, StoreError> {
        let read = || -> rusqlite::Result<Vec<TrialSummary>> {
            self.database
                .prepare_cached(
                    "SELECT id, slug, title, question, invented, made_at,
                        (SELECT count(*) FROM arm WHERE trial_id = trial.id),
                        (SELECT count(*) FROM piece WHERE trial_id = trial.id),
                        (SELECT count(DISTINCT coalesce(corrected_stage.stage, photo.stage))
                            FROM photo LEFT JOIN corrected_stage ON photo_id = photo.id
                            WHERE trial_id = trial.id)
                     FROM trial
                     WHERE id < ?1 AND id NOT IN (SELECT thing FROM binned WHERE kind = 'trial')
                     ORDER BY id DESC LIMIT ?2",
                )?
                .query_map(params![before.map_or(i64::MAX, |id| id.0), most], summary)?
                .collect()
        };
        read().map_err(StoreError::database(text::doing::list_its_trials()))
    }

    /// The trial of that slug, if there is one.
    ///
    /// # Errors
    /// The database can't be read.
    pub fn trial(&self, slug: &str) -> Result<Option<Trial>, StoreError> {
        let id = self
            .database
            .prepare_cached("SELECT id FROM trial WHERE slug = ?1")
            .and_then(|mut query| query.query_row([slug], |row| row.get(0)).optional())
            .map_err(StoreError::database(text::doing::read_a_trial()))?;
        id.map_or(Ok(None), |id| self.trial_by_id(TrialId(id)))
    }

    /// The trial of that number, if there is one.
    ///
    /// # Errors
    /// The database can't be read.
    pub fn trial_by_id(&self, id: TrialId) -> Result<Option<Trial>, StoreError> {
        let read = || -> rusqlite::Result<Option<Trial>> {
            let trial = self
                .database
                .prepare_cached(
                    "SELECT id, slug, title, question, margin_de00, rounds, invented, made_at, method
                     FROM trial WHERE id = ?1",
                )?
                .query_row([id.0], bare)
                .optional()?;
            let Some(mut trial) = trial else {
                return Ok(None);
            };
            trial.arms = self
                .database
                .prepare_cached(
                    "SELECT id, name, treatment FROM arm WHERE trial_id = ?1 ORDER BY id",
                )?
                .query_map([id.0], arm)?
                .collect::<rusqlite::Result<_>>()?;
            trial.pieces = self
                .database
                .prepare_cached(
                    "SELECT id, arm_id, code, role, load, tag FROM piece WHERE trial_id = ?1 ORDER BY id",
                )?
                .query_map([id.0], piece)?
                .collect::<rusqlite::Result<_>>()?;
            Ok(Some(trial))
        };
        read().map_err(StoreError::database(text::doing::read_a_trial()))
    }
}

pub(crate) fn insert(change: &Connection, new: &NewTrial, now: &str) -> rusqlite::Result<TrialId> {
    let slug = free_slug(change, &new.title)?;
    change.execute(
        "INSERT INTO trial (slug, title, question, margin_de00, rounds, invented, method, made_at)
         VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8)",
        params![
            slug,
            new.title,
            new.question,
            new.margin_de00,
            new.rounds,
            new.invented,
            new.method,
            now
        ],
    )?;
    let trial = change.last_insert_rowid();
    for arm in &new.arms {
        change
            .prepare_cached("INSERT INTO arm (trial_id, name, treatment) VALUES (?1, ?2, ?3)")?
            .execute(params![trial, arm.name, arm.treatment])?;
        let arm_id = change.last_insert_rowid();
        let mut insert = change.prepare_cached(
            "INSERT INTO piece (trial_id, arm_id, code, role, load, tag)
             VALUES (?1, ?2, ?3, ?4, ?5, ?6)",
        )?;
        for piece in &arm.pieces {
            let tag = tags::free(change, &slug, now, &piece.code)?;
            insert.execute(params![
                trial,
                arm_id,
                piece.code,
                piece.role.as_str(),
                piece.load,
                tag.to_string()
            ])?;
        }
    }
    let pieces: usize = new.arms.iter().map(|arm| arm.pieces.len()).sum();
    let detail = text::trials::arms_pieces(&new.title, &slug, new.arms.len(), pieces);
    journal::note_about(change, About::Trial(trial), now, "trial entered", &detail)?;
    Ok(TrialId(trial))
}

fn free_slug(change: &Connection, title: &str) -> rusqlite::Result<String> {
    let plain = slug::plain(title);
    // All slugs that begin with the plain one and a hyphen: a full stop follows the hyphen in ASCII.
    let taken = change
        .prepare_cached(
            "SELECT slug FROM trial WHERE slug = ?1 OR (slug > ?1 || '-' AND slug < ?1 || '.')",
        )?
        .query_map([&plain], |row| row.get(0))?
        .collect::<rusqlite::Result<HashSet<String>>>()?;
    Ok(slug::free(&plain, &taken))
}

fn summary(row: &Row<'_>) -> rusqlite::Result<TrialSummary> {
    let count = |column| -> rusqlite::Result<usize> {
        let count: u32 = row.get(column)?;
        Ok(count as usize)
    };
    Ok(TrialSummary {
        id: TrialId(row.get(0)?),
        slug: row.get(1)?,
        title: row.get(2)?,
        question: row.get(3)?,
        invented: row.get(4)?,
        made_at: row.get(5)?,
        arms: count(6)?,
        pieces: count(7)?,
        stages: count(8)?,
    })
}

/// A trial without its arms and pieces.
fn bare(row: &Row<'_>) -> rusqlite::Result<Trial> {
    Ok(Trial {
        id: TrialId(row.get(0)?),
        slug: row.get(1)?,
        title: row.get(2)?,
        question: row.get(3)?,
        margin_de00: row.get(4)?,
        rounds: row.get(5)?,
        invented: row.get(6)?,
        made_at: row.get(7)?,
        method: row.get(8)?,
        arms: Vec::new(),
        pieces: Vec::new(),
    })
}

fn arm(row: &Row<'_>) -> rusqlite::Result<Arm> {
    Ok(Arm {
        id: ArmId(row.get(0)?),
        name: row.get(1)?,
        treatment: row.get(2)?,
    })
}

fn piece(row: &Row<'_>) -> rusqlite::Result<Piece> {
    let role: String = row.get(3)?;
    let role = role.parse::<Role>().map_err(|error| {
        rusqlite::Error::FromSqlConversionFailure(3, rusqlite::types::Type::Text, error.into())
    })?;
    let tag: String = row.get(5)?;
    let tag = tag.parse::<Code>().map_err(|error| {
        rusqlite::Error::FromSqlConversionFailure(5, rusqlite::types::Type::Text, error.into())
    })?;
    Ok(Piece {
        id: PieceId(row.get(0)?),
        arm: ArmId(row.get(1)?),
        code: row.get(2)?,
        tag,
        role,
        load: row.get(4)?,
    })
}
