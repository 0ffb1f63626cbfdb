//! What can go wrong with a request, and the page that says so.

use crate::assets::Assets;
use crate::text;
use crate::text::fault as say;
use askama::Template;
use axum::extract::Request;
use axum::http::{HeaderMap, StatusCode, header};
use axum::middleware::Next;
use axum::response::{Html, IntoResponse, Response};

/// Why a request was not done.
#[derive(Debug)]
pub(crate) enum Error {
    /// There is nothing at this address.
    NotFound(&'static str),
    /// Someone may not ask this.
    Forbidden(&'static str),
    /// A form without this process's token.
    Stale,
    /// A form that no page of ours sends.
    Malformed(String),
    /// More bytes than are taken.
    TooLarge(String),
    /// More asked at once than can be served.
    Busy(&'static str),
    /// A photo that can't be read, where no form can show why.
    Refused { code: String, message: String },
    /// What the bench says it can't do, a sentence for the person.
    Bench(String),
    /// A page of more bytes than are sent.
    TooLong(&'static str),
    /// Our own fault. The text is logged, not shown.
    Broken(String),
}

impl Error {
    pub(crate) fn broken(cause: impl std::fmt::Debug) -> Self {
        Self::Broken(format!("{cause:?}"))
    }

    /// A photo that can't be read.
    pub(crate) fn refused(refusal: photo::Refusal) -> Self {
        Self::Refused {
            code: refusal.code.as_str().to_owned(),
            message: refusal.message,
        }
    }

    fn fault(self) -> Fault {
        let (status, code, sentence) = match self {
            Self::NotFound(sentence) => (StatusCode::NOT_FOUND, "not_found", sentence.to_owned()),
            Self::Forbidden(sentence) => (StatusCode::FORBIDDEN, "forbidden", sentence.to_owned()),
            Self::Stale => (
                StatusCode::FORBIDDEN,
                "stale_form",
                text::error::this_page_is_from_before_woadstone().to_owned(),
            ),
            Self::Busy(sentence) => (StatusCode::SERVICE_UNAVAILABLE, "busy", sentence.to_owned()),
            Self::Malformed(sentence) => (StatusCode::BAD_REQUEST, "malformed", sentence),
            Self::TooLarge(sentence) => (StatusCode::PAYLOAD_TOO_LARGE, "too_large", sentence),
            Self::Refused { code, message } => {
                return Fault {
                    status: StatusCode::UNPROCESSABLE_ENTITY,
                    code,
                    sentence: message,
                };
            }
            Self::Bench(sentence) => {
                tracing::error!(sentence, "the bench failed");
                (StatusCode::INTERNAL_SERVER_ERROR, "bench", sentence)
            }
            Self::TooLong(sentence) => {
                tracing::error!("a page is too long");
                let status = StatusCode::INTERNAL_SERVER_ERROR;
                (status, "too_long", sentence.to_owned())
            }
            Self::Broken(cause) => {
                let id = format!("{:08x}", rand::random::<u32>());
                tracing::error!(id, cause, "a request failed");
                (
                    StatusCode::INTERNAL_SERVER_ERROR,
                    "broken",
                    text::error::something_went_wrong_inside_woadstone(&id),
                )
            }
        };
        Fault {
            status,
            code: code.to_owned(),
            sentence,
        }
    }
}

impl From<store::StoreError> for Error {
    fn from(error: store::StoreError) -> Self {
        use store::StoreError::{Input, Trial, Water};
        match error {
            Input { .. } | Trial(_) | Water(_) => Self::Malformed(error.to_string()),
            _ => Self::Bench(error.to_string()),
        }
    }
}

impl From<askama::Error> for Error {
    fn from(error: askama::Error) -> Self {
        Self::broken(error)
    }
}

/// An error as a person or a script is told it; [`dress`] gives it a body.
#[derive(Clone)]
struct Fault {
    status: StatusCode,
    code: String,
    sentence: String,
}

impl IntoResponse for Error {
    fn into_response(self) -> Response {
        let fault = self.fault();
        let mut response = fault.status.into_response();
        response.extensions_mut().insert(fault);
        response
    }
}

#[derive(Template)]
#[template(path = "fault/show.html")]
struct FaultPage<'a> {
    assets: &'static Assets,
    heading: &'static str,
    sentence: &'a str,
}

/// Whether a script asks, rather than a person.
pub(crate) fn wants_json(headers: &HeaderMap) -> bool {
    headers
        .get(header::ACCEPT)
        .and_then(|v| v.to_str().ok())
        .is_some_and(|v| v.contains("application/json"))
}

/// The JSON by which a refusal is told.
pub(crate) fn refusal_json(status: StatusCode, code: &str, message: &str) -> Response {
    let body = serde_json::json!({ "refused": { "code": code, "message": message } });
    (status, axum::Json(body)).into_response()
}

/// Turns a fault into a page, or into JSON for a script; headers already set stay.
pub(crate) async fn dress(request: Request, next: Next) -> Response {
    let json = wants_json(request.headers());
    let response = next.run(request).await;
    let Some(fault) = fault_of(&response) else {
        return response;
    };
    let mut dressed = if json {
        refusal_json(fault.status, &fault.code, &fault.sentence)
    } else {
        fault.page()
    };
    for (name, value) in response.headers() {
        if name != header::CONTENT_TYPE && name != header::CONTENT_LENGTH {
            dressed.headers_mut().append(name, value.clone());
        }
    }
    dressed
}

/// The fault in an answer: one of ours, or a bare refusal by the framework (an address it can't read).
fn fault_of(response: &Response) -> Option<Fault> {
    if let Some(fault) = response.extensions().get::<Fault>() {
        return Some(fault.clone());
    }
    let bare = response
        .headers()
        .get(header::CONTENT_TYPE)
        .is_some_and(|kind| kind.as_bytes().starts_with(b"text/plain"));
    (response.status().is_client_error() && bare).then(|| Fault {
        status: response.status(),
        code: "malformed".to_owned(),
        sentence: text::error::this_request_cant_be_read_start_again().to_owned(),
    })
}

impl Fault {
    fn page(&self) -> Response {
        let page = FaultPage {
            assets: Assets::get(),
            heading: match self.status {
                StatusCode::NOT_FOUND => text::error::nothing_here(),
                StatusCode::FORBIDDEN => text::error::not_done(),
                StatusCode::INTERNAL_SERVER_ERROR => text::error::something_is_wrong(),
                _ => text::error::this_cant_be_taken(),
            },
            sentence: &self.sentence,
        };
        match page.render() {
            Ok(html) => (self.status, Html(html)).into_response(),
            Err(_) => (self.status, self.sentence.clone()).into_response(),
        }
    }
}
