//! What plans promise, kept so that it is worked out once: that takes thousands of drawn trials, and
//! it follows from the plan alone.

use crate::text;
use crate::{Bench, StoreError, json, plans};
use rusqlite::{OptionalExtension, params};
use trial::plan::{PROMISE_EDITION, Plan, PlanError, Promise};

/// Plans whose promises are to be worked out.
#[derive(Debug, Default)]
pub struct Unpromised {
    /// The plans.
    pub plans: Vec<Plan>,
    /// Slugs of plans that can't be understood any more, each with why.
    pub unread: Vec<(String, StoreError)>,
}

impl Bench {
    /// What a plan promises, if it was kept, can be understood and the program still reckons by the
    /// same rules.
    ///
    /// # Errors
    /// The plan can't be worked with, or the database can't be read.
    pub fn kept_promise(&self, plan: &Plan) -> Result<Option<Promise>, StoreError> {
        let plan = plan_text(plan)?;
        let text: Option<String> = self
            .database
            .prepare_cached("SELECT promise FROM plan_promise WHERE plan = ?1 AND edition = ?2")
            .and_then(|mut query| {
                query
                    .query_row(params![plan, PROMISE_EDITION], |row| row.get(0))
                    .optional()
            })
            .map_err(StoreError::database(
                text::doing::read_what_a_plan_promises(),
            ))?;
        Ok(text.as_deref().and_then(json::promise))
    }

    /// Plans of whose newest revision no promise is kept by the rules of now, newest
    /// first and so many at most; those in the bin are left out.
    ///
    /// # Errors
    /// The database can't be read.
    pub fn unpromised_plans(&self, most: usize) -> Result<Unpromised, StoreError> {
        let read = || -> rusqlite::Result<Vec<(String, String)>> {
            self.database
                .prepare_cached(
                    "SELECT slug, content FROM plan JOIN plan_revision ON plan_id = plan.id
                     WHERE number = (SELECT max(number) FROM plan_revision WHERE plan_id = plan.id)
                        AND plan.id NOT IN (SELECT thing FROM binned WHERE kind = 'plan')
                        AND content NOT IN (SELECT plan FROM plan_promise WHERE edition = ?1)
                     ORDER BY plan.id DESC",
                )?
                .query_map([PROMISE_EDITION], |row| Ok((row.get(0)?, row.get(1)?)))?
                .collect()
        };
        let contents = read().map_err(StoreError::database(text::doing::list_its_plans()))?;
        let mut found = Unpromised::default();
        for (slug, content) in contents {
            if found.plans.len() == most {
                break;
            }
            match plans::understood(&content) {
                // Text that this program would write otherwise, such as an earlier one's:
                // the promise is kept by the plan, not by its spelling.
                Ok(plan) => {
                    if self.kept_promise(&plan)?.is_none() {
                        found.plans.push(plan);
                    }
                }
                Err(error) => found.unread.push((slug, error)),
            }
        }
        Ok(found)
    }

    /// Keeps what a plan promises, by the rules of this program.
    ///
    /// # Errors
    /// The plan can't be worked with, or the database can't be written.
    pub fn keep_promise(&mut self, plan: &Plan, promise: &Promise) -> Result<(), StoreError> {
        let plan = plan_text(plan)?;
        self.database
            .execute(
                "INSERT OR REPLACE INTO plan_promise (plan, edition, promise) VALUES (?1, ?2, ?3)",
                params![plan, PROMISE_EDITION, json::promise_text(promise)],
            )
            .map(drop)
            .map_err(StoreError::database(
                text::doing::keep_what_a_plan_promises(),
            ))
    }
}

fn plan_text(plan: &Plan) -> Result<String, StoreError> {
    let wrong = |error: PlanError| StoreError::input("plan", error.message);
    plan.to_toml().map_err(wrong)
}
