//! Judging by eye: sessions, their labels, who judges, one pair after another.

pub(crate) mod begin;
pub(crate) mod close;
pub(crate) mod labels;
pub(crate) mod show;
pub(crate) mod sit;
pub(crate) mod turn;

use crate::error::Error;
use crate::text;
use store::Bench;
use trial::{Trial, eyes::Judging};

/// The trial with that slug and one of its sessions.
fn find(bench: &mut Bench, slug: &str, session: i64) -> Result<(Trial, Judging), Error> {
    let trial = crate::pages::trial::find(bench, slug)?;
    let sessions = bench.eye_sessions(trial.id)?;
    let found = sessions.into_iter().find(|judging| judging.id == session);
    Ok((
        trial,
        found.ok_or(Error::NotFound(
            text::eyes::there_is_no_such_session_of_judging(),
        ))?,
    ))
}
