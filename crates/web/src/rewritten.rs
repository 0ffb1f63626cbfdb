//! Pages that are changed once more after they were made.

use axum::body::{Body, Bytes, to_bytes};
use axum::extract::Request;
use axum::http::{HeaderValue, header, response::Parts};
use axum::middleware::Next;
use axum::response::Response;

/// No page is longer; one that is isn't sent.
const MOST_BYTES: usize = 64 << 20;

/// The head and the text of a page; anything else comes back as it is.
pub(crate) async fn taken(response: Response) -> Result<(Parts, Bytes), Response> {
    let is_page = response
        .headers()
        .get(header::CONTENT_TYPE)
        .is_some_and(|kind| kind.as_bytes().starts_with(b"text/html"));
    if !is_page {
        return Err(response);
    }
    let (head, body) = response.into_parts();
    match to_bytes(body, MOST_BYTES).await {
        Ok(bytes) => Ok((head, bytes)),
        Err(error) => {
            tracing::error!(?error, "a page is too long");
            Err(Response::from_parts(head, Body::empty()))
        }
    }
}

/// The page with another text.
pub(crate) fn with(mut head: Parts, whole: String) -> Response {
    if let Ok(length) = HeaderValue::from_str(&whole.len().to_string()) {
        head.headers.insert(header::CONTENT_LENGTH, length);
    }
    Response::from_parts(head, Body::from(whole))
}

/// Sets the figures of a page as print does: see [`report::typeset`].
pub(crate) async fn typeset(request: Request, next: Next) -> Response {
    match taken(next.run(request).await).await {
        Ok((head, page)) => with(head, report::typeset(&String::from_utf8_lossy(&page))),
        Err(response) => response,
    }
}
