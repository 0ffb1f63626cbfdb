//! A photo on its way in, bounded before anything looks at it.

use crate::app::App;
use crate::error::Error;
use crate::text;
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
const MOST_TEXT: usize = 32 * 1024;

/// The text fields of the form that are looked at.
const MOST_FIELDS: usize = 16;

/// What kind of file a form brings, and how large it may be.
pub(crate) struct Kind {
    /// The form's field with the file.
    field: &'static str,
    most_bytes: usize,
    /// Of all files of the form together, bytes.
    pub(crate) together_bytes: usize,
    /// Whether a file that is too large spoils no other one of the form.
    each_for_itself: bool,
    /// The sentence for a file that is too large.
    pub(crate) too_large: fn() -> &'static str,
}

/// Photos, each of which stands for itself.
pub(crate) const PHOTO: Kind = Kind {
    field: "photo",
    most_bytes: MOST_BYTES,
    together_bytes: 4 * MOST_BYTES,
    each_for_itself: true,
    too_large: text::upload::too_large_for_a_photo,
};

/// The photos of a set-up.
pub(crate) const PHOTOS: Kind = Kind {
    each_for_itself: false,
    together_bytes: crate::pages::setup::MOST_BYTES,
    ..PHOTO
};

/// The largest table of readings that is taken, bytes.
pub(crate) const MOST_TABLE_BYTES: usize = 1024 * 1024;

/// A table of readings.
pub(crate) const TABLE: Kind = Kind {
    field: "table",
    most_bytes: MOST_TABLE_BYTES,
    together_bytes: MOST_TABLE_BYTES,
    each_for_itself: false,
    too_large: text::upload::too_large_for_a_table,
};

/// The largest table of a chart that is taken, bytes.
pub(crate) const MOST_CHART_BYTES: usize = 1024 * 1024;

/// The values of a chart.
pub(crate) const CHART: Kind = Kind {
    field: "chart",
    most_bytes: MOST_CHART_BYTES,
    together_bytes: MOST_CHART_BYTES,
    each_for_itself: false,
    too_large: text::upload::too_large_for_a_chart,
};

impl Kind {
    /// The sentence for a form that is too large.
    fn together_too_large(&self) -> &'static str {
        if self.each_for_itself {
            text::upload::more_than_320_mb_came_at_once()
        } else {
            (self.too_large)()
        }
    }
}

/// An upload form that carries this process's token.
#[derive(Default)]
pub(crate) struct Upload {
    fields: Vec<(String, String)>,
    /// Name and content of each file that was chosen.
    pub(crate) files: Vec<(String, Vec<u8>)>,
    /// Names of the files that were too large, where each stands for itself.
    pub(crate) oversized: Vec<String>,
}

impl Upload {
    /// A field's text without white space around it; empty where it is missing.
    pub(crate) fn text(&self, name: &str) -> String {
        let found = self.fields.iter().find(|(key, _)| key == name);
        found.map_or_else(String::new, |(_, value)| value.clone())
    }

    /// Reads the form. The token comes before the file, in the form or in a header, so that nothing
    /// is taken in for a stranger.
    pub(crate) async fn receive(
        app: &App,
        headers: &HeaderMap,
        request: Request,
        kind: &Kind,
    ) -> Result<Self, Error> {
        if announced(headers) > (kind.together_bytes + FORM_BYTES) as u64 {
            discard(request).await;
            return Err(Error::TooLarge(kind.together_too_large().to_owned()));
        }
        let mut form = Multipart::from_request(request, app)
            .await
            .map_err(|_| broken_off())?;
        let mut signed = headers
            .get(token::HEADER)
            .and_then(|v| v.to_str().ok())
            .is_some_and(|given| app.token.is(given));
        let mut upload = Self::default();
        while let Some(field) = form.next_field().await.map_err(|e| malformed(&e, kind))? {
            let name = field.name().unwrap_or("").to_owned();
            if name == token::FIELD {
                signed = signed || app.token.is(&text(field, kind).await?);
            } else if name == kind.field {
                if !signed {
                    return Err(Error::Stale);
                }
                let name = file_name(field.file_name().unwrap_or(""));
                let bytes = match content(field, kind.most_bytes, kind).await {
                    Err(Error::TooLarge(_)) if kind.each_for_itself => {
                        upload.oversized.push(name);
                        continue;
                    }
                    content => content?,
                };
                if !(name.is_empty() && bytes.is_empty()) {
                    upload.files.push((name, bytes));
                }
            } else if upload.fields.len() < MOST_FIELDS {
                upload.fields.push((name, text(field, kind).await?));
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

async fn text(field: Field<'_>, kind: &Kind) -> Result<String, Error> {
    let bytes = content(field, MOST_TEXT, kind).await?;
    Ok(String::from_utf8_lossy(&bytes).trim().to_owned())
}

async fn content(mut field: Field<'_>, most: usize, kind: &Kind) -> Result<Vec<u8>, Error> {
    let mut bytes = Vec::new();
    let mut is_too_large = false;
    while let Some(chunk) = field.chunk().await.map_err(|e| malformed(&e, kind))? {
        is_too_large |= bytes.len() + chunk.len() > most;
        if is_too_large {
            // The rest runs into nothing: what comes after it may be sound.
            bytes = Vec::new();
        } else {
            bytes.extend_from_slice(&chunk);
        }
    }
    if is_too_large {
        return Err(Error::TooLarge((kind.too_large)().to_owned()));
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

fn malformed(error: &MultipartError, kind: &Kind) -> Error {
    if error.status() == StatusCode::PAYLOAD_TOO_LARGE {
        Error::TooLarge(kind.together_too_large().to_owned())
    } else {
        broken_off()
    }
}

fn broken_off() -> Error {
    Error::Malformed(text::upload::the_upload_broke_off_or_came().to_owned())
}

#[cfg(test)]
impl Upload {
    /// A form with these texts and no file.
    pub(crate) fn with(fields: &[(&str, &str)]) -> Self {
        let owned = |(name, value): &(&str, &str)| ((*name).to_owned(), (*value).to_owned());
        Self {
            fields: fields.iter().map(owned).collect(),
            ..Self::default()
        }
    }
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
