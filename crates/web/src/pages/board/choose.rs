//! `GET /trials/{slug}/board`: which board and tags to print.

use crate::app::App;
use crate::assets::Assets;
use crate::error::Error;
use crate::text::board as say;
use askama::Template;
use axum::extract::{Path, State};
use axum::response::Html;
use trial::Trial;

#[derive(Template)]
#[template(path = "board/choose.html")]
struct ChoosePage<'a> {
    assets: &'static Assets,
    trial: &'a Trial,
    planned: bool,
}

pub(crate) async fn page(
    State(app): State<App>,
    Path(slug): Path<String>,
) -> Result<Html<String>, Error> {
    let (trial, planned) = app
        .at_bench(move |bench| {
            let trial = crate::pages::trial::find(bench, &slug)?;
            let planned = bench.plan_of_trial(trial.id)?.is_some();
            Ok((trial, planned))
        })
        .await?;
    let page = ChoosePage {
        assets: Assets::get(),
        trial: &trial,
        planned,
    };
    Ok(Html(page.render()?))
}
