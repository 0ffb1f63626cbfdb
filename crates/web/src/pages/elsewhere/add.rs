//! `POST /trials/{slug}/elsewhere/readings`: adds what the preview showed.

use super::Known;
use super::new::{self, GradeForm};
use super::sheet::Sheet;
use crate::app::{App, now};
use crate::error::Error;
use crate::form::{Problems, Signed};
use axum::extract::{Path, State};
use axum::response::{IntoResponse, Redirect, Response};
use store::{Delivery, StoreError};
use trial::{NewReading, TrialId};

pub(crate) async fn act(
    State(app): State<App>,
    Path(slug): Path<String>,
    form: Signed,
) -> Result<Response, Error> {
    let mut sheet = Sheet::returned(&form)?;
    let known = app.at_bench(move |bench| Known::of(bench, &slug)).await?;
    let trial = known.trial.id;
    let refused = match sheet.understood(&known.trial) {
        Err(fault) => Some(fault),
        Ok((stage, found)) => add(&app, trial, sheet.clone(), stage, found.readings).await?,
    };
    if let Some((field, message)) = refused {
        let mut problems = Problems::default();
        let field = if field == "readings" {
            "table".to_owned()
        } else {
            field
        };
        problems.add(field, message);
        return new::show(&app, &known, &sheet, &GradeForm::default(), &problems);
    }
    Ok(Redirect::to(&format!("/trials/{}#readings", known.trial.slug)).into_response())
}

/// Adds readings, or says what the bench refuses about them.
async fn add(
    app: &App,
    trial: TrialId,
    sheet: Sheet,
    stage: u32,
    readings: Vec<NewReading>,
) -> Result<Option<(String, String)>, Error> {
    app.at_bench(move |bench| {
        let delivery = Delivery {
            stage,
            file_name: &sheet.file,
            content: &sheet.content,
            by: &sheet.by,
            on: &sheet.on,
            instrument: &sheet.instrument,
            readings: &readings,
        };
        match bench.add_readings(trial, &delivery, &now()) {
            Ok(_) => Ok(None),
            Err(StoreError::Input { field, message }) => Ok(Some((field.to_owned(), message))),
            Err(error) => Err(error.into()),
        }
    })
    .await
}
