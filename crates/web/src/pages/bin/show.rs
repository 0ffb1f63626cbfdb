//! `GET /bin`: what lies in the bin, each with its way back.

use crate::app::App;
use crate::assets::Assets;
use crate::error::Error;
use crate::text::bin as say;
use askama::Template;
use axum::extract::State;
use axum::response::Html;
use store::Binned;

#[derive(Template)]
#[template(path = "bin/show.html")]
struct BinPage<'a> {
    assets: &'static Assets,
    token: &'a str,
    binned: Vec<Binned>,
}

pub(crate) async fn page(State(app): State<App>) -> Result<Html<String>, Error> {
    let binned = app.at_bench(|bench| Ok(bench.bin()?)).await?;
    let page = BinPage {
        assets: Assets::get(),
        token: app.token.as_str(),
        binned,
    };
    Ok(Html(page.render()?))
}
