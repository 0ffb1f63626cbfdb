//! Trials: all of them, a new one, one of them.

pub(crate) mod compare;
pub(crate) mod create;
pub(crate) mod list;
pub(crate) mod new;
pub(crate) mod show;

use crate::error::Error;
use store::Bench;
use trial::{Results, Trial};

const UNKNOWN: &str = "There is no trial of that name on this bench. It may be on another one; the list shows those that are here.";

/// The trial with that slug, or the page that says there is none.
pub(crate) fn find(bench: &mut Bench, slug: &str) -> Result<Trial, Error> {
    bench.trial(slug)?.ok_or(Error::NotFound(UNKNOWN))
}

/// All that was found out about the trial with that slug.
pub(crate) fn results(bench: &Bench, slug: &str) -> Result<Results, Error> {
    bench.results(slug)?.ok_or(Error::NotFound(UNKNOWN))
}
