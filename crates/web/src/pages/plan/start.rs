//! `POST /plans/{slug}/start`: starts the plan's trial.

use crate::app::{App, now};
use crate::error::Error;
use crate::form::Signed;
use crate::text;
use axum::extract::{Path, State};
use axum::response::Redirect;

pub(crate) async fn act(
    State(app): State<App>,
    Path(slug): Path<String>,
    form: Signed,
) -> Result<Redirect, Error> {
    let number = form.text("revision").parse().ok();
    let trial = app
        .at_bench(move |bench| {
            let kept = super::find(bench, &slug, number)?;
            let id = bench.start_trial(&slug, kept.number, &now())?;
            bench
                .trial_by_id(id)?
                .ok_or_else(|| Error::broken(text::plan::the_new_trial()))
        })
        .await?;
    Ok(Redirect::to(&format!("/trials/{}", trial.slug)))
}
