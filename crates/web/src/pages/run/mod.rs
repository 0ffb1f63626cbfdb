//! Runs: a run sheet with its clocks, what is noted on it, and its print.

pub(crate) mod note;
pub(crate) mod print;
pub(crate) mod show;
pub(crate) mod time;

use crate::error::Error;
use store::{Bench, KeptRun};

const UNKNOWN: &str = "There is no run of that number on this bench. The list of recipes shows the runs that are here.";

/// The run of that number.
pub(crate) fn find(bench: &Bench, id: i64) -> Result<KeptRun, Error> {
    bench.run(id)?.ok_or(Error::NotFound(UNKNOWN))
}
