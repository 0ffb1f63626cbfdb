//! `POST /trials/{slug}/elsewhere/withdraw`: lets a reading or a grade no longer count.

use super::Known;
use super::new::{self, GradeForm};
use super::sheet::Sheet;
use crate::app::{App, now};
use crate::error::Error;
use crate::form::{Problems, Signed};
use crate::text;
use axum::extract::{Path, State};
use axum::response::{IntoResponse, Redirect, Response};
use store::{Added, StoreError};
use trial::{EyeGradeId, ReadingId};

pub(crate) async fn act(
    State(app): State<App>,
    Path(slug): Path<String>,
    form: Signed,
) -> Result<Response, Error> {
    let known = app.at_bench(move |bench| Known::of(bench, &slug)).await?;
    let number = |name| form.text(name).parse::<i64>().ok();
    let added = match (number("reading"), number("eye-grade")) {
        (Some(id), _) => Added::Reading(ReadingId(id)),
        (None, Some(id)) => Added::Grade(EyeGradeId(id)),
        (None, None) => {
            return Err(Error::Malformed(
                text::elsewhere::the_form_doesnt_say_what_to_withdraw().to_owned(),
            ));
        }
    };
    let (trial, reason) = (known.trial.id, form.text("reason"));
    let refused = app
        .at_bench(
            move |bench| match bench.withdraw(trial, added, &reason, &now()) {
                Ok(()) => Ok(None),
                Err(error @ (StoreError::Input { .. } | StoreError::Unknown { .. })) => {
                    Ok(Some(error.to_string()))
                }
                Err(error) => Err(error.into()),
            },
        )
        .await?;
    if let Some(message) = refused {
        let mut problems = Problems::default();
        problems.add("added", message);
        let stage = known.last_stage;
        let grade = GradeForm {
            stage: stage.to_string(),
            ..GradeForm::default()
        };
        return new::show(&app, &known, &Sheet::empty(stage), &grade, &problems);
    }
    Ok(Redirect::to(&format!("/trials/{}/elsewhere#added", known.trial.slug)).into_response())
}
