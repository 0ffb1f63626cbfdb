//! Blind sessions of judging by eye.

use crate::text;
use crate::{
    Bench, StoreError,
    journal::{self, About},
    json,
};
use rusqlite::{Connection, OptionalExtension, params};
use std::collections::{BTreeMap, HashMap};
use trial::{
    PieceId, Trial, TrialError, TrialId,
    eyes::{Given, Judge, Judging, Session, Sitting, Turn, Wish, order},
};

/// The longest remark, letters.
const LONGEST: usize = 400;

impl Bench {
    /// Begins a session and gives its number. Pieces of a trial with a plan keep the
    /// blind codes that the plan gave them; other codes are drawn from `seed`.
    ///
    /// # Errors
    /// What [`Session::of`] finds wrong, or the database can't be written.
    pub fn begin_eye_session(
        &mut self,
        trial: &Trial,
        wish: &Wish,
        seed: u64,
        now: &str,
    ) -> Result<i64, StoreError> {
        let readings = self.current_readings(trial.id)?;
        let known = self.blind_codes(trial)?;
        let session = Session::of(trial, &readings, wish, &known, seed)?;
        let content = json::session_text(&session)?;
        let change = self.change()?;
        let insert = |change: &Connection| -> rusqlite::Result<i64> {
            change.execute(
                "INSERT INTO eye_session (trial_id, content, begun_at) VALUES (?1, ?2, ?3)",
                params![trial.id.0, content, now],
            )?;
            let id = change.last_insert_rowid();
            let detail = text::eye_sessions::session_of_stage_pairs(
                id,
                &trial.slug,
                session.stage,
                session.pairs.len(),
            );
            let about = About::Trial(trial.id.0);
            journal::note_about(change, about, now, "judging by eye begun", &detail)?;
            Ok(id)
        };
        let id = insert(&change).map_err(StoreError::database(
            text::doing::begin_a_session_of_judging(),
        ))?;
        change.commit().map_err(StoreError::database(
            text::doing::begin_a_session_of_judging(),
        ))?;
        Ok(id)
    }

    fn blind_codes(
        &self,
        trial: &Trial,
    ) -> Result<BTreeMap<PieceId, photo::board::Code>, StoreError> {
        let Some(from) = self.plan_of_trial(trial.id)? else {
            return Ok(BTreeMap::new());
        };
        let pieces: HashMap<&str, PieceId> = trial
            .pieces
            .iter()
            .map(|piece| (piece.code.as_str(), piece.id))
            .collect();
        let allotted = from.plan.order().pieces;
        let codes = allotted
            .iter()
            .filter_map(|one| Some((*pieces.get(one.piece.code.as_str())?, one.blind)));
        Ok(codes.collect())
    }

    /// Lets a person begin in a session and gives the number of their sitting. Their
    /// order follows from `seed` and is kept.
    ///
    /// # Errors
    /// What [`Judge::checked`] finds wrong, somebody of that name sat in it already, it is closed, there
    /// is no such session, or the database can't be written.
    pub fn begin_sitting(
        &mut self,
        session: i64,
        judge: Judge,
        seed: u64,
        now: &str,
    ) -> Result<i64, StoreError> {
        let judge = judge.checked()?;
        let change = self.change()?;
        let found = by_number(&change, session).map_err(StoreError::database(
            text::doing::read_a_session_of_judging(),
        ))?;
        let Some((trial, content, _, closed_at)) = found else {
            return Err(StoreError::Unknown {
                what: text::thing::session(),
                id: session,
            });
        };
        refuse_closed(closed_at)?;
        let before = sittings(&change, session)?;
        let same =
            |sitting: &&Sitting| sitting.judge.name.to_lowercase() == judge.name.to_lowercase();
        if let Some(sitting) = before.iter().find(same) {
            return Err(TrialError {
                field: "name".into(),
                message: text::eye_sessions::judges_in_this_session_already_go(&sitting.judge.name),
            }
            .into());
        }
        let turns = order(&json::session(&content)?, seed);
        change
            .execute(
                "INSERT INTO eye_sitting (session_id, judge, turns, begun_at) VALUES (?1, ?2, ?3, ?4)",
                params![session, json::judge_text(&judge)?, json::turns_text(&turns), now],
            )
            .map_err(StoreError::database(text::doing::begin_a_session_of_judging()))?;
        let id = change.last_insert_rowid();
        // Who judged, never what they gave: others may still judge.
        let detail = text::eye_sessions::in_session(&judge.name, session);
        journal::note_about(&change, About::Trial(trial), now, "person judges", &detail).map_err(
            StoreError::database(text::doing::begin_a_session_of_judging()),
        )?;
        change.commit().map_err(StoreError::database(
            text::doing::begin_a_session_of_judging(),
        ))?;
        Ok(id)
    }

