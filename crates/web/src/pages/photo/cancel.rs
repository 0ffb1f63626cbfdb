//! `POST /trials/{slug}/photos/{id}/cancel`: takes a waiting photo out of the queue.

use super::Return;
use crate::app::{App, now};
use crate::error::Error;
use crate::form::Signed;
use axum::extract::{Path, State};
use axum::response::Redirect;

pub(crate) async fn act(
    State(app): State<App>,
    Path((slug, id)): Path<(String, i64)>,
    form: Signed,
) -> Result<Redirect, Error> {
    let back = Return::of(&form);
    let trial = app
        .at_bench(move |bench| {
            let (trial, photo) = super::find(bench, &slug, id)?;
            // One that was read in the meantime stays read.
            bench.take_out(photo.id, &now())?;
            Ok(trial)
        })
        .await?;
    app.progress.changed();
    Ok(back.to(&trial, id))
}
