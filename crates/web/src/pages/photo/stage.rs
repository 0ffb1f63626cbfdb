//! `POST /trials/{slug}/photos/{id}/stage`: says anew after how many rounds a photo was taken.

use super::show::{Seen, ShowPage};
use crate::app::{App, now};
use crate::error::Error;
use crate::form::{Problems, Signed};
use crate::text;
use askama::Template;
use axum::extract::{Path, State};
use axum::http::StatusCode;
use axum::response::{Html, IntoResponse, Redirect, Response};
use store::StoreError;
use trial::{PhotoId, read_stage};

pub(crate) async fn act(
    State(app): State<App>,
    Path((slug, id)): Path<(String, i64)>,
    form: Signed,
) -> Result<Response, Error> {
    let typed = form.text("stage");
    let stage = read_stage(&typed);
    let (trial, photo, seen, corrected) = app
        .at_bench(move |bench| {
            let (trial, photo) = super::find(bench, &slug, id)?;
            let corrected = match stage {
                None => Err(text::photo::give_the_number_of_rounds().to_owned()),
                Some(stage) => match bench.correct_stage(PhotoId(id), stage, &now()) {
                    Ok(moved) => Ok(moved),
                    Err(StoreError::Input { message, .. }) => Err(message),
                    Err(error) => return Err(error.into()),
                },
            };
            let seen = Seen::of(bench, &photo)?;
            Ok((trial, photo, seen, corrected))
        })
        .await?;
    let moved = match corrected {
        Ok(moved) => moved,
        Err(problem) => {
            let none = Problems::default();
            let page = ShowPage::with_stage(&app, &trial, &photo, seen, (typed, problem), &none);
            return Ok((StatusCode::UNPROCESSABLE_ENTITY, Html(page.render()?)).into_response());
        }
    };
    app.progress.changed();
    let told = if moved { "?moved" } else { "" };
    let to = format!("/trials/{}/photos/{id}{told}", trial.slug);
    Ok(Redirect::to(&to).into_response())
}
