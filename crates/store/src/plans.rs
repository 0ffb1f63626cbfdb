//! Plans on the bench: every revision is kept, the newest counts.

use crate::Thing;
use crate::journal::About;
use crate::revisions::{Revised, Revision};
use crate::text;
use crate::{Bench, StoreError, journal, trials};
use rusqlite::{Connection, OptionalExtension, params};
use trial::{TrialId, plan::Plan};

/// A plan as a list shows it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PlanSummary {
    /// Its name in addresses.
    pub slug: String,
    /// Its title, or the question where it has none.
    pub title: String,
    /// How many arms it has.
    pub arms: usize,
    /// Test pieces of all arms.
    pub pieces: usize,
    /// How many revisions there are.
    pub revisions: u32,
    /// How many trials were started from it.
    pub trials: u32,
}

/// A plan with its history.
#[derive(Debug, Clone, PartialEq)]
pub struct KeptPlan {
    /// Its name in addresses.
    pub slug: String,
    /// The revision that is shown, from 1.
    pub number: u32,
    /// The plan as of that revision.
    pub plan: Plan,
    /// All revisions, newest first.
    pub revisions: Vec<Revision>,
    /// Slug and title of the trials started from it, oldest first.
    pub trials: Vec<(String, String)>,
    /// Slugs of the recipes for it, oldest first.
    pub recipes: Vec<String>,
    /// Whether it lies in the bin.
    pub binned: bool,
}

/// The plan a trial was started from.
#[derive(Debug, Clone, PartialEq)]
pub struct TrialPlan {
    /// The plan's name in addresses.
    pub slug: String,
    /// The revision, from 1.
    pub number: u32,
    /// The plan as of that revision.
    pub plan: Plan,
    /// When its blind codes were opened, RFC 3339; none while they are hidden.
    pub opened_at: Option<String>,
}

const PLAN: Revised = Revised("plan");

impl Bench {
    /// Keeps a new plan and gives its slug.
    ///
    /// # Errors
    /// The plan can't be worked with, or the database can't be written.
    pub fn keep_plan(&mut self, plan: &Plan, why: &str, now: &str) -> Result<String, StoreError> {
        let content = content(plan)?;
        let change = self.change()?;
        let slug = insert(&change, plan, now)
            .and_then(|(id, slug)| {
                PLAN.revise(&change, (id, 1), &content, why, now)?;
                Ok(slug)
            })
            .map_err(StoreError::database(text::doing::keep_a_plan()))?;
        change
            .commit()
            .map_err(StoreError::database(text::doing::keep_a_plan()))?;
        Ok(slug)
    }

    /// Keeps a new revision of a plan and gives its number; earlier ones stay.
    ///
    /// # Errors
    /// There is no such plan, `upon` is no longer its newest revision, the plan can't
    /// be worked with, or the database can't be written.
    pub fn revise_plan(
        &mut self,
        slug: &str,
        upon: u32,
        plan: &Plan,
        why: &str,
        now: &str,
    ) -> Result<u32, StoreError> {
        let content = content(plan)?;
        let change = self.change()?;
        let (id, number) = PLAN.next_upon(&change, slug, upon, text::doing::keep_a_plan())?;
        PLAN.revise(&change, (id, number), &content, why, now)
            .and_then(|()| journal::note(&change, now, "plan changed", &format!("{slug}: {why}")))
            .map_err(StoreError::database(text::doing::keep_a_plan()))?;
        change
            .commit()
            .map_err(StoreError::database(text::doing::keep_a_plan()))?;
        Ok(number)
    }

    /// Every plan, newest first.
    ///
    /// # Errors
    /// The database can't be read, or holds a plan that can't be understood.
    pub fn plans(&self) -> Result<Vec<PlanSummary>, StoreError> {
        let read = || -> rusqlite::Result<Vec<(String, String, u32, u32)>> {
            self.database
                .prepare_cached(
                    "SELECT slug, content, number,
                        (SELECT count(*) FROM planned_trial JOIN plan_revision AS other
                            ON other.id = revision_id WHERE other.plan_id = plan.id)
                     FROM plan JOIN plan_revision ON plan_id = plan.id
                     WHERE number = (SELECT max(number) FROM plan_revision WHERE plan_id = plan.id)
                        AND plan.id NOT IN (SELECT thing FROM binned WHERE kind = 'plan')
                     ORDER BY plan.id DESC",
                )?
                .query_map([], |row| {
                    Ok((row.get(0)?, row.get(1)?, row.get(2)?, row.get(3)?))
                })?
                .collect()
        };
        let rows = read().map_err(StoreError::database(text::doing::list_its_plans()))?;
        rows.into_iter()
            .map(|(slug, content, revisions, trials)| {
                let plan = understood(&content)?;
                Ok(PlanSummary {
                    slug,
                    arms: plan.arms.len(),
                    pieces: plan.test_pieces(),
                    title: title(&plan).to_owned(),
                    revisions,
                    trials,
                })
            })
            .collect()
    }

    /// The plan of that slug as of a revision, the newest where none is named; none
    /// if there is no such plan or revision.
    ///
    /// # Errors
    /// The database can't be read, or holds a plan that can't be understood.
    pub fn plan(&self, slug: &str, number: Option<u32>) -> Result<Option<KeptPlan>, StoreError> {
        let found = self.revision(PLAN, slug, number);
        let Some((id, number, content)) =
            found.map_err(StoreError::database(text::doing::read_a_plan()))?
        else {
            return Ok(None);
        };
        Ok(Some(KeptPlan {
            slug: slug.to_owned(),
            number,
            plan: understood(&content)?,
            revisions: self
                .revisions(PLAN, id)
                .map_err(StoreError::database(text::doing::read_a_plan()))?,
            trials: self
                .started(id)
                .map_err(StoreError::database(text::doing::read_a_plan()))?,
            recipes: self.recipes_for_plan(slug)?,
            binned: self.is_binned(Thing::Plan(slug))?,
        }))
    }

