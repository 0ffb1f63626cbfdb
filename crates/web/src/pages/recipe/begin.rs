//! `POST /recipes/{slug}/runs`: begins a run by a recipe's revision.

use crate::app::{App, now};
use crate::error::Error;
use crate::form::Signed;
use axum::extract::{Path, State};
use axum::response::Redirect;

pub(crate) async fn act(
    State(app): State<App>,
    Path(slug): Path<String>,
    form: Signed,
) -> Result<Redirect, Error> {
    let number = form.text("revision").parse().ok();
    let trial = Some(form.text("trial")).filter(|slug| !slug.is_empty());
    let title = form.text("title");
    let id = app
        .at_bench(move |bench| {
            let kept = super::find(bench, &slug, number)?;
            Ok(bench.begin_run(&slug, kept.number, trial.as_deref(), &title, &now())?)
        })
        .await?;
    Ok(Redirect::to(&format!("/runs/{id}")))
}
