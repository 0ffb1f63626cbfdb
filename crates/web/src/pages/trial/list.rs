//! `GET /`: the trials on the bench, or how to begin.

use crate::app::App;
use crate::assets::Assets;
use crate::error::Error;
use askama::Template;
use axum::extract::State;
use axum::response::Html;
use store::{PlanSummary, TrialSummary};

#[derive(Template)]
#[template(path = "trial/list.html")]
struct ListPage<'a> {
    assets: &'static Assets,
    token: &'a str,
    trials: Vec<TrialSummary>,
    plans: Vec<PlanSummary>,
}

pub(crate) async fn page(State(app): State<App>) -> Result<Html<String>, Error> {
    let (trials, plans) = app
        .at_bench(|bench| Ok((bench.trials()?, bench.plans()?)))
        .await?;
    let page = ListPage {
        assets: Assets::get(),
        token: app.token.as_str(),
        trials,
        plans,
    };
    Ok(Html(page.render()?))
}
