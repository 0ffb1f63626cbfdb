//! `POST /setup`: checks the set-up by photos of the board, or says why it can't.

use super::show;
use crate::app::{App, blocking, now};
use crate::error::{Error, refusal_json, wants_json};
use crate::form::Problems;
use crate::text;
use crate::upload::{PHOTOS, Upload};
use axum::extract::{Request, State};
use axum::http::{HeaderMap, StatusCode};
use axum::response::{IntoResponse, Redirect, Response};
use store::{NewSetupCheck, StoreError, check_setup};

pub(crate) async fn act(
    State(app): State<App>,
    headers: HeaderMap,
    request: Request,
) -> Result<Response, Error> {
    let json = wants_json(&headers);
    let upload = Upload::receive(&app, &headers, request, &PHOTOS).await?;
    let name = upload.text("name");
    let Err((field, message)) = keep(&app, upload).await? else {
        return Ok(Redirect::to("/setup").into_response());
    };
    let status = StatusCode::UNPROCESSABLE_ENTITY;
    if json {
        return Ok(refusal_json(status, "form", &message));
    }
    let mut problems = Problems::default();
    // The form calls its files by the name that every upload has.
    problems.add(if field == "photos" { "photo" } else { field }, message);
    let checks = app.at_bench(|bench| Ok(bench.setup_checks()?)).await?;
    Ok((status, show::render(&app, checks, &name, &problems)?).into_response())
}

/// Checks and keeps; or gives the field that is wrong and a sentence.
async fn keep(app: &App, upload: Upload) -> Result<Result<(), (&'static str, String)>, Error> {
    let name = upload.text("name");
    if name.is_empty() {
        let message = text::setup::give_the_set_up_a_name();
        return Ok(Err(("name", message.to_owned())));
    }
    let photos = upload.files;
    let request = photo::Request::default();
    let view = request.view.to_string();
    let (photos, found) = blocking(move || {
        let found = check_setup(&photos, &[request], &photo::read);
        (photos, found)
    })
    .await?;
    let found = match found {
        Ok(found) => found,
        Err(StoreError::Input { field, message }) => return Ok(Err((field, message))),
        Err(error) => return Err(error.into()),
    };
    app.at_bench(move |bench| {
        let new = NewSetupCheck {
            name: &name,
            view: &view,
            check: &found,
            photos: &photos,
        };
        match bench.keep_setup_check(new, &now()) {
            Ok(_) => Ok(Ok(())),
            Err(StoreError::Input { field, message }) => Ok(Err((field, message))),
            Err(error) => Err(error.into()),
        }
    })
    .await
}
