//! `POST /recipes/{slug}/aim`: says what a recipe is for.

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
    let aim = form.text("aim");
    let place = format!("/recipes/{slug}#for");
    app.at_bench(move |bench| {
        super::find(bench, &slug, None)?;
        let (plan, trial) = match aim.split_once(':') {
            Some(("plan", plan)) => (Some(plan), None),
            Some(("trial", trial)) => (None, Some(trial)),
            _ => (None, None),
        };
        Ok(bench.aim_recipe(&slug, plan, trial, &now())?)
    })
    .await?;
    Ok(Redirect::to(&place))
}
