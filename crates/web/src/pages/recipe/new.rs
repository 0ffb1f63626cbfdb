//! `GET /recipes/new?plan=slug&trial=slug&example=napkins`: the form for a recipe.

use super::draft::Draft;
use super::{EXAMPLES, Example};
use crate::app::App;
use crate::assets::Assets;
use crate::error::Error;
use crate::form::Problems;
use crate::text;
use crate::text::recipe as say;
use askama::Template;
use axum::extract::{Query, State};
use axum::response::Html;
use dyeing::recipe::Written;
use dyeing::{class, fibre, goods, material};
use serde::Deserialize;
use std::collections::BTreeMap;
use store::{Bench, Material, MaterialKind};

/// What the form starts with; what is missing is left empty.
#[derive(Deserialize)]
pub(crate) struct Wanted {
    plan: Option<String>,
    trial: Option<String>,
    example: Option<String>,
}

/// What the form is for: a new recipe, or a new revision of one.
pub(crate) struct Purpose {
    /// Where it is sent.
    pub(crate) action: String,
    pub(crate) heading: String,
    pub(crate) button: &'static str,
    /// Hidden fields with their values.
    pub(crate) hidden: Vec<(&'static str, String)>,
    /// Whether examples are offered.
    pub(crate) is_new: bool,
}

#[derive(Template)]
#[template(path = "recipe/edit.html")]
struct EditPage<'a> {
    assets: &'static Assets,
    token: &'a str,
    purpose: &'a Purpose,
    draft: &'a Draft,
    problems: &'a Problems,
    classes: &'static [class::DyeClass],
    kinds: &'static [goods::TypicalGoods],
    /// Words that a recipe may use.
    fibres: Vec<String>,
    /// Words that a recipe may use, each with its name where that is another word.
    materials: Vec<(String, Option<&'static str>)>,
    /// Names of dyes on the shelves.
    dyes: Vec<String>,
    /// Prices of lots, each with what it is of.
    prices: Vec<(String, String)>,
    examples: &'static [Example],
}

pub(crate) async fn page(
    State(app): State<App>,
    Query(wanted): Query<Wanted>,
) -> Result<Html<String>, Error> {
    let mut draft = Draft::blank();
    let example = EXAMPLES
        .iter()
        .find(|example| wanted.example.as_deref() == Some(example.name));
    if let Some(example) = example {
        draft = Draft::of(&Written::from_toml(example.text).map_err(Error::broken)?);
    }
    let mut hidden = Vec::new();
    if let Some(slug) = wanted.plan {
        let kept = {
            let slug = slug.clone();
            app.at_bench(move |bench| crate::pages::plan::find(bench, &slug, None))
                .await?
        };
        let arms = kept.plan.arms.iter();
        let arms: BTreeMap<String, u32> = arms
            .map(|arm| (arm.name.clone(), count(arm.pieces + arm.keepers)))
            .collect();
        draft.arms_of(&arms);
        draft.name(&text::recipe::bath_for(&kept.plan.title));
        hidden.push(("plan", slug));
    } else if let Some(slug) = wanted.trial {
        let (trial, arms) = app
            .at_bench(move |bench: &mut Bench| {
                let trial = crate::pages::trial::find(bench, &slug)?;
                let arms: BTreeMap<String, u32> = trial
                    .arms
                    .iter()
                    .map(|arm| {
                        // Witness cloths go along undyed.
                        let dyed = trial.pieces_of(arm.id);
                        let dyed = dyed.filter(|p| p.role != trial::Role::Witness);
                        (arm.name.clone(), count(dyed.count()))
                    })
                    .collect();
                Ok((trial, arms))
            })
            .await?;
        draft.arms_of(&arms);
        draft.name(&text::recipe::bath_for(&trial.title));
        hidden.push(("trial", trial.slug));
    }
    render(&app, &new(hidden), &draft, &Problems::default()).await
}

fn count(pieces: usize) -> u32 {
    u32::try_from(pieces).unwrap_or(u32::MAX)
}

/// A new recipe, for a plan or a trial where a hidden field says so. Its address says so too, so that
/// the way of the trial stands above a form that is refused.
pub(crate) fn new(hidden: Vec<(&'static str, String)>) -> Purpose {
    let aim = hidden.first().map(|(name, slug)| format!("?{name}={slug}"));
    Purpose {
        action: format!("/recipes/new{}", aim.unwrap_or_default()),
        heading: text::recipe::write_a_recipe().to_owned(),
        button: text::recipe::work_it_out(),
        hidden,
        is_new: true,
    }
}

/// The page with what was typed and what is wrong with it. What stands on the shelves is offered.
pub(crate) async fn render(
    app: &App,
    purpose: &Purpose,
    draft: &Draft,
    problems: &Problems,
) -> Result<Html<String>, Error> {
    let shelf = app.at_bench(|bench| Ok(bench.materials()?)).await?;
    let page = EditPage {
        assets: Assets::get(),
        token: app.token.as_str(),
        purpose,
        draft,
        problems,
        classes: class::all(),
        kinds: goods::all(),
        fibres: fibre::all()
            .iter()
            .map(|f| named(&f.key, f.name()))
            .collect(),
        materials: kept(&shelf, MaterialKind::Auxiliary)
            .map(|name| (name, None))
            .chain(
                material::all()
                    .iter()
                    .map(|m| (m.key.clone(), other(&m.key, m.name()))),
            )
            .collect(),
        dyes: kept(&shelf, MaterialKind::Dye).collect(),
        prices: prices(&shelf),
        examples: &EXAMPLES,
    };
    Ok(Html(page.render()?))
}

/// A name that isn't the word that recipes use for it.
fn other(word: &str, name: &'static str) -> Option<&'static str> {
    (name.to_lowercase() != word).then_some(name)
}

/// A word that recipes use, with its name before it where that is another word.
fn named(word: &str, name: &'static str) -> String {
    other(word, name).map_or(word.to_owned(), |name| format!("{name} ({word})"))
}

/// Names of the materials of a kind that stand on the shelves.
fn kept(shelf: &[Material], kind: MaterialKind) -> impl Iterator<Item = String> {
    let kept = shelf.iter().filter(move |material| material.kind == kind);
    kept.map(|material| material.name.clone())
}

/// The newest price of each dye and auxiliary, and of which lot it is.
fn prices(shelf: &[Material]) -> Vec<(String, String)> {
    let goes_in = |m: &&Material| matches!(m.kind, MaterialKind::Dye | MaterialKind::Auxiliary);
    let newest = shelf.iter().filter(goes_in).filter_map(|material| {
        let lot = material
            .lots
            .iter()
            .rfind(|lot| !lot.came.price.is_empty())?;
        let day = locale::day(&lot.came.received_on);
        // With its currency, so that a recipe in another one refuses it rather than relabels it.
        let price = match lot.came.currency.as_str() {
            "" => lot.came.price.clone(),
            currency => format!("{currency} {}", lot.came.price),
        };
        Some((price, text::recipe::lot_of_2(&material.name, &day)))
    });
    newest.collect()
}
