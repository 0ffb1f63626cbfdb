//! Trials: all of them, a new one, one of them.

pub(crate) mod create;
pub(crate) mod list;
pub(crate) mod new;
pub(crate) mod results;
pub(crate) mod show;

use crate::error::Error;
use store::Bench;
use trial::Trial;

/// The trial with that slug, or the page that says there is none.
pub(crate) fn find(bench: &mut Bench, slug: &str) -> Result<Trial, Error> {
    bench.trial(slug)?.ok_or(Error::NotFound(
        "There is no trial of that name on this bench. It may be on another one; the list shows those that are here.",
    ))
}
