//! How far a trial is on its way, counted without reading it whole.

use crate::text;
use crate::{Bench, RunSummary, StoreError};
use rusqlite::{OptionalExtension, ToSql};
use trial::{Trial, way::Progress};

/// Something that may be part of a trial.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PartOfTrial<'a> {
    /// The plan of that slug.
    Plan(&'a str),
    /// The recipe of that slug.
    Recipe(&'a str),
    /// The run of that number.
    Run(i64),
}

/// How far a trial is, and what its way leads past.
#[derive(Debug, Clone, PartialEq)]
pub struct TrialWay {
    /// What the bench holds of it, counted.
    pub progress: Progress,
    /// Slug of the plan that it was started from; none if it was entered as it is.
    pub plan: Option<String>,
    /// Slugs of the recipes written for it or followed by its runs.
    pub recipes: Vec<String>,
    /// Its runs.
    pub runs: Vec<RunSummary>,
}

/// The plan that trial ?1 was started from.
const PLANNED: &str = "SELECT slug FROM planned_trial
    JOIN plan_revision ON plan_revision.id = revision_id
    JOIN plan ON plan.id = plan_id WHERE trial_id = ?1";
/// The newest trial started from plan ?1.
const BY_PLAN: &str = "SELECT trial.slug FROM planned_trial
    JOIN plan_revision ON plan_revision.id = revision_id
    JOIN plan ON plan.id = plan_revision.plan_id
    JOIN trial ON trial.id = planned_trial.trial_id
    WHERE plan.slug = ?1 ORDER BY trial.id DESC LIMIT 1";
/// The trial that recipe ?1 is for, or the newest one started from the plan that it is for.
const BY_RECIPE: &str = "SELECT trial.slug FROM recipe_aim
    JOIN recipe ON recipe.id = recipe_aim.recipe_id
    LEFT JOIN plan_revision ON plan_revision.plan_id = recipe_aim.plan_id
    LEFT JOIN planned_trial ON planned_trial.revision_id = plan_revision.id
    JOIN trial ON trial.id = coalesce(recipe_aim.trial_id, planned_trial.trial_id)
    WHERE recipe.slug = ?1 AND recipe_aim.id =
        (SELECT max(id) FROM recipe_aim WHERE recipe_id = recipe.id)
    ORDER BY trial.id DESC LIMIT 1";
const BY_RUN: &str = "SELECT slug FROM run JOIN trial ON trial.id = trial_id WHERE run.id = ?1";

/// Stages of trial ?1 with how many of its arms were looked at: readings that count, grades by eye,
/// and blind sessions that are closed, which show every arm.
const LOOKED: &str = "SELECT stage, max(arms) FROM (
    SELECT coalesce(corrected_stage.stage, reading.stage) AS stage, count(DISTINCT piece.arm_id) AS arms
    FROM piece JOIN reading ON reading.piece_id = piece.id
    LEFT JOIN marking ON marking.id = reading.marking_id
    LEFT JOIN corrected_stage ON corrected_stage.photo_id = marking.photo_id
    WHERE piece.trial_id = ?1
        AND reading.id NOT IN (SELECT reading_id FROM withdrawal WHERE reading_id IS NOT NULL)
        AND coalesce(marking.photo_id, 0) NOT IN
            (SELECT thing FROM binned WHERE kind = 'photo')
    GROUP BY 1
    UNION ALL
    SELECT eye_grade.stage, count(DISTINCT piece.arm_id)
    FROM piece JOIN eye_grade ON eye_grade.piece_id = piece.id
    WHERE piece.trial_id = ?1 AND eye_grade.id NOT IN
        (SELECT eye_grade_id FROM withdrawal WHERE eye_grade_id IS NOT NULL)
    GROUP BY eye_grade.stage
    UNION ALL
    SELECT json_extract(content, '$.stage'), (SELECT count(*) FROM arm WHERE trial_id = ?1)
    FROM eye_session JOIN eye_closing ON session_id = eye_session.id
    WHERE trial_id = ?1
) GROUP BY stage ORDER BY stage";

impl Bench {
    /// Slug of the trial that something is part of; of several the newest.
    ///
    /// # Errors
    /// The database can't be read.
    pub fn trial_of(&self, part: PartOfTrial<'_>) -> Result<Option<String>, StoreError> {
        let (query, of): (_, &dyn ToSql) = match &part {
            PartOfTrial::Plan(slug) => (BY_PLAN, slug),
            PartOfTrial::Recipe(slug) => (BY_RECIPE, slug),
            PartOfTrial::Run(id) => (BY_RUN, id),
        };
        self.database
            .prepare_cached(query)
            .and_then(|mut query| query.query_row([of], |row| row.get(0)).optional())
            .map_err(StoreError::database(
                text::doing::find_what_trial_this_is_part(),
            ))
    }

    /// How far a trial is, and what its way leads past.
    ///
    /// # Errors
    /// The database can't be read.
    pub fn way_of_trial(&self, trial: &Trial) -> Result<TrialWay, StoreError> {
        let runs = self.runs_of_trial(trial.id)?;
        let recipes = self.recipes_of_trial(trial.id)?;
        let read = || -> rusqlite::Result<TrialWay> {
            let plan = self
                .database
                .prepare_cached(PLANNED)?
                .query_row([trial.id.0], |row| row.get(0))
                .optional()?;
            let unmarked = self
                .database
                .prepare_cached(
                    "SELECT count(*) FROM photo WHERE trial_id = ?1
                     AND NOT EXISTS (SELECT 1 FROM marking WHERE photo_id = photo.id)
                     AND id NOT IN (SELECT thing FROM binned WHERE kind = 'photo')",
                )?
                .query_row([trial.id.0], |row| row.get(0))?;
            let looked = self
                .database
                .prepare_cached(LOOKED)?
                .query_map([trial.id.0], |row| Ok((row.get(0)?, row.get(1)?)))?
                .collect::<rusqlite::Result<_>>()?;
            Ok(TrialWay {
                progress: Progress {
                    rounds: trial.rounds,
                    planned: plan.is_some(),
                    recipes: recipes.len() as u32,
                    runs: runs.len() as u32,
                    runs_over: runs.iter().filter(|run| run.finished).count() as u32,
                    unmarked,
                    looked,
                },
                plan,
                recipes,
                runs,
            })
        };
        read().map_err(StoreError::database(text::doing::see_how_far_a_trial()))
    }
}
