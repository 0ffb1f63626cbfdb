//! What plans promise, kept while the program runs: drawing it takes thousands of trials,
//! and it follows from the plan alone.

use std::collections::HashMap;
use std::sync::{Arc, Mutex, PoisonError};
use trial::plan::{Plan, PlanError, Promise, RUNS};

/// How many promises are kept; a few kilobytes each.
const MOST_KEPT: usize = 100;

/// Promises by the text of their plan.
#[derive(Default)]
pub(crate) struct Promises(Mutex<HashMap<String, Arc<Promise>>>);

impl Promises {
    /// What a plan promises; slow where it isn't kept yet.
    pub(crate) fn of(&self, plan: &Plan) -> Result<Arc<Promise>, PlanError> {
        let text = plan.to_toml()?;
        let kept = || self.0.lock().unwrap_or_else(PoisonError::into_inner);
        if let Some(promise) = kept().get(&text) {
            return Ok(Arc::clone(promise));
        }
        let promise = Arc::new(plan.promise(RUNS)?);
        let mut kept = kept();
        if kept.len() >= MOST_KEPT {
            kept.clear();
        }
        kept.insert(text, Arc::clone(&promise));
        Ok(promise)
    }
}
