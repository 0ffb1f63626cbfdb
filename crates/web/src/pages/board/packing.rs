//! `GET /trials/{slug}/packing`: what has to lie ready, to print and tick off.

use super::planned;
use crate::app::App;
use crate::assets::Assets;
use crate::error::Error;
use crate::text::board as say;
use askama::Template;
use axum::extract::{Path, State};
use axum::response::Html;
use trial::{Trial, plan::Packing};

#[derive(Template)]
#[template(path = "board/packing.html")]
struct PackingPage<'a> {
    assets: &'static Assets,
    trial: &'a Trial,
    packing: Packing,
    seed: u32,
    /// Boards of six windows.
    six: usize,
    /// Boards of twelve windows.
    twelve: usize,
    labels: usize,
    stages: String,
}

pub(crate) async fn page(
    State(app): State<App>,
    Path(slug): Path<String>,
) -> Result<Html<String>, Error> {
    let (trial, from) = app.at_bench(move |bench| planned(bench, &slug)).await?;
    let packing = from.plan.packing(&from.plan.order());
    let of = |twelve: bool| {
        packing
            .boards
            .iter()
            .filter(|n| (**n > 6) == twelve)
            .count()
    };
    let page = PackingPage {
        assets: Assets::get(),
        trial: &trial,
        six: of(false),
        twelve: of(true),
        labels: trial.pieces.len(),
        seed: from.plan.seed,
        stages: from
            .plan
            .looked_at()
            .into_iter()
            .map(report::words::stage)
            .collect::<Vec<_>>()
            .join(", "),
        packing,
    };
    Ok(Html(page.render()?))
}
