//! `GET /charts`: the charts that were kept, and the form for a new one.

use crate::app::App;
use crate::assets::Assets;
use crate::error::Error;
use crate::form::Problems;
use crate::text;
use crate::text::chart as say;
use askama::Template;
use axum::extract::State;
use axum::response::Html;
use photo::{ChartReference, KnownAs};
use report::{swatch, words};
use store::KeptChart;

#[derive(Template)]
#[template(path = "chart/list.html")]
struct ListPage<'a> {
    assets: &'static Assets,
    token: &'a str,
    name: &'a str,
    problems: &'a Problems,
    charts: Vec<ChartCard>,
}

struct ChartCard {
    name: String,
    size: String,
    known: String,
    about: String,
    picture: String,
}

pub(crate) async fn page(State(app): State<App>) -> Result<Html<String>, Error> {
    let charts = app.at_bench(|bench| Ok(bench.charts()?)).await?;
    render(&app, &charts, "", &Problems::default())
}

/// The page with what was typed and what is wrong with it.
pub(crate) fn render(
    app: &App,
    charts: &[KeptChart],
    name: &str,
    problems: &Problems,
) -> Result<Html<String>, Error> {
    let page = ListPage {
        assets: Assets::get(),
        token: app.token.as_str(),
        name,
        problems,
        charts: charts.iter().map(ChartCard::of).collect(),
    };
    Ok(Html(page.render()?))
}

impl ChartCard {
    fn of(chart: &KeptChart) -> Self {
        Self {
            name: chart.name.clone(),
            size: size(&chart.reference),
            known: match chart.reference.known_as() {
                KnownAs::Spectra => text::chart::known_by_spectra_exact_in_every_light().to_owned(),
                KnownAs::Lab(view) => text::chart::known_by_lab(view),
            },
            about: text::chart::added(&chart.file_name, words::day(&chart.added_at)),
            picture: swatch::chart(&chart.reference, &chart.name),
        }
    }
}

/// Such as "4 rows of 6 patches".
pub(crate) fn size(reference: &ChartReference) -> String {
    text::chart::rows_of_patches(reference.rows(), reference.columns())
}
