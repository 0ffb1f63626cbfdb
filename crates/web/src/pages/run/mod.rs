//! Runs: a run sheet with its clocks, what is noted on it, and its print.

mod cards;
pub(crate) mod note;
pub(crate) mod print;
pub(crate) mod show;
pub(crate) mod time;

use crate::error::Error;
use crate::text;
use store::{Bench, KeptRun};

/// The run of that number.
pub(crate) fn find(bench: &Bench, id: i64) -> Result<KeptRun, Error> {
    bench.run(id)?.ok_or_else(missing)
}

/// The same with its sheet in the bench's measures; what is kept, and data, are metric.
pub(crate) fn find_to_show(bench: &Bench, id: i64) -> Result<KeptRun, Error> {
    bench.run_as_shown(id)?.ok_or_else(missing)
}

fn missing() -> Error {
    Error::NotFound(text::run::there_is_no_run_of_that_number())
}
