//! `GET /studio`: what serves all trials, each with its page.

use crate::app::App;
use crate::assets::Assets;
use crate::error::Error;
use crate::text::studio as say;
use askama::Template;
use axum::extract::State;
use axum::response::Html;

#[derive(Template)]
#[template(path = "studio/show.html")]
struct StudioPage {
    assets: &'static Assets,
    /// The newest set-up check and its day.
    checked: Option<(String, String)>,
    charts: usize,
    binned: usize,
    /// Something written as the settings have it.
    example: String,
}

pub(crate) async fn page(State(app): State<App>) -> Result<Html<String>, Error> {
    let (check, charts, binned) = app
        .at_bench(|bench| {
            Ok((
                bench.latest_setup_check()?,
                bench.charts()?.len(),
                bench.bin()?.len(),
            ))
        })
        .await?;
    let page = StudioPage {
        assets: Assets::get(),
        checked: check.map(|kept| (kept.name, report::words::day(&kept.made_at))),
        charts,
        binned,
        example: crate::pages::settings::examples(locale::current()).join("; "),
    };
    Ok(Html(page.render()?))
}
