//! Runs: a run sheet with its clocks, what is noted on it, and its print.

pub(crate) mod note;
pub(crate) mod print;
pub(crate) mod show;
pub(crate) mod time;

use crate::error::Error;
use crate::text;
use locale::Measures;
use store::{Bench, KeptRun};

/// The run of that number.
pub(crate) fn find(bench: &Bench, id: i64) -> Result<KeptRun, Error> {
    bench
        .run(id)?
        .ok_or(Error::NotFound(text::run::there_is_no_run_of_that_number()))
}

/// The same with its sheet in the bench's measures; what is kept, and data, are metric.
pub(crate) fn find_to_show(bench: &Bench, id: i64) -> Result<KeptRun, Error> {
    let mut kept = find(bench, id)?;
    if locale::current().measures == Measures::Metric {
        return Ok(kept);
    }
    let recipe = bench.recipe(&kept.recipe, Some(kept.revision))?;
    let sheet = kept
        .run
        .sheet
        .rewritten(recipe.as_ref().map(|of| &of.recipe));
    kept.run.sheet = sheet;
    Ok(kept)
}
