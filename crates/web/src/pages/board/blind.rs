//! `GET /trials/{slug}/blind`: the blind codes, hidden until `POST` opens them;
//! `/trials/{slug}/blind/labels`: labels for the person who folds them.

use super::{paper, planned, to_print};
use crate::app::{App, now};
use crate::assets::Assets;
use crate::error::Error;
use crate::form::Signed;
use crate::text::board as say;
use askama::Template;
use axum::extract::{Path, Query, State};
use axum::response::{Html, Redirect, Response};
use report::label::BlindLabel;
use serde::Deserialize;
use trial::{Trial, plan::Allotted};

#[derive(Template)]
#[template(path = "board/blind.html")]
struct BlindPage<'a> {
    assets: &'static Assets,
    token: &'a str,
    trial: &'a Trial,
    opened_on: Option<String>,
    /// By blind code; empty while they are hidden.
    pieces: Vec<Allotted>,
}

/// The paper; A4 where none is named.
#[derive(Deserialize)]
pub(crate) struct Wanted {
    paper: Option<String>,
}

pub(crate) async fn page(
    State(app): State<App>,
    Path(slug): Path<String>,
) -> Result<Html<String>, Error> {
    let (trial, from) = app.at_bench(move |bench| planned(bench, &slug)).await?;
    let mut pieces = match from.opened_at {
        Some(_) => from.plan.order().pieces,
        None => Vec::new(),
    };
    pieces.sort_by_key(|piece| piece.blind.to_string());
    let page = BlindPage {
        assets: Assets::get(),
        token: app.token.as_str(),
        trial: &trial,
        opened_on: from.opened_at.as_deref().map(report::words::day),
        pieces,
    };
    Ok(Html(page.render()?))
}

pub(crate) async fn open(
    State(app): State<App>,
    Path(slug): Path<String>,
    _form: Signed,
) -> Result<Redirect, Error> {
    let back = format!("/trials/{slug}/blind");
    app.at_bench(move |bench| {
        let (trial, _) = planned(bench, &slug)?;
        Ok(bench.open_blind_codes(trial.id, &now())?)
    })
    .await?;
    Ok(Redirect::to(&back))
}

pub(crate) async fn labels(
    State(app): State<App>,
    Path(slug): Path<String>,
    Query(wanted): Query<Wanted>,
) -> Result<Response, Error> {
    let (_, from) = app.at_bench(move |bench| planned(bench, &slug)).await?;
    let paper = paper(wanted.paper.as_deref());
    Ok(to_print(report::label::blind_labels(
        paper,
        &BlindLabel::of(&from.plan.order()),
    )))
}
