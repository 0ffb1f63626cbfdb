//! Grades judged by eye.

use crate::journal::About;
use crate::text;
use crate::{Bench, StoreError, journal};
use rusqlite::{Connection, Row, params};
use trial::{EyeGrade, EyeGradeId, GreyScale, Judged, PieceId, Trial, TrialId};

impl Bench {
    /// Adds a grade that a person judged by eye to a trial.
    ///
    /// # Errors
    /// What [`Judged::checked`] finds wrong, or the database can't be written.
    pub fn add_eye_grade(
        &mut self,
        trial: &Trial,
        judged: Judged,
        now: &str,
    ) -> Result<EyeGradeId, StoreError> {
        let judged = judged.checked(trial)?;
        let change = self.change()?;
        let id = insert(&change, &judged, now)
            .map_err(StoreError::database(text::doing::add_a_grade()))?;
        change
            .commit()
            .map_err(StoreError::database(text::doing::add_a_grade()))?;
        Ok(id)
    }

    /// The grades of a trial that count, by stage and then in the order they were made.
    ///
    /// # Errors
    /// The database can't be read.
    pub fn eye_grades(&self, trial: TrialId) -> Result<Vec<EyeGrade>, StoreError> {
        let read = || -> rusqlite::Result<Vec<EyeGrade>> {
            self.database
                .prepare_cached(
                    "SELECT eye_grade.* FROM piece JOIN eye_grade ON eye_grade.piece_id = piece.id
                     WHERE piece.trial_id = ?1
                        AND eye_grade.id NOT IN
                            (SELECT eye_grade_id FROM withdrawal WHERE eye_grade_id IS NOT NULL)
                     ORDER BY eye_grade.stage, eye_grade.id",
                )?
                .query_map([trial.0], stored)?
                .collect()
        };
        read().map_err(StoreError::database(text::doing::read_its_grades()))
    }
}

fn insert(change: &Connection, judged: &Judged, now: &str) -> rusqlite::Result<EyeGradeId> {
    change.execute(
        "INSERT INTO eye_grade
            (piece_id, stage, scale, grade, against_id, by_whom, light, judged_on, remark, made_at)
         VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10)",
        params![
            judged.piece.0,
            judged.stage,
            judged.scale.as_str(),
            judged.grade,
            judged.against.map(|piece| piece.0),
            judged.by,
            judged.light,
            judged.on,
            judged.remark,
            now
        ],
    )?;
    let id = EyeGradeId(change.last_insert_rowid());
    let detail =
        text::eye_grades::of_piece_number(judged.scale, &judged.grade, judged.piece, &judged.by);
    journal::note_about(
        change,
        About::Piece(judged.piece.0),
        now,
        "grade by eye added",
        &detail,
    )?;
    Ok(id)
}

fn stored(row: &Row<'_>) -> rusqlite::Result<EyeGrade> {
    let scale: String = row.get("scale")?;
    let against: Option<i64> = row.get("against_id")?;
    Ok(EyeGrade {
        id: EyeGradeId(row.get("id")?),
        judged: Judged {
            piece: PieceId(row.get("piece_id")?),
            stage: row.get("stage")?,
            // The table refuses any other word.
            scale: if scale == GreyScale::Staining.as_str() {
                GreyScale::Staining
            } else {
                GreyScale::Change
            },
            grade: row.get("grade")?,
            against: against.map(PieceId),
            by: row.get("by_whom")?,
            light: row.get("light")?,
            on: row.get("judged_on")?,
            remark: row.get("remark")?,
        },
        made_at: row.get("made_at")?,
    })
}
