//! What plans promise, kept so that it is worked out once: that takes thousands of drawn trials, and
//! it follows from the plan alone.

use crate::text;
use crate::{Bench, StoreError, json};
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
