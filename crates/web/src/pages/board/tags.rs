//! `GET /trials/{slug}/tags?paper=a4&size=strip`: the tags of a trial's pieces to cut out.

use super::{paper, to_print};
use crate::app::App;
use crate::error::Error;
use axum::extract::{Path, Query, State};
use axum::response::Response;
use report::label::{Tag, TagSize, tags};
use serde::Deserialize;

/// Paper and size; A4 and cards for the board where none is named.
#[derive(Deserialize)]
pub(crate) struct Wanted {
    paper: Option<String>,
    size: Option<String>,
}

pub(crate) async fn page(
    State(app): State<App>,
    Path(slug): Path<String>,
    Query(wanted): Query<Wanted>,
) -> Result<Response, Error> {
    let trial = app
        .at_bench(move |bench| crate::pages::trial::find(bench, &slug))
        .await?;
    let size = wanted.size.as_deref().and_then(TagSize::named);
    Ok(to_print(tags(
        paper(wanted.paper.as_deref()),
        size.unwrap_or_default(),
        &Tag::of(&trial),
    )))
}
