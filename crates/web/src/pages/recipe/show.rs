//! `GET /recipes/{slug}?revision=2&goods=2.5 kg`: a recipe worked out; with `.json` after the slug, the same
//! as data.

use super::amounts::{AmountRow, CheckCard, StepRow, cautions};
use crate::app::App;
use crate::assets::Assets;
use crate::error::Error;
use crate::form::Problems;
use crate::text;
use crate::text::recipe as say;
use askama::Template;
use axum::Json;
use axum::extract::{Path, Query, State};
use axum::response::{Html, IntoResponse, Response};
use dyeing::{DyeingError, Mass, Plan, scale};
use locale::Locale;
use report::chart;
use serde::Deserialize;
use store::{Bench, KeptRecipe, RecipeAim};

#[derive(Deserialize, Default)]
pub(crate) struct Wanted {
    revision: Option<u32>,
    goods: Option<String>,
}

/// Plans and trials that a recipe can be for: value of the choice and title.
pub(crate) struct Aims {
    plans: Vec<(String, String)>,
    trials: Vec<(String, String)>,
    /// Trials that a run by this recipe can belong to, the likeliest first.
    of_run: Vec<(String, String)>,
    /// What the recipe is for, in words with its address.
    now: Option<(String, String)>,
    /// Where its arms aren't those of what it is for.
    mismatch: Option<String>,
}

/// The recipe for another weight of goods.
struct Lot {
    weight: String,
    pieces: u32,
    liquor: String,
    baths: u32,
    rows: Vec<AmountRow>,
    top_up: String,
    checks: Vec<CheckCard>,
    cost: String,
}

/// A time in the temperature's table.
struct Moment {
    minute: String,
    celsius: String,
    what: String,
}

/// Trials that a run can be made part of, the newest.
const OFFERED: u32 = 50;

#[derive(Template)]
#[template(path = "recipe/show.html")]
struct ShowPage<'a> {
    assets: &'static Assets,
    token: &'a str,
    problems: &'a Problems,
    kept: &'a KeptRecipe,
    newest: bool,
    plan: &'a Plan,
    checks: Vec<CheckCard>,
    rows: Vec<AmountRow>,
    after: Vec<(String, String, Vec<AmountRow>)>,
    several: bool,
    curve: String,
    moments: Vec<Moment>,
    cautions: Vec<String>,
    steps: Vec<StepRow<'a>>,
    pot: String,
    /// Dyes with what the spent bath still holds of each.
    left_in_bath: Vec<String>,
    aims: &'a Aims,
    goods: String,
    lot: Option<Lot>,
    text: String,
}

pub(crate) async fn page(
    State(app): State<App>,
    Path(name): Path<String>,
    Query(wanted): Query<Wanted>,
) -> Result<Response, Error> {
    let json = name.ends_with(".json");
    let slug = name.trim_end_matches(".json").to_owned();
    let revision = wanted.revision;
    let (kept, aims) = app
        .at_bench(move |bench| {
            let kept = super::find(bench, &slug, revision)?;
            let aims = Aims::of(bench, &kept)?;
            Ok((kept, aims))
        })
        .await?;
    if json {
        let plan = locale::within(Locale::DATA, || Plan::of(&kept.recipe));
        return Ok(Json(plan.map_err(Error::broken)?).into_response());
    }
    let page = render(
        &app,
        &kept,
        &aims,
        Shown {
            goods: wanted.goods.unwrap_or_default(),
            ..Shown::default()
        },
    )?;
    Ok(page.into_response())
}

/// What is shown beside the recipe itself.
#[derive(Default)]
pub(crate) struct Shown {
    /// The weight of another lot, as typed.
    goods: String,
    pub(crate) problems: Problems,
    /// The recipe's text as typed, if it couldn't be taken.
    pub(crate) typed: Option<String>,
}

/// The page of a recipe, with what is wrong with what was typed.
pub(crate) fn render(
    app: &App,
    kept: &KeptRecipe,
    aims: &Aims,
    mut shown: Shown,
) -> Result<Html<String>, Error> {
    let plan = Plan::of(&kept.recipe).map_err(Error::broken)?;
    let lot = match shown.goods.trim() {
        "" => None,
        typed => match Lot::of(kept, &plan, typed) {
            Ok(lot) => Some(lot),
            Err(error) => {
                let message = super::places::sentence(&error.to_string());
                shown.problems.add("goods", message);
                None
            }
        },
    };
    let after = plan.after.iter().map(|after| {
        let heading = text::recipe::of_water_2(
            after.liquor.shown(),
            &after.kitchen,
            after.temperature,
            after.time,
            after.arms.join(", "),
        );
        let rows = vec![AmountRow::of(&after.line)];
        (after.line.name.clone(), heading, rows)
    });
    let page = ShowPage {
        assets: Assets::get(),
        token: app.token.as_str(),
        problems: &shown.problems,
        kept,
        newest: kept.revisions.first().map(|r| r.number) == Some(kept.number),
        checks: CheckCard::all(&plan.checks),
        rows: AmountRow::all(&plan),
        after: after.collect(),
        several: plan.baths.count > 1,
        curve: chart::temperature_over_time(&plan.programme, &[]),
        moments: moments(&plan),
        cautions: cautions(&plan.cautions),
        steps: StepRow::all(&plan),
        pot: plan.uptake.pot.sentence(),
        left_in_bath: left_in_bath(&plan),
        plan: &plan,
        aims,
        goods: shown.goods,
        lot,
        text: shown.typed.unwrap_or_else(|| kept.text.clone()),
    };
    Ok(Html(page.render()?))
}