    /// Keeps what a person gave a turn. The next turn is given, or the one before it
    /// anew, which corrects it; anything else was sent twice or is too late, and
    /// changes nothing.
    ///
    /// # Errors
    /// A remark that is too long, the session is closed, there is no such sitting, or the
    /// database can't be written.
    pub fn give_grade(
        &mut self,
        sitting: i64,
        turn: usize,
        given: &Given,
    ) -> Result<(), StoreError> {
        let remark = given.remark.trim();
        if remark.chars().count() > LONGEST {
            let message = text::eye_sessions::write_the_remark_in_letters_at_most(LONGEST);
            return Err(StoreError::input("remark", message));
        }
        let change = self.change()?;
        let found: Option<i64> = change
            .query_row(
                "SELECT session_id FROM eye_sitting WHERE id = ?1",
                [sitting],
                |row| row.get(0),
            )
            .optional()
            .map_err(StoreError::database(
                text::doing::read_a_session_of_judging(),
            ))?;
        let Some(session) = found else {
            return Err(StoreError::Unknown {
                what: text::thing::judge(),
                id: sitting,
            });
        };
        let row = by_number(&change, session).map_err(StoreError::database(
            text::doing::read_a_session_of_judging(),
        ))?;
        refuse_closed(row.and_then(|(_, _, _, closed_at)| closed_at))?;
        let before = sittings(&change, session)?;
        let own = before.iter().find(|one| one.id == sitting);
        let (next, count) = own.map_or((0, 0), |own| {
            (own.next().unwrap_or(own.order.len()), own.order.len())
        });
        if turn >= count || (turn != next && turn + 1 != next) {
            return Ok(());
        }
        change
            .execute(
                "INSERT INTO eye_turn (sitting_id, turn, grade, remark, made_at)
                 VALUES (?1, ?2, ?3, ?4, ?5)",
                params![
                    sitting,
                    turn as i64,
                    given.grade.map(|grade| grade.to_string()),
                    remark,
                    given.made_at
                ],
            )
            .map_err(StoreError::database(text::doing::keep_a_grade()))?;
        change
            .commit()
            .map_err(StoreError::database(text::doing::keep_a_grade()))
    }

    /// Closes a session, so that its grades and codes are shown and count; it can't
    /// be opened again. A session that is closed stays as it is.
    ///
    /// # Errors
    /// There is no such session in that trial, or the database can't be written.
    pub fn close_eye_session(
        &mut self,
        trial: TrialId,
        session: i64,
        now: &str,
    ) -> Result<(), StoreError> {
        let change = self.change()?;
        let found = by_number(&change, session).map_err(StoreError::database(
            text::doing::read_a_session_of_judging(),
        ))?;
        match found {
            Some((of, ..)) if of == trial.0 => {}
            _ => {
                return Err(StoreError::Unknown {
                    what: text::thing::session(),
                    id: session,
                });
            }
        }
        change
            .execute(
                "INSERT OR IGNORE INTO eye_closing (session_id, closed_at) VALUES (?1, ?2)",
                params![session, now],
            )
            .and_then(|_| {
                let detail = text::eye_sessions::session(session);
                let about = About::Trial(trial.0);
                journal::note_about(&change, about, now, "judging by eye closed", &detail)
            })
            .map_err(StoreError::database(
                text::doing::begin_a_session_of_judging(),
            ))?;
        change.commit().map_err(StoreError::database(
            text::doing::begin_a_session_of_judging(),
        ))
    }

    /// The sessions of a trial with all that was given in them, oldest first.
    ///
    /// # Errors
    /// The database can't be read, or holds what can't be understood.
    pub fn eye_sessions(&self, trial: TrialId) -> Result<Vec<Judging>, StoreError> {
        let numbers = || -> rusqlite::Result<Vec<i64>> {
            self.database
                .prepare_cached("SELECT id FROM eye_session WHERE trial_id = ?1 ORDER BY id")?
                .query_map([trial.0], |row| row.get(0))?
                .collect()
        };
        let numbers = numbers().map_err(StoreError::database(
            text::doing::read_a_session_of_judging(),
        ))?;
        let found = numbers.into_iter().map(|id| self.judging(id));
        Ok(found
            .collect::<Result<Vec<_>, _>>()?
            .into_iter()
            .flatten()
            .map(|(_, judging)| judging)
            .collect())
    }

