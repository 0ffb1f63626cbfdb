//! Pages that are changed once more after they were made.

use crate::error::Error;
use crate::text;
use axum::body::{Body, Bytes, to_bytes};
use axum::extract::Request;
use axum::http::{HeaderValue, header, response::Parts};
use axum::middleware::Next;
use axum::response::{IntoResponse, Response};
use http_body_util::LengthLimitError;

/// No page is longer; instead of one that is, a page says so.
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
            let cause = error.into_inner();
            Err(match cause.is::<LengthLimitError>() {
                true => Error::TooLong(text::error::this_page_would_be_too_long()).into_response(),
                false => Error::broken(cause).into_response(),
            })
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::error::dress;
    use axum::Router;
    use axum::http::StatusCode;
    use axum::middleware::from_fn;
    use axum::response::Html;
    use axum::routing::get;
    use tower::ServiceExt;

    #[tokio::test]
    async fn instead_of_a_page_that_is_too_long_one_says_so() {
        let of = |bytes: usize| get(move || async move { Html("a".repeat(bytes)) });
        let app = Router::new()
            .route("/long", of(MOST_BYTES + 1))
            .route("/fits", of(MOST_BYTES))
            .layer(from_fn(typeset))
            .layer(from_fn(dress));
        let answer = |path: &str| {
            let request = Request::get(path).body(Body::empty()).unwrap();
            app.clone().oneshot(request)
        };
        let long = answer("/long").await.unwrap();
        assert_eq!(long.status(), StatusCode::INTERNAL_SERVER_ERROR);
        let length = long.headers()[header::CONTENT_LENGTH].clone();
        let page = to_bytes(long.into_body(), MOST_BYTES).await.unwrap();
        assert_eq!(length, page.len().to_string());
        let page = String::from_utf8_lossy(&page);
        assert!(page.contains("This page would be too long"), "{page}");
        let fits = answer("/fits").await.unwrap();
        assert_eq!(fits.status(), StatusCode::OK);
        let page = to_bytes(fits.into_body(), MOST_BYTES + 1).await.unwrap();
        assert_eq!(page.len(), MOST_BYTES);
    }
}
