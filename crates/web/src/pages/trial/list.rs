//! `GET /`: the trials on the bench, or how to begin.

use crate::app::App;
use crate::assets::Assets;
use crate::error::Error;
use askama::Template;
use axum::extract::State;
use axum::response::Html;
use store::TrialSummary;

#[derive(Template)]
#[template(path = "trial/list.html")]
struct ListPage<'a> {
    assets: &'static Assets,
    token: &'a str,
    trials: Vec<TrialSummary>,
}

pub(crate) async fn page(State(app): State<App>) -> Result<Html<String>, Error> {
    let trials = app.at_bench(|bench| Ok(bench.trials()?)).await?;
    let page = ListPage {
        assets: Assets::get(),
        token: app.token.as_str(),
        trials,
    };
    Ok(Html(page.render()?))
}
