//! `GET /`: the trials on the bench, newest first and page by page, or how to begin.

use crate::app::App;
use crate::assets::Assets;
use crate::error::Error;
use crate::text::trial as say;
use askama::Template;
use axum::extract::{Query, State};
use axum::response::Html;
use serde::Deserialize;
use store::{PlanSummary, TrialSummary};
use trial::TrialId;

/// Trials on a page.
const MOST: u32 = 50;

#[derive(Template)]
#[template(path = "trial/list.html")]
struct ListPage<'a> {
    assets: &'static Assets,
    token: &'a str,
    trials: Vec<TrialSummary>,
    plans: Vec<PlanSummary>,
    /// The number of the last trial shown, if there are older ones.
    older: Option<i64>,
    first: bool,
}

/// Where the page begins.
#[derive(Deserialize)]
pub(crate) struct From {
    /// Only trials before that one.
    before: Option<i64>,
}

pub(crate) async fn page(
    State(app): State<App>,
    Query(from): Query<From>,
) -> Result<Html<String>, Error> {
    let first = from.before.is_none();
    let (mut trials, plans) = app
        .at_bench(move |bench| {
            let plans = if first { bench.plans()? } else { Vec::new() };
            // One more tells whether there is another page.
            let trials = bench.trials_before(from.before.map(TrialId), MOST + 1)?;
            Ok((trials, plans))
        })
        .await?;
    let more = trials.len() > MOST as usize;
    trials.truncate(MOST as usize);
    let page = ListPage {
        assets: Assets::get(),
        token: app.token.as_str(),
        older: trials.last().filter(|_| more).map(|trial| trial.id.0),
        trials,
        plans,
        first,
    };
    Ok(Html(page.render()?))
}
