//! `GET /trials/{slug}/photos/new`: the form for photos.

use crate::app::App;
use crate::assets::Assets;
use crate::error::Error;
use crate::form::Problems;
use crate::pages::chart::{self, Choice};
use crate::text::photo as say;
use crate::upload::{MOST_BYTES, Upload};
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
    pub(crate) typed: &'a Typed,
    pub(crate) charts: &'a [Choice],
    pub(crate) problems: &'a Problems,
    pub(crate) most_bytes: usize,
    /// How to take refused photos again, step by step.
    pub(crate) retake: Vec<&'static str>,
    /// How many photos of the form were kept though others were refused.
    pub(crate) kept: usize,
}

/// What a person typed into the form, or what it opens with.
#[derive(Default)]
pub(crate) struct Typed {
    stage: String,
    /// Whether a stage printed on a board goes before the one typed.
    by_board: bool,
    corners: String,
    pub(crate) chart: String,
}

impl Typed {
    pub(crate) fn of(form: &Upload) -> Self {
        Self {
            stage: form.text("stage"),
            by_board: !form.text("by-board").is_empty(),
            corners: form.text("corners"),
            chart: form.text("chart"),
        }
    }
}

impl<'a> NewPage<'a> {
    pub(crate) fn of(
        app: &'a App,
        trial: &'a Trial,
        typed: &'a Typed,
        charts: &'a [Choice],
        problems: &'a Problems,
    ) -> Self {
        Self {
            assets: Assets::get(),
            token: app.token.as_str(),
            trial,
            typed,
            charts,
            problems,
            most_bytes: MOST_BYTES,
            retake: Vec::new(),
            kept: 0,
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
    let typed = Typed {
        stage,
        by_board: true,
        ..Typed::default()
    };
    let page = NewPage::of(&app, &trial, &typed, &charts, &problems);
    Ok(Html(page.render()?))
}