    /// The session in which that sitting is, with the trial's number.
    ///
    /// # Errors
    /// As of [`Bench::eye_sessions`].
    pub fn session_of_sitting(
        &self,
        sitting: i64,
    ) -> Result<Option<(TrialId, Judging)>, StoreError> {
        let session: Option<i64> = self
            .database
            .query_row(
                "SELECT session_id FROM eye_sitting WHERE id = ?1",
                [sitting],
                |row| row.get(0),
            )
            .optional()
            .map_err(StoreError::database(
                text::doing::read_a_session_of_judging(),
            ))?;
        match session {
            Some(session) => self.judging(session),
            None => Ok(None),
        }
    }

    fn judging(&self, id: i64) -> Result<Option<(TrialId, Judging)>, StoreError> {
        let found = by_number(&self.database, id).map_err(StoreError::database(
            text::doing::read_a_session_of_judging(),
        ))?;
        let Some((trial, content, begun_at, closed_at)) = found else {
            return Ok(None);
        };
        let judging = Judging {
            id,
            session: json::session(&content)?,
            sittings: sittings(&self.database, id)?,
            begun_at,
            closed_at,
        };
        Ok(Some((TrialId(trial), judging)))
    }
}

fn refuse_closed(closed_at: Option<String>) -> Result<(), StoreError> {
    match closed_at {
        Some(_) => Err(StoreError::input(
            "session",
            text::eye_sessions::this_session_is_closed_its_grades(),
        )),
        None => Ok(()),
    }
}

/// Trial, content, when it was begun and when closed.
type SessionRow = (i64, String, String, Option<String>);

fn by_number(database: &Connection, id: i64) -> rusqlite::Result<Option<SessionRow>> {
    database
        .prepare_cached(
            "SELECT trial_id, content, begun_at, closed_at FROM eye_session
             LEFT JOIN eye_closing ON eye_closing.session_id = eye_session.id
             WHERE id = ?1",
        )?
        .query_row([id], |row| {
            Ok((row.get(0)?, row.get(1)?, row.get(2)?, row.get(3)?))
        })
        .optional()
}

fn sittings(database: &Connection, session: i64) -> Result<Vec<Sitting>, StoreError> {
    let read = || -> rusqlite::Result<Vec<(i64, String, String, String)>> {
        database
            .prepare_cached(
                "SELECT id, judge, turns, begun_at FROM eye_sitting WHERE session_id = ?1 ORDER BY id",
            )?
            .query_map([session], |row| {
                Ok((row.get(0)?, row.get(1)?, row.get(2)?, row.get(3)?))
            })?
            .collect()
    };
    let rows = read().map_err(StoreError::database(
        text::doing::read_a_session_of_judging(),
    ))?;
    rows.into_iter()
        .map(|(id, judge, turns, begun_at)| {
            let order = json::turns(&turns)?;
            Ok(Sitting {
                id,
                judge: json::judge(&judge)?,
                given: given(database, id, &order)?,
                order,
                begun_at,
            })
        })
        .collect()
}

/// What each turn was given last.
fn given(
    database: &Connection,
    sitting: i64,
    order: &[Turn],
) -> Result<Vec<Option<Given>>, StoreError> {
    type Row = (usize, Option<String>, String, String);
    let read = || -> rusqlite::Result<Vec<Row>> {
        database
            .prepare_cached(
                "SELECT turn, grade, remark, made_at FROM eye_turn WHERE sitting_id = ?1 ORDER BY id",
            )?
            .query_map([sitting], |row| {
                let turn: i64 = row.get(0)?;
                Ok((turn as usize, row.get(1)?, row.get(2)?, row.get(3)?))
            })?
            .collect()
    };
    let mut all = vec![None; order.len()];
    for (turn, grade, remark, made_at) in read().map_err(StoreError::database(
        text::doing::read_a_session_of_judging(),
    ))? {
        let grade = grade.as_deref().map(understood).transpose()?;
        if let Some(place) = all.get_mut(turn) {
            *place = Some(Given {
                grade,
                remark,
                made_at,
            });
        }
    }
    Ok(all)
}

/// A grade as it stands in a column.
fn understood<T: std::str::FromStr<Err: std::fmt::Display>>(text: &str) -> Result<T, StoreError> {
    text.parse().map_err(|error: T::Err| StoreError::Stored {
        what: text::thing::grade(),
        cause: error.to_string(),
    })
}
