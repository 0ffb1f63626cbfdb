//! `GET /materials/{id}`: a material, its lots and what was taken from them.

use super::list::LotDraft;
use super::{find, left, offered};
use crate::app::App;
use crate::assets::Assets;
use crate::error::Error;
use crate::form::Problems;
use crate::text;
use crate::text::material as say;
use askama::Template;
use axum::extract::{Path, State};
use axum::response::Html;
use report::words;
use store::{Lot, Material, Taken};

/// What was typed for using some of a lot: the lot, the amount and why.
#[derive(Default)]
pub(crate) struct Using {
    pub(crate) lot: i64,
    pub(crate) amount: String,
    pub(crate) words: String,
}

#[derive(Template)]
#[template(path = "material/show.html")]
struct ShowPage<'a> {
    assets: &'static Assets,
    token: &'a str,
    problems: &'a Problems,
    material: &'a Material,
    kind: &'static str,
    left: String,
    lots: Vec<LotCard<'a>>,
    draft: &'a LotDraft,
}

struct LotCard<'a> {
    lot: &'a Lot,
    left: String,
    taken: Vec<TakenRow>,
    typed: String,
    words: String,
}

struct TakenRow {
    id: i64,
    when: String,
    what: String,
    run: Option<(i64, String)>,
    is_taken_back: bool,
}

pub(crate) async fn page(
    State(app): State<App>,
    Path(id): Path<i64>,
) -> Result<Html<String>, Error> {
    let material = app.at_bench(move |bench| find(bench, id)).await?;
    let draft = LotDraft::today();
    render(
        &app,
        &material,
        &draft,
        &Using::default(),
        &Problems::default(),
    )
}

/// The page with what was typed and what is wrong with it.
pub(crate) fn render(
    app: &App,
    material: &Material,
    draft: &LotDraft,
    using: &Using,
    problems: &Problems,
) -> Result<Html<String>, Error> {
    let page = ShowPage {
        assets: Assets::get(),
        token: app.token.as_str(),
        problems,
        material,
        kind: offered(material.kind),
        left: left(material),
        // The newest first: that is the one at hand.
        lots: material
            .lots
            .iter()
            .rev()
            .map(|lot| LotCard::of(lot, using))
            .collect(),
        draft,
    };
    Ok(Html(page.render()?))
}

impl<'a> LotCard<'a> {
    fn of(lot: &'a Lot, using: &Using) -> Self {
        let typed = |text: &String| {
            if using.lot == lot.id {
                text.clone()
            } else {
                String::new()
            }
        };
        Self {
            left: if lot.is_used_up {
                text::material::used_up().to_owned()
            } else if lot.left.amount < 0.0 {
                text::material::more_was_taken_than_came_count(lot.left)
            } else {
                text::material::left_2(lot.left)
            },
            taken: lot.taken.iter().map(TakenRow::of).collect(),
            typed: typed(&using.amount),
            words: typed(&using.words),
            lot,
        }
    }
}

impl TakenRow {
    fn of(taken: &Taken) -> Self {
        let amount = taken
            .amount
            .map_or(text::material::all_that_was_left().to_owned(), |stock| {
                stock.to_string()
            });
        Self {
            id: taken.id,
            when: words::day(&taken.made_at),
            what: match taken.words.as_str() {
                "" => amount,
                words => format!("{amount}, {words}"),
            },
            run: taken.run.clone(),
            is_taken_back: taken.is_taken_back,
        }
    }
}
