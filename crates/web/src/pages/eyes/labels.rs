//! `GET /trials/{slug}/eyes/{session}/labels?paper=letter`: the codes of a session's cloths, to
//! be folded and stapled by somebody who doesn't judge.

use crate::app::App;
use crate::error::Error;
use crate::pages::board::{paper, to_print};
use crate::text;
use axum::extract::{Path, Query, State};
use axum::response::Response;
use report::label::{BlindLabel, blind_labels};
use serde::Deserialize;
use trial::{Trial, eyes::What};

/// The paper; A4 where none is named.
#[derive(Deserialize)]
pub(crate) struct Wanted {
    paper: Option<String>,
}

pub(crate) async fn page(
    State(app): State<App>,
    Path((slug, session)): Path<(String, i64)>,
    Query(wanted): Query<Wanted>,
) -> Result<Response, Error> {
    let (trial, judging) = app
        .at_bench(move |bench| super::find(bench, &slug, session))
        .await?;
    let labels: Vec<BlindLabel> = judging
        .session
        .cloths()
        .into_iter()
        .map(|cloth| BlindLabel {
            code: cloth.code,
            cloth: name(&trial, cloth.what),
        })
        .collect();
    Ok(to_print(blind_labels(
        paper(wanted.paper.as_deref()),
        &labels,
    )))
}

fn name(trial: &Trial, what: What) -> String {
    let code = |id| {
        trial
            .piece(id)
            .map_or_else(String::new, |piece| piece.code.clone())
    };
    match what {
        What::Piece(id) => code(id),
        What::OtherHalf(id) => text::eyes::half(code(id)),
        What::Undyed => text::eyes::undyed_cloth().to_owned(),
    }
}
