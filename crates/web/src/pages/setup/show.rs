//! `GET /setup`: what was found of the set-up, and the form for a check; `/setup.json` as data.

use crate::app::App;
use crate::assets::Assets;
use crate::error::Error;
use crate::form::Problems;
use crate::text;
use crate::text::setup as say;
use askama::Template;
use axum::Json;
use axum::extract::State;
use axum::response::Html;
use store::KeptSetupCheck;
use trial::setup::{FEWEST_PHOTOS, SetupCheck};

#[derive(Template)]
#[template(path = "setup/show.html")]
struct ShowPage<'a> {
    assets: &'static Assets,
    token: &'a str,
    name: &'a str,
    problems: &'a Problems,
    fewest_photos: usize,
    latest: Option<Found>,
    earlier: Vec<Earlier>,
}

/// The newest check, in words.
struct Found {
    name: String,
    when: String,
    photos: usize,
    pieces: usize,
    within: String,
    between: String,
    shares: Vec<(String, String)>,
    table: Vec<[String; 5]>,
    advice: Vec<String>,
}

struct Earlier {
    name: String,
    when: String,
    within: String,
    between: String,
}

pub(crate) async fn page(State(app): State<App>) -> Result<Html<String>, Error> {
    let checks = app.at_bench(|bench| Ok(bench.setup_checks()?)).await?;
    render(&app, checks, "", &Problems::default())
}

pub(crate) async fn data(State(app): State<App>) -> Result<Json<serde_json::Value>, Error> {
    let checks = app.at_bench(|bench| Ok(bench.setup_checks()?)).await?;
    let all: Vec<_> = checks
        .iter()
        .map(|kept| {
            let photos: Vec<_> = kept
                .photos
                .iter()
                .map(|photo| serde_json::json!({ "name": photo.name, "sha256": photo.hash }))
                .collect();
            serde_json::json!({
                "id": kept.id,
                "name": kept.name,
                "view": kept.view,
                "made_at": kept.made_at,
                "photos": photos,
                "check": kept.check,
            })
        })
        .collect();
    Ok(Json(serde_json::json!({ "setup_checks": all })))
}

/// The page with what was typed and what is wrong with it.
pub(crate) fn render(
    app: &App,
    checks: Vec<KeptSetupCheck>,
    name: &str,
    problems: &Problems,
) -> Result<Html<String>, Error> {
    let mut checks = checks.into_iter();
    let page = ShowPage {
        assets: Assets::get(),
        token: app.token.as_str(),
        name,
        problems,
        fewest_photos: FEWEST_PHOTOS,
        latest: checks.next().map(|kept| Found::of(&kept)),
        earlier: checks.map(|kept| Earlier::of(&kept)).collect(),
    };
    Ok(Html(page.render()?))
}

impl Found {
    fn of(kept: &KeptSetupCheck) -> Self {
        let check = &kept.check;
        Self {
            name: kept.name.clone(),
            when: report::words::day(&kept.made_at),
            photos: check.photos,
            pieces: check.pieces,
            within: spread(check.within_sd_de00, check.within_interval),
            between: spread(check.between_sd_de00, check.between_interval),
            shares: check
                .shares
                .iter()
                .map(|share| {
                    let percent = format!("{:.0} %", 100.0 * share.share);
                    (share.cause.to_string(), percent)
                })
                .collect(),
            table: table(check),
            advice: check.advice.clone(),
        }
    }
}

impl Earlier {
    fn of(kept: &KeptSetupCheck) -> Self {
        Self {
            name: kept.name.clone(),
            when: report::words::day(&kept.made_at),
            within: spread(kept.check.within_sd_de00, kept.check.within_interval),
            between: spread(kept.check.between_sd_de00, kept.check.between_interval),
        }
    }
}

fn table(check: &SetupCheck) -> Vec<[String; 5]> {
    check
        .smallest_provable
        .iter()
        .map(|row| {
            [
                row.pieces.to_string(),
                format!("{:.2}", row.changes_de00),
                format!("{:.2}", row.side_by_side_de00),
                format!("{:.2}", row.change_with_keeper_de00),
                format!("{:.2}", row.change_without_keeper_de00),
            ]
        })
        .collect()
}

fn spread(sd: f64, [low, high]: [f64; 2]) -> String {
    text::setup::to(
        format_args!("{sd:.2}"),
        format_args!("{low:.2}"),
        format_args!("{high:.2}"),
    )
}
