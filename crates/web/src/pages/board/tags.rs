//! `GET /trials/{slug}/tags?paper=a4`: the tags of a trial's pieces to cut out.

use super::{paper, to_print};
use crate::app::App;
use crate::error::Error;
use axum::extract::{Path, Query, State};
use axum::response::Response;
use report::board::{Tag, tags};
use serde::Deserialize;

/// The paper; A4 where none is named.
#[derive(Deserialize)]
pub(crate) struct Wanted {
    paper: Option<String>,
}

pub(crate) async fn page(
    State(app): State<App>,
    Path(slug): Path<String>,
    Query(wanted): Query<Wanted>,
) -> Result<Response, Error> {
    let trial = app
        .at_bench(move |bench| crate::pages::trial::find(bench, &slug))
        .await?;
    Ok(to_print(tags(
        paper(wanted.paper.as_deref()),
        &Tag::of(&trial),
    )))
}
