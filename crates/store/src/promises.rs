//! What plans promise, kept so that it is worked out once: that takes thousands of drawn trials, and
//! it follows from the plan alone.

use crate::text;
use crate::{Bench, StoreError, json, plans};
use rusqlite::{OptionalExtension, params};
use trial::plan::{PROMISE_EDITION, Plan, PlanError, Promise};

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
    /// The database can't be read, or holds a plan that can't be understood.
    pub fn unpromised_plans(&self, most: u32) -> Result<Vec<Plan>, StoreError> {
        let read = || -> rusqlite::Result<Vec<String>> {
            self.database
                .prepare_cached(
                    "SELECT content FROM plan JOIN plan_revision ON plan_id = plan.id
                     WHERE number = (SELECT max(number) FROM plan_revision WHERE plan_id = plan.id)
                        AND plan.id NOT IN (SELECT thing FROM binned WHERE kind = 'plan')
                        AND content NOT IN (SELECT plan FROM plan_promise WHERE edition = ?1)
                     ORDER BY plan.id DESC LIMIT ?2",
                )?
                .query_map(params![PROMISE_EDITION, most], |row| row.get(0))?
                .collect()
        };
        let contents = read().map_err(StoreError::database(text::doing::list_its_plans()))?;
        contents
            .iter()
            .map(|content| plans::understood(content))
            .collect()
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
