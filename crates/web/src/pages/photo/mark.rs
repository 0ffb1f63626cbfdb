//! `POST /trials/{slug}/photos/{id}/areas`: notes where the pieces lie and has the photo read.

use super::show::{Seen, ShowPage};
use crate::app::{App, now};
use crate::areas;
use crate::error::Error;
use crate::form::{Problems, Signed};
use crate::text;
use askama::Template;
use axum::extract::{Path, State};
use axum::http::StatusCode;
use axum::response::{Html, IntoResponse, Redirect, Response};
use trial::{Photo, PhotoArea, Trial};

pub(crate) async fn act(
    State(app): State<App>,
    Path((slug, id)): Path<(String, i64)>,
    form: Signed,
) -> Result<Response, Error> {
    let (trial, photo, seen) = app
        .at_bench(move |bench| {
            let (trial, photo) = super::find(bench, &slug, id)?;
            let seen = Seen::of(bench, &photo)?;
            Ok((trial, photo, seen))
        })
        .await?;
    let marked = match marked(&trial, &photo, &form) {
        Ok(marked) => marked,
        Err(problems) => {
            let typed = |piece| form.text(&field(piece));
            let page = ShowPage::of(&app, &trial, &photo, seen, typed, &problems);
            return Ok((StatusCode::UNPROCESSABLE_ENTITY, Html(page.render()?)).into_response());
        }
    };
    app.at_bench(move |bench| Ok(bench.mark_areas(photo.id, marked, &now())?))
        .await?;
    app.progress.changed();
    app.read_waiting_a_while().await;
    Ok(Redirect::to(&format!("/trials/{}/photos/{id}", trial.slug)).into_response())
}

fn field(piece: i64) -> String {
    format!("area-{piece}")
}

fn marked(trial: &Trial, photo: &Photo, form: &Signed) -> Result<Vec<PhotoArea>, Problems> {
    let mut problems = Problems::default();
    let mut marked = Vec::new();
    for piece in &trial.pieces {
        let name = field(piece.id.0);
        let text = form.text(&name);
        if text.is_empty() {
            continue;
        }
        match areas::parse(&text, photo.width, photo.height) {
            Ok(polygon) => marked.push(PhotoArea {
                piece: piece.id,
                polygon,
            }),
            Err(message) => problems.add(name, format!("{}: {message}", piece.code)),
        }
    }
    if marked.is_empty() && problems.is_empty() {
        problems.add("areas", text::photo::mark_the_area_of_one_piece());
    }
    if problems.is_empty() {
        Ok(marked)
    } else {
        Err(problems)
    }
}
