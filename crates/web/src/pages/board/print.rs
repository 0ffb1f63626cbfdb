//! `GET /board?windows=6&paper=a4&trial=slug&stage=2`: a board to print.

use super::{paper, to_print};
use axum::extract::Query;
use axum::response::Response;
use photo::board::{Board, Kind, Printed};
use serde::Deserialize;

/// Which board; what is missing or unknown is taken as six windows, A4, any trial.
#[derive(Deserialize)]
pub(crate) struct Wanted {
    windows: Option<String>,
    paper: Option<String>,
    trial: Option<String>,
    stage: Option<String>,
}

pub(crate) async fn page(Query(wanted): Query<Wanted>) -> Response {
    let kind = match wanted.windows.as_deref() {
        Some("12") => Kind::Twelve,
        _ => Kind::Six,
    };
    let board = Board {
        kind,
        paper: paper(wanted.paper.as_deref()),
    };
    let stage = wanted.stage.and_then(|stage| stage.parse().ok());
    let printed = Printed::new(board, wanted.trial.as_deref(), stage);
    to_print(report::board::board(&printed))
}