fn left_in_bath(plan: &Plan) -> Vec<String> {
    let all = plan.uptake.left_in_bath_g.iter();
    all.filter_map(|(name, low, high)| {
        let [low, high] = [Mass::from_grams(*low).ok()?, Mass::from_grams(*high).ok()?];
        Some(text::recipe::to(name, low.shown(), high.shown()))
    })
    .collect()
}

fn moments(plan: &Plan) -> Vec<Moment> {
    let programme = &plan.programme;
    let mut moments: Vec<Moment> = Vec::new();
    for point in &programme.points {
        let here = programme.additions.iter().enumerate();
        let here = here.filter(|(_, addition)| addition.minute == point.minute);
        let what: Vec<String> = here
            .map(|(k, addition)| text::recipe::add(k + 1, addition.what.join(", ")))
            .collect();
        moments.push(Moment {
            minute: format!("{:.0}", point.minute),
            celsius: point.celsius.to_string(),
            what: what.join("; "),
        });
    }
    moments
}

impl Lot {
    fn of(kept: &KeptRecipe, sample: &Plan, goods: &str) -> Result<Self, DyeingError> {
        let goods: Mass = goods.parse()?;
        let lot = Plan::of(&kept.recipe.scaled_to(goods)?)?;
        let heater_kw = kept.recipe.pot.and_then(|pot| pot.heater_kw);
        Ok(Self {
            weight: lot.goods.mass.to_string(),
            pieces: lot.goods.pieces,
            liquor: lot.baths.liquor.shown(),
            baths: lot.baths.count,
            rows: AmountRow::all(&lot),
            top_up: lot.top_up.shown(),
            checks: CheckCard::all(&scale::checks(sample, &lot, heater_kw)),
            cost: lot.cost.total.shown(&lot.cost.currency),
        })
    }
}

impl Aims {
    pub(crate) fn of(bench: &mut Bench, kept: &KeptRecipe) -> Result<Self, Error> {
        let plans = bench.plans()?;
        let trials = bench.trials_before(None, OFFERED)?;
        let mut own: Vec<(String, String)> = Vec::new();
        let mut now = None;
        let mut wanted: Vec<String> = Vec::new();
        match &kept.aim {
            RecipeAim::Nothing => {}
            RecipeAim::Plan { slug } => {
                if let Some(plan) = bench.plan(slug, None)? {
                    let title = plans.iter().find(|p| p.slug == *slug);
                    let title = title.map_or(slug.clone(), |p| p.title.clone());
                    now = Some((format!("/plans/{slug}"), text::recipe::the_plan(&title)));
                    own = plan.trials;
                    own.reverse();
                    wanted = plan.plan.arms.into_iter().map(|arm| arm.name).collect();
                }
            }
            RecipeAim::Trial { slug, title } => {
                now = Some((format!("/trials/{slug}"), text::recipe::the_trial(title)));
                own.push((slug.clone(), title.clone()));
                let trial = bench.trial(slug)?;
                let arms = trial.into_iter().flat_map(|trial| trial.arms);
                wanted = arms.map(|arm| arm.name).collect();
            }
        }
        let others = trials.iter().map(|t| (t.slug.clone(), t.title.clone()));
        let mut of_run = own.clone();
        of_run.extend(
            others
                .clone()
                .filter(|(slug, _)| own.iter().all(|(o, _)| o != slug)),
        );
        Ok(Self {
            plans: plans.into_iter().map(|p| (p.slug, p.title)).collect(),
            trials: others.collect(),
            of_run,
            now,
            mismatch: mismatch(&wanted, kept),
        })
    }

    fn is_for(&self, kind: &str, slug: &str) -> bool {
        let address = format!("/{kind}s/{slug}");
        self.now.as_ref().is_some_and(|(now, _)| *now == address)
    }
}

/// Where the recipe's arms aren't those of the plan or trial that it is for.
fn mismatch(wanted: &[String], kept: &KeptRecipe) -> Option<String> {
    if wanted.is_empty() {
        return None;
    }
    let own: Vec<&String> = kept.recipe.arms.iter().map(|arm| &arm.name).collect();
    let missing: Vec<&str> = wanted
        .iter()
        .filter(|arm| !own.contains(arm))
        .map(String::as_str)
        .collect();
    let strange: Vec<&str> = own
        .into_iter()
        .filter(|arm| !wanted.contains(arm))
        .map(String::as_str)
        .collect();
    if missing.is_empty() && strange.is_empty() {
        return None;
    }
    let mut sentence = text::recipe::its_arms_arent_those().to_owned();
    if !missing.is_empty() {
        sentence.push_str(&text::recipe::are_not_in_the_recipe(missing.join(", ")));
    }
    if !strange.is_empty() {
        sentence.push_str(&text::recipe::are_only_in_the_recipe(strange.join(", ")));
    }
    sentence.push_str(text::recipe::fine_where_arms_are_dyed_by_recipes());
    Some(sentence)
}
