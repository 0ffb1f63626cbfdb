//! Style sheets and scripts, built into the program.

use crate::error::Error;
use crate::text;
use axum::body::Bytes;
use axum::extract::Path;
use axum::http::header;
use axum::response::{IntoResponse, Response};
use rust_embed::{Embed, EmbeddedFile};
use std::sync::LazyLock;

#[derive(Embed)]
#[folder = "static/"]
struct Files;

/// The texts of scripts, as a module that they import.
mod scripts {
    include!(concat!(env!("OUT_DIR"), "/scripts.rs"));
}

/// The style sheets in cascade order; browsers get them as one.
const STYLES: [&str; 21] = [
    "css/tokens.css",
    "css/base.css",
    "css/components/masthead.css",
    "css/components/way.css",
    "css/components/section.css",
    "css/components/button.css",
    "css/components/form.css",
    "css/components/trials.css",
    "css/components/table.css",
    "css/components/verdict.css",
    "css/components/chart.css",
    "css/components/pairing.css",
    "css/components/photo.css",
    "css/components/plan.css",
    "css/components/recipe.css",
    "css/components/run.css",
    "css/components/studio.css",
    "css/components/eyes.css",
    "css/components/shelf.css",
    "css/components/settings.css",
    "css/print.css",
];

/// All assets under one checksum, so that a browser may keep them for ever.
pub(crate) struct Assets {
    /// In every asset's address; changes when any of them does.
    pub(crate) version: String,
    style: String,
}

static ASSETS: LazyLock<Assets> = LazyLock::new(|| {
    let text = |file: EmbeddedFile| String::from_utf8_lossy(&file.data).into_owned();
    let style = STYLES
        .iter()
        .filter_map(|name| Files::get(name))
        .map(text)
        .collect();
    let mut names: Vec<_> = Files::iter().collect();
    names.sort();
    let sum = names
        .iter()
        .filter_map(|name| Files::get(name))
        .fold([0u8; 8], |mut sum, file| {
            for (i, byte) in file.metadata.sha256_hash().iter().enumerate() {
                sum[i % 8] = sum[i % 8].rotate_left(3) ^ byte;
            }
            sum
        });
    Assets {
        version: sum.iter().map(|b| format!("{b:02x}")).collect(),
        style,
    }
});

impl Assets {
    pub(crate) fn get() -> &'static Self {
        &ASSETS
    }
}

/// `GET /assets/{version}/{name}`
pub(crate) async fn serve(
    Path((version, name)): Path<(String, String)>,
) -> Result<Response, Error> {
    let assets = Assets::get();
    let missing = || Error::NotFound(text::assets::there_is_no_such_file_reload());
    if version != assets.version {
        return Err(missing());
    }
    let (kind, bytes) = match name.as_str() {
        "app.css" => (
            "text/css; charset=utf-8",
            Bytes::from_static(assets.style.as_bytes()),
        ),
        "text.js" => (
            "text/javascript; charset=utf-8",
            Bytes::from_static(scripts::text().as_bytes()),
        ),
        script if script.ends_with(".js") && !script.contains('/') => {
            let file = Files::get(&format!("js/{script}")).ok_or_else(missing)?;
            (
                "text/javascript; charset=utf-8",
                Bytes::from(file.data.into_owned()),
            )
        }
        "icon.svg" => {
            let file = Files::get("icon.svg").ok_or_else(missing)?;
            ("image/svg+xml", Bytes::from(file.data.into_owned()))
        }
        _ => return Err(missing()),
    };
    // The texts go with the language, which the address doesn't tell.
    let keep = match name.as_str() {
        "text.js" => "private, no-cache",
        _ => "public, max-age=31536000, immutable",
    };
    Ok((
        [(header::CONTENT_TYPE, kind), (header::CACHE_CONTROL, keep)],
        bytes,
    )
        .into_response())
}

/// The icon at the address where browsers look for it by themselves: sheets to print and
/// reports are kept as files, so they name none.
pub(crate) async fn icon() -> Result<Response, Error> {
    let version = Assets::get().version.clone();
    serve(Path((version, "icon.svg".to_owned()))).await
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_style_sheet_is_there_and_served() {
        for name in STYLES {
            assert!(Files::get(name).is_some(), "{name}");
        }
        let sheets = Files::iter().filter(|n| n.ends_with(".css")).count();
        assert_eq!(sheets, STYLES.len());
    }

    #[test]
    fn scripts_import_the_texts_they_say() {
        let texts = scripts::text();
        let scripts = Files::iter().filter(|name| name.ends_with(".js"));
        let mut said = 0;
        for name in scripts {
            let file = Files::get(&name).expect("listed");
            let script = String::from_utf8_lossy(&file.data).into_owned();
            for call in script.split("say.").skip(1) {
                let letters = call
                    .find(|c: char| !c.is_alphanumeric())
                    .unwrap_or(call.len());
                let export = format!("export const {} = ", &call[..letters]);
                assert!(texts.contains(&export), "{name} says {export}");
                said += 1;
            }
        }
        let exported = texts.matches("export const ").count();
        assert!(said >= exported, "{exported} texts, {said} of them said");
    }

    #[test]
    fn colours_are_named_in_the_tokens_only() {
        for name in STYLES.iter().filter(|n| **n != "css/tokens.css") {
            let file = Files::get(name).expect("listed above");
            let text = String::from_utf8_lossy(&file.data).into_owned();
            assert!(!text.contains("oklch("), "{name}");
        }
    }
}
