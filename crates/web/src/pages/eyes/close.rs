//! `POST /trials/{slug}/eyes/{session}/close`: closes a session and shows its grades.

use crate::app::{App, now};
use crate::error::Error;
use crate::form::Signed;
use axum::extract::{Path, State};
use axum::response::Redirect;

pub(crate) async fn act(
    State(app): State<App>,
    Path((slug, session)): Path<(String, i64)>,
    _form: Signed,
) -> Result<Redirect, Error> {
    let back = format!("/trials/{slug}/eyes#results");
    app.at_bench(move |bench| {
        let (trial, _) = super::find(bench, &slug, session)?;
        Ok(bench.close_eye_session(trial.id, session, &now())?)
    })
    .await?;
    Ok(Redirect::to(&back))
}
