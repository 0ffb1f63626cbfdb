//! `GET /trials/{slug}/elsewhere`: the forms for readings from elsewhere and grades by eye.

use super::Known;
use super::sheet::Sheet;
use crate::app::App;
use crate::assets::Assets;
use crate::error::Error;
use crate::form::Problems;
use crate::text;
use crate::text::elsewhere as say;
use askama::Template;
use axum::extract::{Path, State};
use axum::http::StatusCode;
use axum::response::{Html, IntoResponse, Response};
use report::table::{self, EyeGradeRow, ReadingRow};
use report::words;
use trial::{Reading, Source, Trial};

/// The lights and observers to choose from.
pub(crate) const VIEWS: [&str; 7] = [
    "D65/10", "D65/2", "D50/2", "D50/10", "A/10", "FL2/10", "FL11/10",
];
const GRADES: [&str; 9] = ["5", "4-5", "4", "3-4", "3", "2-3", "2", "1-2", "1"];

/// A grade by eye as it was typed.
#[derive(Debug, Clone, Default)]
pub(crate) struct GradeForm {
    pub(crate) piece: String,
    pub(crate) stage: String,
    pub(crate) scale: String,
    pub(crate) grade: String,
    pub(crate) against: String,
    pub(crate) by: String,
    pub(crate) light: String,
    pub(crate) on: String,
    pub(crate) remark: String,
}

#[derive(Template)]
#[template(path = "elsewhere/new.html")]
struct NewPage<'a> {
    assets: &'static Assets,
    token: &'a str,
    trial: &'a Trial,
    sheet: &'a Sheet,
    grade: &'a GradeForm,
    problems: &'a Problems,
    views: [&'static str; 7],
    grades: [&'static str; 9],
    readings: Vec<(i64, ReadingRow)>,
    eye_grades: Vec<(i64, EyeGradeRow)>,
}

pub(crate) async fn page(
    State(app): State<App>,
    Path(slug): Path<String>,
) -> Result<Response, Error> {
    let known = app.at_bench(move |bench| Known::of(bench, &slug)).await?;
    let stage = known.last_stage;
    let grade = GradeForm {
        stage: stage.to_string(),
        ..GradeForm::default()
    };
    show(
        &app,
        &known,
        &Sheet::empty(stage),
        &grade,
        &Problems::default(),
    )
}

/// The page with what was typed and what is wrong with it.
pub(crate) fn show(
    app: &App,
    known: &Known,
    sheet: &Sheet,
    grade: &GradeForm,
    problems: &Problems,
) -> Result<Response, Error> {
    let trial = &known.trial;
    let added: Vec<&Reading> = known
        .readings
        .iter()
        .filter(|r| r.source != Source::Photo)
        .collect();
    let page = NewPage {
        assets: Assets::get(),
        token: app.token.as_str(),
        trial,
        sheet,
        grade,
        problems,
        views: VIEWS,
        grades: GRADES,
        readings: added
            .into_iter()
            .flat_map(|r| {
                table::readings(trial, std::slice::from_ref(r))
                    .into_iter()
                    .map(|row| (r.id.0, row))
            })
            .collect(),
        eye_grades: known
            .eye_grades
            .iter()
            .flat_map(|g| {
                table::eye_grades(trial, std::slice::from_ref(g))
                    .into_iter()
                    .map(|row| (g.id.0, row))
            })
            .collect(),
    };
    let status = if problems.is_empty() {
        StatusCode::OK
    } else {
        StatusCode::UNPROCESSABLE_ENTITY
    };
    Ok((status, Html(page.render()?)).into_response())
}

impl NewPage<'_> {
    /// A piece with its role and arm, for a list to choose from.
    fn about(&self, piece: &trial::Piece) -> String {
        let arm = self
            .trial
            .arm(piece.arm)
            .map_or("", |arm| arm.name.as_str());
        text::elsewhere::of(&piece.code, words::role(piece.role), arm)
    }
}
