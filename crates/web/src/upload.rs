//! A photo on its way in, bounded before anything looks at it.

use crate::app::App;
use crate::error::Error;
use crate::token;
use axum::extract::multipart::{Field, Multipart, MultipartError};
use axum::extract::{FromRequest, Request};
use axum::http::{HeaderMap, StatusCode, header};
use http_body_util::BodyExt;

/// The largest photo file taken, bytes: 80 MiB, some three times the largest that phones make.
pub const MOST_BYTES: usize = 80 * 1024 * 1024;

/// Room for the form around the file, bytes.
pub(crate) const FORM_BYTES: usize = 64 * 1024;

/// The text fields of the form, bytes each.
const MOST_TEXT: usize = 4096;

/// An upload form that carries this process's token.
#[derive(Default)]
pub(crate) struct Upload {
    pub(crate) stage: String,
    pub(crate) corners: String,
    /// What the person calls the set-up.
    pub(crate) name: String,
    /// Name and content of each file that was chosen.
    pub(crate) files: Vec<(String, Vec<u8>)>,
}

/// The sentence for a file that is too large.
pub(crate) fn too_large() -> String {
    format!(
        "This file is larger than {} MB. Send the photo as the phone saved it, a JPEG, not a film or a raw file.",
        MOST_BYTES / 1024 / 1024
    )
}

impl Upload {
    /// Reads the form. The token comes before the file, in the form or in a header, so that nothing
    /// is taken in for a stranger. Of all files together, `most` bytes are taken.
    pub(crate) async fn receive(
        app: &App,
        headers: &HeaderMap,
        request: Request,
        most: usize,
    ) -> Result<Self, Error> {
        if announced(headers) > (most + FORM_BYTES) as u64 {
            discard(request).await;
            return Err(Error::TooLarge(too_large()));
        }
        let mut form = Multipart::from_request(request, app)
            .await
            .map_err(|_| broken_off())?;
        let mut signed = headers
            .get(token::HEADER)
            .and_then(|v| v.to_str().ok())
            .is_some_and(|given| app.token.is(given));
        let mut upload = Self::default();
        while let Some(field) = form.next_field().await.map_err(malformed)? {
            match field.name().unwrap_or("") {
                token::FIELD => signed = signed || app.token.is(&text(field).await?),
                "stage" => upload.stage = text(field).await?,
                "corners" => upload.corners = text(field).await?,
                "name" => upload.name = text(field).await?,
                "photo" if signed => {
                    let name = file_name(field.file_name().unwrap_or(""));
                    let bytes = content(field, MOST_BYTES).await?;
                    if !(name.is_empty() && bytes.is_empty()) {
                        upload.files.push((name, bytes));
                    }
                }
                "photo" => return Err(Error::Stale),
                _ => {}
            }
        }
        if signed {
            Ok(upload)
        } else {
            Err(Error::Stale)
        }
    }
}

/// The last part of whatever path a browser sends, without control characters, 120 letters at most.
fn file_name(sent: &str) -> String {
    sent.rsplit(['/', '\\'])
        .next()
        .unwrap_or("")
        .chars()
        .filter(|c| !c.is_control())
        .take(120)
        .collect()
}

async fn text(field: Field<'_>) -> Result<String, Error> {
    let bytes = content(field, MOST_TEXT).await?;
    Ok(String::from_utf8_lossy(&bytes).trim().to_owned())
}

async fn content(mut field: Field<'_>, most: usize) -> Result<Vec<u8>, Error> {
    let mut bytes = Vec::new();
    while let Some(chunk) = field.chunk().await.map_err(malformed)? {
        if bytes.len() + chunk.len() > most {
            return Err(Error::TooLarge(too_large()));
        }
        bytes.extend_from_slice(&chunk);
    }
    Ok(bytes)
}

/// The size of the request as its sender gives it, bytes.
fn announced(headers: &HeaderMap) -> u64 {
    headers
        .get(header::CONTENT_LENGTH)
        .and_then(|v| v.to_str().ok()?.parse().ok())
        .unwrap_or(0)
}

/// Lets a request that is too large run into nothing: a browser shows the answer only if it could
/// send everything. Gives up at ten times the size that is taken.
async fn discard(request: Request) {
    let mut body = request.into_body();
    let mut left = 10 * MOST_BYTES;
    while let Some(Ok(frame)) = body.frame().await {
        let size = frame.data_ref().map_or(0, |data| data.len());
        let Some(rest) = left.checked_sub(size) else {
            return;
        };
        left = rest;
    }
}

fn malformed(error: MultipartError) -> Error {
    if error.status() == StatusCode::PAYLOAD_TOO_LARGE {
        Error::TooLarge(too_large())
    } else {
        broken_off()
    }
}

fn broken_off() -> Error {
    Error::Malformed(
        "The upload broke off or came in a form that can\u{2019}t be read. Choose the photo and send it again."
            .to_owned(),
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn file_names_lose_their_paths() {
        assert_eq!(file_name("../../etc/p\u{0}hoto.jpg"), "photo.jpg");
        assert_eq!(file_name("C:\\pictures\\a.jpg"), "a.jpg");
        assert_eq!(file_name(&"x".repeat(500)).len(), 120);
    }
}
