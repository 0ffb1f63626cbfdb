//! `GET /trials/{slug}`: the trial's page; with `.json` after the slug, the same as data;
//! with `.csv`, its readings as a table.

use crate::app::App;
use crate::assets::Assets;
use crate::error::Error;
use crate::text::trial as say;
use askama::Template;
use axum::Json;
use axum::extract::{Path, State};
use axum::http::header;
use axum::response::{Html, IntoResponse, Response};
use locale::Locale;
use report::eyes::{self, EyeSection};
use report::fade::{self, FadeSection};
use report::parts::{self, PartTable};
use report::staining::{self, StainRow};
use report::swatch::{self, ArmSwatches};
use report::table::{self, ChangeRow, EyeGradeRow, ReadingRow, VerdictRow};
use report::{chart, words};
use store::{RunSummary, Thing};
use trial::{Bath, Departed, Planned, Results, Role, Trial, decide};

#[derive(Template)]
#[template(path = "trial/show.html")]
struct ShowPage<'a> {
    assets: &'static Assets,
    token: &'a str,
    binned: bool,
    trial: &'a Trial,
    undecided: Option<&'a str>,
    planned: Option<&'a Planned>,
    baths: &'a [Bath],
    runs: Vec<RunSummary>,
    departures: &'a [Departed],
    margin: String,
    latest: Vec<VerdictRow>,
    earlier: Vec<VerdictRow>,
    over_rounds: Vec<String>,
    by_eye: Option<EyeSection>,
    plot: String,
    changes: Vec<ChangeRow>,
    fades: Option<FadeSection>,
    stains: Vec<StainRow>,
    about_stains: &'static str,
    stages: Vec<String>,
    swatches: Vec<ArmSwatches>,
    parts: Option<PartTable>,
    pale_shows: &'static str,
    readings: Vec<ReadingRow>,
    eye_grades: Vec<EyeGradeRow>,
    photos: Vec<PhotoCard>,
    arms: Vec<ArmCard<'a>>,
}

struct PhotoCard {
    id: i64,
    when: String,
    name: String,
    state: &'static str,
}

struct ArmCard<'a> {
    name: &'a str,
    treatment: &'a str,
    tests: Vec<&'a str>,
    others: Vec<String>,
}

pub(crate) async fn page(
    State(app): State<App>,
    Path(name): Path<String>,
) -> Result<Response, Error> {
    let (slug, ending) = match name.rsplit_once('.') {
        Some((slug, ending @ ("json" | "csv"))) => (slug.to_owned(), ending.to_owned()),
        _ => (name, String::new()),
    };
    let data = !ending.is_empty();
    let (results, runs, binned) = app
        .at_bench(move |bench| {
            let written = if data {
                Locale::DATA
            } else {
                locale::current()
            };
            let results = locale::within(written, || super::results(bench, &slug))?;
            let runs = bench.runs_of_trial(results.trial.id)?;
            let binned = bench.is_binned(Thing::Trial(&results.trial.slug))?;
            Ok((results, runs, binned))
        })
        .await?;
    if ending == "json" {
        return Ok(Json(results).into_response());
    }
    if ending == "csv" {
        let table = decide::write_csv(&results.trial, &results.readings).map_err(Error::broken)?;
        let kind = [(header::CONTENT_TYPE, "text/csv; charset=utf-8")];
        return Ok((kind, table).into_response());
    }
    Ok(Html(ShowPage::of(&app, &results, runs, binned).render()?).into_response())
}

impl<'a> ShowPage<'a> {
    fn of(app: &'a App, results: &'a Results, runs: Vec<RunSummary>, binned: bool) -> Self {
        let trial = &results.trial;
        let decision = results.decision.clone().unwrap_or_default();
        let (latest, earlier) = table::by_recency(table::verdicts(results));
        Self {
            assets: Assets::get(),
            token: app.token.as_str(),
            binned,
            trial,
            undecided: results.undecided.as_deref(),
            planned: results.planned.as_ref(),
            baths: &results.baths,
            runs,
            departures: &results.departures,
            margin: words::number(trial.margin_de00),
            latest,
            earlier,
            over_rounds: words::over_rounds(&decision),
            by_eye: eyes::section(results),
            plot: chart::change_by_round(trial, &decision),
            changes: table::changes(trial, &decision),
            fades: fade::section(trial, results.fades.as_ref()),
            stains: staining::rows(&results.stains),
            about_stains: staining::about(),
            stages: swatch::stages(&results.readings)
                .into_iter()
                .map(words::stage_heading)
                .collect(),
            swatches: swatch::by_stage(trial, &results.readings),
            parts: parts::by_stage(trial, &results.parts),
            pale_shows: parts::pale_shows(),
            readings: table::readings(trial, &results.readings),
            eye_grades: table::eye_grades(trial, &results.eye_grades),
            photos: results
                .photos
                .iter()
                .map(|p| PhotoCard {
                    id: p.id.0,
                    when: words::stage_heading(p.stage),
                    name: p.name.clone(),
                    state: words::photo_state(&p.state),
                })
                .collect(),
            arms: arms(trial),
        }
    }
}

fn arms(trial: &Trial) -> Vec<ArmCard<'_>> {
    trial
        .arms
        .iter()
        .map(|arm| {
            let (tests, others): (Vec<_>, Vec<_>) =
                trial.pieces_of(arm.id).partition(|p| p.role == Role::Test);
            ArmCard {
                name: &arm.name,
                treatment: &arm.treatment,
                tests: tests.iter().map(|p| p.code.as_str()).collect(),
                others: others
                    .iter()
                    .map(|p| format!("{} {}", words::role(p.role), p.code))
                    .collect(),
            }
        })
        .collect()
}
