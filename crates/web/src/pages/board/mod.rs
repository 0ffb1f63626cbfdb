//! Boards and tags to be printed.

pub(crate) mod choose;
pub(crate) mod print;
pub(crate) mod tags;

use axum::http::{HeaderValue, header};
use axum::response::{Html, IntoResponse, Response};
use photo::board::Paper;

/// A page to print has no scripts and fetches nothing; its style sheet is inside it.
const POLICY: &str = "default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

/// The paper of a name; A4 where it is another.
fn paper(name: Option<&str>) -> Paper {
    match name {
        Some("letter") => Paper::Letter,
        _ => Paper::A4,
    }
}

/// A page to print.
fn to_print(html: String) -> Response {
    let mut response = Html(html).into_response();
    response.headers_mut().insert(
        header::CONTENT_SECURITY_POLICY,
        HeaderValue::from_static(POLICY),
    );
    response
}
