//! `GET /materials`: what stands on the shelves, and the form for something new.

use super::{heading, left, offered};
use crate::app::App;
use crate::assets::Assets;
use crate::error::Error;
use crate::form::Problems;
use crate::text;
use crate::text::material as say;
use askama::Template;
use axum::extract::State;
use axum::response::Html;
use jiff::{Timestamp, tz::TimeZone};
use store::{Material, MaterialKind};

/// A new material with its first lot, as it is typed.
#[derive(Default)]
pub(crate) struct Draft {
    pub(crate) kind: String,
    pub(crate) name: String,
    pub(crate) notes: String,
    pub(crate) lot: LotDraft,
}

/// A lot as it is typed.
#[derive(Default)]
pub(crate) struct LotDraft {
    pub(crate) received: String,
    pub(crate) amount: String,
    pub(crate) price: String,
    pub(crate) supplier: String,
    pub(crate) notes: String,
}

#[derive(Template)]
#[template(path = "material/list.html")]
struct ListPage<'a> {
    assets: &'static Assets,
    token: &'a str,
    problems: &'a Problems,
    draft: &'a Draft,
    shelves: Vec<Shelf>,
    kinds: Vec<(&'static str, &'static str)>,
}

/// Materials of one kind.
struct Shelf {
    key: &'static str,
    heading: &'static str,
    rows: Vec<MaterialRow>,
}

struct MaterialRow {
    id: i64,
    name: String,
    left: String,
    lots: String,
    price: String,
    notes: String,
}

pub(crate) async fn page(State(app): State<App>) -> Result<Html<String>, Error> {
    let materials = app.at_bench(|bench| Ok(bench.materials()?)).await?;
    let draft = Draft {
        lot: LotDraft::today(),
        ..Draft::default()
    };
    render(&app, &materials, &draft, &Problems::default())
}

/// The page with what was typed and what is wrong with it.
pub(crate) fn render(
    app: &App,
    materials: &[Material],
    draft: &Draft,
    problems: &Problems,
) -> Result<Html<String>, Error> {
    let shelves = MaterialKind::ALL.into_iter().map(|kind| Shelf {
        key: kind.key(),
        heading: heading(kind),
        rows: materials
            .iter()
            .filter(|material| material.kind == kind)
            .map(MaterialRow::of)
            .collect(),
    });
    let page = ListPage {
        assets: Assets::get(),
        token: app.token.as_str(),
        problems,
        draft,
        shelves: shelves.filter(|shelf| !shelf.rows.is_empty()).collect(),
        kinds: MaterialKind::ALL
            .into_iter()
            .map(|kind| (kind.key(), offered(kind)))
            .collect(),
    };
    Ok(Html(page.render()?))
}

impl LotDraft {
    /// Of a lot that came today.
    pub(crate) fn today() -> Self {
        Self {
            received: Timestamp::now()
                .to_zoned_datetime(TimeZone::system())
                .date()
                .to_string(),
            ..Self::default()
        }
    }
}

impl MaterialRow {
    fn of(material: &Material) -> Self {
        let open = material.lots.iter().filter(|lot| !lot.is_used_up).count();
        let newest = material.lots.iter().rfind(|lot| !lot.came.price.is_empty());
        Self {
            id: material.id,
            name: material.name.clone(),
            left: left(material),
            lots: match open {
                0 => text::material::none_open().to_owned(),
                1 => text::material::n_1_open().to_owned(),
                many => text::material::open(many),
            },
            price: newest.map_or(text::material::not_known().to_owned(), |lot| {
                lot.came.price_shown()
            }),
            notes: material.notes.clone(),
        }
    }
}
