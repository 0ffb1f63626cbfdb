//! `GET /photos/{id}/preview.jpg`: the upright photo for a screen; `?small` for lists.

use crate::app::{App, blocking};
use crate::error::Error;
use crate::previews::{LARGE_PX, SMALL_PX};
use crate::text;
use axum::extract::{Path, RawQuery, State};
use axum::http::{HeaderMap, StatusCode, header};
use axum::response::{IntoResponse, Response};
use std::sync::Arc;
use trial::PhotoId;

pub(crate) async fn picture(
    State(app): State<App>,
    Path(id): Path<i64>,
    RawQuery(query): RawQuery,
    headers: HeaderMap,
) -> Result<Response, Error> {
    let longest_px = if query.as_deref() == Some("small") {
        SMALL_PX
    } else {
        LARGE_PX
    };
    let hash = app
        .at_bench(move |bench| {
            bench
                .photo(PhotoId(id))?
                .map(|photo| photo.hash)
                .ok_or(Error::NotFound(text::photo::there_is_no_such_photo()))
        })
        .await?;
    let tag = format!("\"{hash}-{longest_px}\"");
    if headers
        .get(header::IF_NONE_MATCH)
        .is_some_and(|v| v.as_bytes() == tag.as_bytes())
    {
        return Ok((StatusCode::NOT_MODIFIED, [(header::ETAG, tag)]).into_response());
    }
    let jpeg = match app.previews.kept(&hash, longest_px) {
        Some(jpeg) => jpeg,
        None => {
            let name = hash.clone();
            let bytes = app
                .at_bench(move |bench| Ok(bench.photo_bytes(&name)?))
                .await?;
            let previews = Arc::clone(&app.previews);
            blocking(move || previews.make(&hash, longest_px, &bytes)).await??
        }
    };
    Ok((
        [
            (header::CONTENT_TYPE, "image/jpeg".to_owned()),
            (header::ETAG, tag),
        ],
        jpeg,
    )
        .into_response())
}
