//! Plans: the question, the proposed plan, its revisions, the start of its trial.

pub(crate) mod ask;
pub(crate) mod power;
pub(crate) mod propose;
pub(crate) mod revise;
pub(crate) mod show;
pub(crate) mod start;

use crate::error::Error;
use crate::text;
use store::{Bench, KeptPlan};

/// A plan as of a revision, the newest where none is named.
pub(crate) fn find(bench: &Bench, slug: &str, number: Option<u32>) -> Result<KeptPlan, Error> {
    bench
        .plan(slug, number)?
        .ok_or(Error::NotFound(text::plan::there_is_no_plan_of_that_name()))
}
