//! `POST /trials/{slug}/elsewhere/grades`: adds a grade judged by eye.

use super::Known;
use super::new::{self, GradeForm};
use super::sheet::Sheet;
use crate::app::{App, now};
use crate::error::Error;
use crate::form::{Problems, Signed};
use crate::text;
use axum::extract::{Path, State};
use axum::response::{IntoResponse, Redirect, Response};
use store::StoreError;
use trial::{Judged, PieceId, TrialError, read_stage};

pub(crate) async fn act(
    State(app): State<App>,
    Path(slug): Path<String>,
    form: Signed,
) -> Result<Response, Error> {
    let known = app.at_bench(move |bench| Known::of(bench, &slug)).await?;
    let typed = GradeForm {
        piece: form.text("piece"),
        stage: form.text("grade-stage"),
        scale: form.text("scale"),
        grade: form.text("grade"),
        against: form.text("against"),
        by: form.text("grade-by"),
        light: form.text("light"),
        on: form.text("grade-on"),
        remark: form.text("remark"),
    };
    let refused = match judged(&typed) {
        Err(fault) => Some(fault),
        Ok(judged) => {
            let trial = known.trial.clone();
            app.at_bench(
                move |bench| match bench.add_eye_grade(&trial, judged, &now()) {
                    Ok(_) => Ok(None),
                    Err(StoreError::Trial(TrialError { field, message })) => {
                        Ok(Some((field, message)))
                    }
                    Err(error) => Err(error.into()),
                },
            )
            .await?
        }
    };
    if let Some((field, message)) = refused {
        let mut problems = Problems::default();
        // Fields that both forms of the page have are told apart by their names.
        let field = match field.as_str() {
            "by" => "grade-by",
            "on" => "grade-on",
            "stage" => "grade-stage",
            other => other,
        };
        problems.add(field, message);
        let sheet = Sheet::empty(known.last_stage);
        return new::show(&app, &known, &sheet, &typed, &problems);
    }
    Ok(Redirect::to(&format!("/trials/{}#grades", known.trial.slug)).into_response())
}

fn judged(typed: &GradeForm) -> Result<Judged, (String, String)> {
    let wrong = |field: &str, message: &str| (field.to_owned(), message.to_owned());
    let piece = |text: &str| text.parse().ok().map(PieceId);
    let stage = read_stage(&typed.stage);
    Ok(Judged {
        piece: piece(&typed.piece)
            .ok_or_else(|| wrong("piece", text::elsewhere::choose_the_piece_that_was_judged()))?,
        stage: stage.ok_or_else(|| {
            wrong(
                "stage",
                text::elsewhere::give_the_number_of_rounds_the_piece(),
            )
        })?,
        scale: typed
            .scale
            .parse()
            .map_err(|message| ("scale".to_owned(), message))?,
        grade: typed.grade.clone(),
        against: match typed.against.as_str() {
            "" => None,
            text => Some(piece(text).ok_or_else(|| {
                wrong(
                    "against",
                    text::elsewhere::choose_what_it_was_judged_against(),
                )
            })?),
        },
        by: typed.by.clone(),
        light: typed.light.clone(),
        on: typed.on.clone(),
        remark: typed.remark.clone(),
    })
}