    fn started(&self, plan: i64) -> rusqlite::Result<Vec<(String, String)>> {
        self.database
            .prepare_cached(
                "SELECT trial.slug, trial.title FROM planned_trial
                 JOIN trial ON trial.id = trial_id
                 JOIN plan_revision ON plan_revision.id = revision_id
                 WHERE plan_id = ?1 ORDER BY trial.id",
            )?
            .query_map([plan], |row| Ok((row.get(0)?, row.get(1)?)))?
            .collect()
    }

    /// Starts the trial of a plan's revision, its pieces in the order that follows
    /// from the plan's seed. A plan with weaknesses may be started: they are limits
    /// of the trial's verdict.
    ///
    /// # Errors
    /// There is no such revision, the trial can't be entered, or the database can't
    /// be written.
    pub fn start_trial(
        &mut self,
        slug: &str,
        number: u32,
        now: &str,
    ) -> Result<TrialId, StoreError> {
        let Some(kept) = self.plan(slug, Some(number))? else {
            return Err(StoreError::input(
                "plan",
                text::plans::there_is_no_such_plan(),
            ));
        };
        let new = kept.plan.new_trial(&kept.plan.order());
        new.validate()?;
        let change = self.change()?;
        let write = || -> rusqlite::Result<TrialId> {
            let id = trials::insert(&change, &new, now)?;
            change.execute(
                "INSERT INTO planned_trial (trial_id, revision_id)
                 SELECT ?1, plan_revision.id FROM plan_revision JOIN plan ON plan.id = plan_id
                 WHERE slug = ?2 AND number = ?3",
                params![id.0, slug, number],
            )?;
            Ok(id)
        };
        let id = write().map_err(StoreError::database(
            text::doing::start_a_trial_from_a_plan(),
        ))?;
        change.commit().map_err(StoreError::database(
            text::doing::start_a_trial_from_a_plan(),
        ))?;
        Ok(id)
    }

    /// The plan that a trial was started from; none for one that was entered as it is.
    ///
    /// # Errors
    /// The database can't be read, or holds a plan that can't be understood.
    pub fn plan_of_trial(&self, trial: TrialId) -> Result<Option<TrialPlan>, StoreError> {
        type Row = (String, u32, String, Option<String>);
        let read = || -> rusqlite::Result<Option<Row>> {
            self.database
                .prepare_cached(
                    "SELECT slug, number, content,
                        (SELECT opened_at FROM blind_opening WHERE trial_id = ?1)
                     FROM planned_trial
                     JOIN plan_revision ON plan_revision.id = revision_id
                     JOIN plan ON plan.id = plan_id
                     WHERE trial_id = ?1",
                )?
                .query_row([trial.0], |row| {
                    Ok((row.get(0)?, row.get(1)?, row.get(2)?, row.get(3)?))
                })
                .optional()
        };
        let found = read().map_err(StoreError::database(text::doing::read_a_plan()))?;
        found
            .map(|(slug, number, content, opened_at)| {
                Ok(TrialPlan {
                    slug,
                    number,
                    plan: understood(&content)?,
                    opened_at,
                })
            })
            .transpose()
    }

    /// Opens the blind codes of a planned trial for good; opening them twice changes
    /// nothing.
    ///
    /// # Errors
    /// The trial has no plan, or the database can't be written.
    pub fn open_blind_codes(&mut self, trial: TrialId, now: &str) -> Result<(), StoreError> {
        let Some(from) = self.plan_of_trial(trial)? else {
            return Err(StoreError::input(
                "trial",
                text::plans::this_trial_was_started_without_a_plan(),
            ));
        };
        if from.opened_at.is_some() {
            return Ok(());
        }
        let change = self.change()?;
        change
            .execute(
                "INSERT OR IGNORE INTO blind_opening (trial_id, opened_at) VALUES (?1, ?2)",
                params![trial.0, now],
            )
            .and_then(|_| {
                journal::note_about(
                    &change,
                    About::Trial(trial.0),
                    now,
                    "blind codes opened",
                    &from.slug,
                )
            })
            .map_err(StoreError::database(text::doing::open_the_blind_codes()))?;
        change
            .commit()
            .map_err(StoreError::database(text::doing::open_the_blind_codes()))
    }
}

/// The title of a plan, or its question.
fn title(plan: &Plan) -> &str {
    match plan.title.trim() {
        "" => plan.question.trim(),
        title => title,
    }
}

fn content(plan: &Plan) -> Result<String, StoreError> {
    let text = || {
        plan.check()?;
        plan.to_toml()
    };
    text().map_err(|error: trial::plan::PlanError| StoreError::input("plan", error.message))
}

pub(crate) fn understood(content: &str) -> Result<Plan, StoreError> {
    Plan::from_toml(content).map_err(|error| StoreError::Stored {
        what: text::thing::plan(),
        cause: error.message,
    })
}

fn insert(change: &Connection, plan: &Plan, now: &str) -> rusqlite::Result<(i64, String)> {
    let (id, slug) = PLAN.begin(change, title(plan), now)?;
    let detail = format!("\"{}\" ({slug})", title(plan));
    journal::note(change, now, "plan kept", &detail)?;
    Ok((id, slug))
}
