//! Trials: all of them, a new one, one of them.

pub(crate) mod compare;
pub(crate) mod create;
pub(crate) mod list;
pub(crate) mod new;
pub(crate) mod show;

use crate::error::Error;
use crate::text;
use store::Bench;
use trial::{Results, Trial};

/// The trial with that slug, or the page that says there is none.
pub(crate) fn find(bench: &mut Bench, slug: &str) -> Result<Trial, Error> {
    bench.trial(slug)?.ok_or(Error::NotFound(
        text::trial::there_is_no_trial_of_that_name(),
    ))
}

/// All that was found out about the trial with that slug.
pub(crate) fn results(bench: &Bench, slug: &str) -> Result<Results, Error> {
    bench.results(slug)?.ok_or(Error::NotFound(
        text::trial::there_is_no_trial_of_that_name(),
    ))
}
