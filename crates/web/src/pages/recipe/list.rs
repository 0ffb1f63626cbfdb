//! `GET /recipes`: the recipes on the bench and the runs that are going on.

use super::{EXAMPLES, Example};
use crate::app::App;
use crate::assets::Assets;
use crate::error::Error;
use crate::text::recipe as say;
use askama::Template;
use axum::extract::State;
use axum::response::Html;
use store::{RecipeAim, RecipeSummary, RunSummary};

#[derive(Template)]
#[template(path = "recipe/list.html")]
struct ListPage {
    assets: &'static Assets,
    recipes: Vec<RecipeSummary>,
    going: Vec<RunSummary>,
    over: Vec<RunSummary>,
    examples: &'static [Example],
}

pub(crate) async fn page(State(app): State<App>) -> Result<Html<String>, Error> {
    let (recipes, runs) = app
        .at_bench(|bench| Ok((bench.recipes()?, bench.runs()?)))
        .await?;
    let (over, going) = runs.into_iter().partition(|run| run.finished);
    let page = ListPage {
        assets: Assets::get(),
        recipes,
        going,
        over,
        examples: &EXAMPLES,
    };
    Ok(Html(page.render()?))
}
