//! `POST /trials/{slug}/photos/{id}/again`: has a photo read once more where its pieces are marked;
//! `POST /trials/{slug}/photos/{id}/cancel`: takes a waiting photo out of the queue.

use super::Return;
use crate::app::{App, now};
use crate::error::Error;
use crate::form::Signed;
use axum::extract::{Path, State};
use axum::response::Redirect;
use store::Bench;
use trial::PhotoId;

pub(crate) async fn again(
    State(app): State<App>,
    Path(at): Path<(String, i64)>,
    form: Signed,
) -> Result<Redirect, Error> {
    let change = |bench: &mut Bench, photo| Ok(bench.read_again(photo, &now())?);
    let back = changed(&app, at, &form, change).await?;
    app.start_reading();
    Ok(back)
}

pub(crate) async fn cancel(
    State(app): State<App>,
    Path(at): Path<(String, i64)>,
    form: Signed,
) -> Result<Redirect, Error> {
    // One that was read in the meantime stays read.
    let change = |bench: &mut Bench, photo| Ok(bench.take_out(photo, &now())?);
    changed(&app, at, &form, change).await
}

/// Changes where a photo stands in the queue, and leads back to where the button was pressed.
async fn changed<T: Send + 'static>(
    app: &App,
    (slug, id): (String, i64),
    form: &Signed,
    change: impl FnOnce(&mut Bench, PhotoId) -> Result<T, Error> + Send + 'static,
) -> Result<Redirect, Error> {
    let back = Return::of(form);
    let trial = app
        .at_bench(move |bench| {
            let (trial, photo) = super::find(bench, &slug, id)?;
            change(bench, photo.id)?;
            Ok(trial)
        })
        .await?;
    app.progress.changed();
    Ok(back.to(&trial, id))
}
