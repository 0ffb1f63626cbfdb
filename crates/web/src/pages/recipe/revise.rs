//! `POST /recipes/{slug}`: a new revision by the text or by going back to an earlier one.

use super::show::{Aims, Shown, render};
use crate::app::{App, now};
use crate::error::Error;
use crate::form::Signed;
use crate::text;
use axum::extract::{Path, State};
use axum::http::StatusCode;
use axum::response::{IntoResponse, Redirect, Response};
use dyeing::{DyeingError, Plan, Recipe};
use store::StoreError;

pub(crate) async fn act(
    State(app): State<App>,
    Path(slug): Path<String>,
    form: Signed,
) -> Result<Response, Error> {
    let typed = form.has("write").then(|| form.text("text"));
    let seen = form.text("revision").parse().unwrap_or(0);
    let place = slug.clone();
    let told = typed.clone();
    let done = app
        .at_bench(move |bench| {
            let kept = super::find(bench, &slug, None)?;
            let (text, why) = match typed {
                Some(text) => (text, text::recipe::edited_as_text().to_owned()),
                None => {
                    let number = form.text("back").parse().unwrap_or(0);
                    let earlier = super::find(bench, &slug, Some(number))?;
                    (earlier.text, text::recipe::back_to_revision(number))
                }
            };
            let message = match worked_out(&text) {
                Err(error) => told_in_full(&error),
                Ok(()) => match bench.revise_recipe(&slug, seen, &text, &why, &now()) {
                    Ok(_) => return Ok(None),
                    Err(StoreError::Input { message, .. }) => message,
                    Err(error) => return Err(error.into()),
                },
            };
            let aims = Aims::of(bench, &kept)?;
            Ok(Some((kept, aims, message)))
        })
        .await?;
    match done {
        None => Ok(Redirect::to(&format!("/recipes/{place}")).into_response()),
        Some((kept, aims, message)) => {
            let mut shown = Shown::default();
            shown.problems.add("text", message);
            shown.typed = told;
            let page = render(&app, &kept, &aims, shown)?;
            Ok((StatusCode::UNPROCESSABLE_ENTITY, page).into_response())
        }
    }
}

fn worked_out(text: &str) -> Result<(), DyeingError> {
    Plan::of(&Recipe::read(text)?).map(|_| ())
}

/// The sentence; its place comes with it.
fn told_in_full(error: &DyeingError) -> String {
    super::places::sentence(&error.to_string())
}
