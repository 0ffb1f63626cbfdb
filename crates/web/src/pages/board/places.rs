//! `GET /trials/{slug}/boards?paper=a4`: the plan's boards, each window with its piece.

use super::{paper, planned, to_print};
use crate::app::App;
use crate::error::Error;
use crate::text;
use axum::extract::{Path, Query, State};
use axum::response::Response;
use photo::board::{Board, Kind, Printed};
use report::board::boards;
use serde::Deserialize;
use trial::{Trial, plan::Order};

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
    let (trial, from) = app.at_bench(move |bench| planned(bench, &slug)).await?;
    let paper = paper(wanted.paper.as_deref());
    let order = from.plan.order();
    let pages: Vec<(Printed, Vec<(usize, String)>)> = order
        .boards
        .iter()
        .enumerate()
        .map(|(i, windows)| {
            let kind = if *windows > 6 {
                Kind::Twelve
            } else {
                Kind::Six
            };
            let printed = Printed::new(Board { kind, paper }, Some(&trial.slug), None);
            (printed, places(&trial, &order, i + 1))
        })
        .collect();
    Ok(to_print(boards(paper, &pages)))
}

/// Windows of a board with the piece's code and its tag's.
fn places(trial: &Trial, order: &Order, board: usize) -> Vec<(usize, String)> {
    let here = order.pieces.iter().filter(|piece| piece.board == board);
    here.map(|allotted| {
        let code = &allotted.piece.code;
        let known = trial.pieces.iter().find(|piece| piece.code == *code);
        let words = match known {
            Some(piece) => text::board::tag(code, piece.tag),
            None => code.clone(),
        };
        (allotted.window, words)
    })
    .collect()
}
