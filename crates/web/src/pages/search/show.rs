//! `GET /search?q=words`, `?lab=40 20 10&view=D65/10` or `?hex=#7a3b2c`: what has the words, or readings near the
//! colour; with `.json`, the same as data.

use super::ask::{Asked, Wanted};
use crate::app::App;
use crate::assets::Assets;
use crate::error::Error;
use crate::form::Problems;
use crate::pages::elsewhere::new::VIEWS;
use crate::text;
use crate::text::search as say;
use askama::Template;
use axum::Json;
use axum::extract::{Query, State};
use axum::http::StatusCode;
use axum::response::{Html, IntoResponse, Response};
use colour::Lab;
use report::{swatch, words};
use serde_json::json;
use store::{Found, FoundIn, NearReading};
use trial::near::FURTHEST_DE00;

/// So many readings near a colour are shown.
const MOST_NEAR: usize = 24;
/// What the colour field starts with: a browser's always has a value.
const PICKED: &str = "#7a3b2c";

#[derive(Template)]
#[template(path = "search/show.html")]
struct ShowPage<'a> {
    assets: &'static Assets,
    problems: &'a Problems,
    words: &'a str,
    lab: &'a str,
    hex: &'a str,
    view: &'a str,
    views: [&'static str; 7],
    found: Option<Vec<FoundRow>>,
    near: Option<Near>,
    furthest: f64,
}

struct FoundRow {
    /// What it is, as data name it.
    kind: &'static str,
    /// The same in words.
    said: &'static str,
    address: String,
    title: String,
    around: String,
}

/// Readings near a colour.
struct Near {
    swatch: String,
    asked: String,
    view: &'static str,
    rows: Vec<NearRow>,
}

struct NearRow {
    swatch: String,
    de00: String,
    numbers: String,
    reading: NearReading,
    stage: String,
}

pub(crate) async fn page(
    State(app): State<App>,
    Query(wanted): Query<Wanted>,
) -> Result<Response, Error> {
    let mut problems = Problems::default();
    let asked = wanted.asked(&mut problems);
    let (found, near) = look(&app, &asked).await?;
    let hex = wanted.hex.as_deref().unwrap_or_default();
    let page = ShowPage {
        assets: Assets::get(),
        problems: &problems,
        words: wanted.q.as_deref().unwrap_or_default(),
        lab: wanted.lab.as_deref().unwrap_or_default(),
        hex: swatch::lab_of_hex(hex).map_or(PICKED, |_| hex),
        view: wanted.view.as_deref().unwrap_or(VIEWS[0]),
        views: VIEWS,
        found: found.map(|found| found.into_iter().map(FoundRow::of).collect()),
        near,
        furthest: FURTHEST_DE00,
    };
    let html = Html(page.render()?);
    Ok(if problems.is_empty() {
        html.into_response()
    } else {
        (StatusCode::UNPROCESSABLE_ENTITY, html).into_response()
    })
}

pub(crate) async fn data(
    State(app): State<App>,
    Query(wanted): Query<Wanted>,
) -> Result<Json<serde_json::Value>, Error> {
    let mut problems = Problems::default();
    let asked = wanted.asked(&mut problems);
    if let Some((_, message)) = problems.all().first() {
        return Err(Error::Malformed(message.clone()));
    }
    let (found, near) = look(&app, &asked).await?;
    let found = found.unwrap_or_default().into_iter().map(FoundRow::of);
    let near = near.map_or(Vec::new(), |near| near.rows);
    Ok(Json(json!({
        "found": found.map(|row| json!({
            "kind": row.kind, "address": row.address, "title": row.title, "around": row.around,
        })).collect::<Vec<_>>(),
        "near": near.iter().map(|NearRow { reading: n, .. }| json!({
            "de00": n.de00, "lab": n.lab, "trial": n.trial.0, "arm": n.arm, "piece": n.piece,
            "stage": n.stage, "source": n.source,
        })).collect::<Vec<_>>(),
    })))
}

/// What has the words, or what lies near the colour.
async fn look(app: &App, asked: &Asked) -> Result<(Option<Vec<Found>>, Option<Near>), Error> {
    match asked {
        Asked::Nothing => Ok((None, None)),
        Asked::Words(words) => {
            let words = words.clone();
            let found = app.at_bench(move |bench| Ok(bench.search(&words)?)).await?;
            Ok((Some(found), None))
        }
        Asked::Colour { lab, view } => {
            let (lab, view) = (*lab, *view);
            let near = app
                .at_bench(move |bench| Ok(bench.readings_near(lab, view, MOST_NEAR)?))
                .await?;
            Ok((None, Some(Near::of(lab, view, near))))
        }
    }
}

impl FoundRow {
    fn of(found: Found) -> Self {
        let (kind, said, address) = match found.place {
            FoundIn::Trial(slug) => ("trial", say::a_trial(), format!("/trials/{slug}")),
            FoundIn::Plan(slug) => ("plan", say::a_plan(), format!("/plans/{slug}")),
            FoundIn::Recipe(slug) => ("recipe", say::a_recipe(), format!("/recipes/{slug}")),
            FoundIn::Run(id) => ("run", say::a_run(), format!("/runs/{id}")),
            FoundIn::Material(id) => ("material", say::a_material(), format!("/materials/{id}")),
        };
        Self {
            kind,
            said,
            address,
            title: found.title,
            around: found.around,
        }
    }
}

fn lab_of([l, a, b]: [f64; 3]) -> Lab {
    Lab::new(l, a, b)
}

impl Near {
    fn of(lab: [f64; 3], view: &'static str, near: Vec<NearReading>) -> Self {
        Self {
            swatch: swatch::svg(lab_of(lab), text::search::asked_for()),
            asked: swatch::numbers(lab_of(lab)),
            view,
            rows: near.into_iter().map(NearRow::of).collect(),
        }
    }
}

impl NearRow {
    fn of(reading: NearReading) -> Self {
        let lab = lab_of(reading.lab);
        Self {
            swatch: swatch::svg(lab, &text::search::piece_2(&reading.piece)),
            de00: words::number(reading.de00),
            numbers: swatch::numbers(lab),
            stage: words::stage(reading.stage),
            reading,
        }
    }
}
