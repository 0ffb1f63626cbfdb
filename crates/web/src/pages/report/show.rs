//! `GET /trials/{slug}/report`: one self-contained file, to read, print or keep (`?keep`).

use crate::app::{App, blocking, now};
use crate::error::Error;
use crate::text::trial as say;
use axum::extract::{Path, RawQuery, State};
use axum::http::header;
use axum::response::{Html, IntoResponse, Response};
use report::{Published, PublishedPhoto, publish};
use std::sync::Arc;

/// The longest side of a photo in a report, pixels: sharp over the width of a printed page.
const PHOTO_PX: u32 = 1400;

/// A report has no scripts and fetches nothing; its style sheet is inside it.
const POLICY: &str = "default-src 'none'; img-src data:; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

pub(crate) async fn page(
    State(app): State<App>,
    Path(slug): Path<String>,
    RawQuery(query): RawQuery,
) -> Result<Response, Error> {
    let keep = query.as_deref() == Some("keep");
    let (results, originals) = app
        .at_bench(move |bench| {
            let results = crate::pages::trial::results(bench, &slug)?;
            let mut originals = Vec::new();
            for photo in &results.photos {
                originals.push((photo.clone(), bench.photo_bytes(&photo.hash)?));
            }
            Ok((results, originals))
        })
        .await?;
    let name = format!("{}-report.html", results.trial.slug);
    let back = (!keep).then(|| way_back(&results.trial.slug));
    let previews = Arc::clone(&app.previews);
    let html = blocking(move || {
        let photos = originals
            .into_iter()
            .map(|(photo, bytes)| {
                Ok(PublishedPhoto {
                    stage: photo.stage,
                    name: photo.name,
                    jpeg: previews.make(&photo.hash, PHOTO_PX, &bytes)?.to_vec(),
                })
            })
            .collect::<Result<_, Error>>()?;
        publish(&Published {
            results: &results,
            photos,
            made_at: &now(),
        })
        .map_err(Error::broken)
    })
    .await??;
    // The file itself knows of no app.
    let html = match back {
        Some(back) => html.replacen("<body>", &back, 1),
        None => html,
    };
    let mut response = Html(html).into_response();
    let headers = response.headers_mut();
    headers.insert(
        header::CONTENT_SECURITY_POLICY,
        header::HeaderValue::from_static(POLICY),
    );
    if keep
        && let Ok(value) =
            header::HeaderValue::from_str(&format!("attachment; filename=\"{name}\""))
    {
        headers.insert(header::CONTENT_DISPOSITION, value);
    }
    Ok(response)
}

/// The start of a report's body with a way back to its trial, which isn't printed.
fn way_back(slug: &str) -> String {
    let (here, back) = (say::where_you(), say::back_to_the_trial());
    format!(
        "<body>\n<nav class=\"back\" aria-label=\"{here}\"><a href=\"/trials/{slug}\">{back}</a></nav>"
    )
}
