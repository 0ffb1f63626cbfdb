//! `GET /trials/{slug}/photos/new`: the form for a photo.

use crate::app::App;
use crate::assets::Assets;
use crate::error::Error;
use crate::form::Problems;
use crate::pages::chart::{self, Choice};
use crate::upload::MOST_BYTES;
use askama::Template;
use axum::extract::{Path, State};
use axum::response::Html;
use trial::Trial;

#[derive(Template)]
#[template(path = "photo/new.html")]
pub(crate) struct NewPage<'a> {
    pub(crate) assets: &'static Assets,
    pub(crate) token: &'a str,
    pub(crate) trial: &'a Trial,
    pub(crate) stage: &'a str,
    pub(crate) corners: &'a str,
    pub(crate) charts: &'a [Choice],
    pub(crate) problems: &'a Problems,
    pub(crate) most_bytes: usize,
}

impl<'a> NewPage<'a> {
    pub(crate) fn of(
        app: &'a App,
        trial: &'a Trial,
        stage: &'a str,
        corners: &'a str,
        charts: &'a [Choice],
        problems: &'a Problems,
    ) -> Self {
        Self {
            assets: Assets::get(),
            token: app.token.as_str(),
            trial,
            stage,
            corners,
            charts,
            problems,
            most_bytes: MOST_BYTES,
        }
    }
}

pub(crate) async fn page(
    State(app): State<App>,
    Path(slug): Path<String>,
) -> Result<Html<String>, Error> {
    let (trial, stage, charts) = app
        .at_bench(move |bench| {
            let trial = crate::pages::trial::find(bench, &slug)?;
            let photos = bench.photos(trial.id)?;
            // The first photo shows the start; the next is most likely the last stage again or one on.
            let stage = photos.iter().map(|p| p.stage).max().unwrap_or(0);
            // The same chart as last time.
            let charts = chart::choices(bench, photos.last().and_then(|p| p.chart))?;
            Ok((trial, stage.to_string(), charts))
        })
        .await?;
    let problems = Problems::default();
    let page = NewPage::of(&app, &trial, &stage, "", &charts, &problems);
    Ok(Html(page.render()?))
}
