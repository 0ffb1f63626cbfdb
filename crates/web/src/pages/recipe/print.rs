//! `GET /recipes/{slug}/sheet?revision=2&paper=letter`: the run sheet on paper, with room to write.

use crate::app::App;
use crate::error::Error;
use crate::pages::board::{paper, to_print};
use crate::text;
use axum::extract::{Path, Query, State};
use axum::response::Response;
use dyeing::{Plan, run::RunSheet};
use report::run_sheet::{PrintedSheet, run_sheet};
use serde::Deserialize;

#[derive(Deserialize)]
pub(crate) struct Wanted {
    revision: Option<u32>,
    paper: Option<String>,
}

pub(crate) async fn page(
    State(app): State<App>,
    Path(slug): Path<String>,
    Query(wanted): Query<Wanted>,
) -> Result<Response, Error> {
    let kept = app
        .at_bench(move |bench| super::find(bench, &slug, wanted.revision))
        .await?;
    let plan = Plan::of(&kept.recipe).map_err(Error::broken)?;
    let sheet = RunSheet::of(&plan);
    let printed = PrintedSheet {
        title: &plan.name,
        about: &sheet.about,
        more: text::recipe::recipe_revision_day_and_name(kept.number),
        cautions: super::amounts::cautions(&sheet.cautions),
        steps: &sheet.steps,
        notes: Vec::new(),
        whole: sheet.departures.clone(),
        paper: paper(wanted.paper.as_deref()),
    };
    Ok(to_print(run_sheet(&printed).map_err(Error::broken)?))
}
