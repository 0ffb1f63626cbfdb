//! `GET /photos/{id}/tiles/{column}/{row}`: a square of the upright photo at full size, for the loupe.

use crate::app::{App, blocking};
use crate::error::Error;
use crate::text;
use axum::extract::{Path, State};
use axum::http::header;
use axum::response::{IntoResponse, Response};
use std::sync::Arc;
use trial::PhotoId;

pub(crate) async fn picture(
    State(app): State<App>,
    Path((id, column, row)): Path<(i64, u32, u32)>,
) -> Result<Response, Error> {
    let hash = app
        .at_bench(move |bench| {
            bench
                .photo(PhotoId(id))?
                .map(|photo| photo.hash)
                .ok_or(Error::NotFound(text::photo::there_is_no_such_photo()))
        })
        .await?;
    // One cuts, the others wait for it: a loupe asks for several squares at once.
    let _turn = app.tiles.turn.lock().await;
    let tiles = match app.tiles.kept(&hash) {
        Some(tiles) => tiles,
        None => {
            let name = hash.clone();
            let bytes = app
                .at_bench(move |bench| Ok(bench.photo_bytes(&name)?))
                .await?;
            let kept = Arc::clone(&app.tiles);
            blocking(move || kept.make(&hash, &bytes)).await??
        }
    };
    let at = (column < tiles.columns && row < tiles.rows).then(|| row * tiles.columns + column);
    let jpeg = at
        .and_then(|at| tiles.jpegs.get(at as usize))
        .ok_or(Error::NotFound(
            text::photo::the_photo_doesnt_reach_that_far(),
        ))?;
    Ok((
        [
            (header::CONTENT_TYPE, "image/jpeg"),
            // A photo is never changed, so its squares aren't either.
            (header::CACHE_CONTROL, "private, max-age=86400, immutable"),
        ],
        jpeg.clone(),
    )
        .into_response())
}
