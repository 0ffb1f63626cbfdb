//! `POST /trials/{slug}/elsewhere/preview`: what would be added, before anything is.

use super::Known;
use super::new::{self, GradeForm};
use super::sheet::Sheet;
use crate::app::App;
use crate::assets::Assets;
use crate::error::Error;
use crate::form::Problems;
use crate::text;
use crate::text::elsewhere as say;
use crate::upload::{TABLE, Upload};
use askama::Template;
use axum::extract::{Path, Request, State};
use axum::http::HeaderMap;
use axum::response::{Html, IntoResponse, Response};
use colour::Lab;
use report::{swatch, words};
use trial::{Matched, Trial};

#[derive(Template)]
#[template(path = "elsewhere/preview.html")]
struct PreviewPage<'a> {
    assets: &'static Assets,
    token: &'a str,
    trial: &'a Trial,
    sheet: &'a Sheet,
    when: String,
    rows: Vec<PreviewRow>,
    unknown: String,
    notes: &'a [String],
}

struct PreviewRow {
    code: String,
    arm: String,
    kind: &'static str,
    view: String,
    numbers: String,
    swatch: String,
}

pub(crate) async fn page(
    State(app): State<App>,
    Path(slug): Path<String>,
    headers: HeaderMap,
    request: Request,
) -> Result<Response, Error> {
    let known = app.at_bench(move |bench| Known::of(bench, &slug)).await?;
    let upload = Upload::receive(&app, &headers, request, &TABLE).await;
    let mut problems = Problems::default();
    let grade = GradeForm::default();
    let mut sheet = match upload {
        Ok(upload) => Sheet::uploaded(upload),
        Err(Error::TooLarge(message)) => {
            problems.add("table", message);
            let sheet = Sheet::empty(known.last_stage);
            return new::show(&app, &known, &sheet, &grade, &problems);
        }
        Err(error) => return Err(error),
    };
    match sheet.understood(&known.trial) {
        Err((field, message)) => {
            problems.add(field, message);
            new::show(&app, &known, &sheet, &grade, &problems)
        }
        Ok((stage, found)) => {
            let page = PreviewPage {
                assets: Assets::get(),
                token: app.token.as_str(),
                trial: &known.trial,
                sheet: &sheet,
                when: words::stage(stage),
                rows: rows(&known.trial, &found),
                unknown: found.unknown.join(", "),
                notes: &found.notes,
            };
            Ok(Html(page.render()?).into_response())
        }
    }
}

fn rows(trial: &Trial, found: &Matched) -> Vec<PreviewRow> {
    let of = |reading: &trial::NewReading| {
        let piece = trial.piece(reading.piece)?;
        let lab = Lab::from(reading.lab);
        Some(PreviewRow {
            code: piece.code.clone(),
            arm: trial
                .arm(piece.arm)
                .map_or_else(String::new, |arm| arm.name.clone()),
            kind: if reading.spectrum.is_some() {
                "spectrum"
            } else {
                text::elsewhere::lab_values()
            },
            view: reading.view.to_string(),
            numbers: swatch::numbers(lab),
            swatch: swatch::svg(lab, &piece.code),
        })
    };
    found.readings.iter().filter_map(of).collect()
}
