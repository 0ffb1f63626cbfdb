//! Boards, labels and lists to be printed.

pub(crate) mod blind;
pub(crate) mod choose;
pub(crate) mod packing;
pub(crate) mod places;
pub(crate) mod print;
pub(crate) mod tags;

use crate::error::Error;
use crate::text;
use axum::http::{HeaderValue, header};
use axum::response::{Html, IntoResponse, Response};
use photo::board::Paper;
use store::{Bench, TrialPlan};
use trial::Trial;

/// A page to print has no scripts and fetches nothing; its style sheet is inside it. Pictures of our own are let
/// through for the icon, which a browser may still be fetching for the page before.
const POLICY: &str = "default-src 'none'; img-src 'self'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

/// The paper of a name; A4 where it is another.
pub(crate) fn paper(name: Option<&str>) -> Paper {
    match name {
        Some("letter") => Paper::Letter,
        _ => Paper::A4,
    }
}

/// A page to print.
pub(crate) fn to_print(html: String) -> Response {
    let mut response = Html(html).into_response();
    response.headers_mut().insert(
        header::CONTENT_SECURITY_POLICY,
        HeaderValue::from_static(POLICY),
    );
    response
}

/// The trial of that slug with the plan that it was started from.
fn planned(bench: &mut Bench, slug: &str) -> Result<(Trial, TrialPlan), Error> {
    let trial = crate::pages::trial::find(bench, slug)?;
    let from = bench.plan_of_trial(trial.id)?.ok_or(Error::NotFound(
        text::board::this_trial_was_started_without_a_plan(),
    ))?;
    Ok((trial, from))
}
