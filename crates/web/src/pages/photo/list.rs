//! `GET /trials/{slug}/photos`: all photos of a trial and how far they have come.

use crate::app::App;
use crate::assets::Assets;
use crate::error::Error;
use crate::progress::{self, Status};
use crate::text::photo as say;
use askama::Template;
use axum::extract::{Path, State};
use axum::response::Html;
use report::words;
use trial::Trial;

#[derive(Template)]
#[template(path = "photo/list.html")]
struct ListPage<'a> {
    assets: &'static Assets,
    token: &'a str,
    trial: &'a Trial,
    photos: &'a [Card],
    done: usize,
    sentence: String,
    /// Whether anything will change without the person.
    going_on: bool,
}

struct Card {
    when: String,
    name: String,
    status: Status,
    /// Whether its pieces are marked, so that it can be read again.
    is_marked: bool,
}

pub(crate) async fn page(
    State(app): State<App>,
    Path(slug): Path<String>,
) -> Result<Html<String>, Error> {
    let (trial, mut photos) = app
        .at_bench(move |bench| {
            let trial = crate::pages::trial::find(bench, &slug)?;
            let photos = bench.photos(trial.id)?;
            Ok((trial, photos))
        })
        .await?;
    // The newest first: they are those that are waited for.
    photos.reverse();
    let cards: Vec<Card> = photos
        .into_iter()
        .map(|photo| Card {
            when: words::stage_heading(photo.stage),
            status: app.progress.of(&photo),
            is_marked: !photo.areas.is_empty(),
            name: photo.name,
        })
        .collect();
    let statuses: Vec<Status> = cards.iter().map(|card| card.status.clone()).collect();
    let page = ListPage {
        assets: Assets::get(),
        token: app.token.as_str(),
        trial: &trial,
        photos: &cards,
        done: statuses.iter().filter(|status| status.done).count(),
        sentence: progress::told(&statuses),
        going_on: statuses
            .iter()
            .any(|status| ["waiting", "reading"].contains(&status.state)),
    };
    Ok(Html(page.render()?))
}
