//! `GET /plans/{slug}?revision=2`: a plan, what it can show and what it can't tell.

use super::power::Power;
use crate::app::{App, blocking};
use crate::assets::Assets;
use crate::error::Error;
use crate::form::Problems;
use crate::promises;
use crate::text::plan as say;
use askama::Template;
use axum::extract::{Path, Query, State};
use axum::response::{Html, IntoResponse, Response};
use report::margin_pair;
use serde::Deserialize;
use store::KeptPlan;
use trial::plan::{
    Allotted, Carried, Finding, Order, Plan, PlanError, carried, critique, departures,
};

#[derive(Default, Deserialize)]
pub(crate) struct Wanted {
    pub(crate) revision: Option<u32>,
    /// How often the page was looked at while it waited for figures.
    #[serde(default)]
    pub(crate) look: u32,
}

#[derive(Template)]
#[template(path = "plan/show.html")]
struct ShowPage<'a> {
    assets: &'static Assets,
    token: &'a str,
    problems: &'a Problems,
    kept: &'a KeptPlan,
    plan: &'a Plan,
    newest: bool,
    title: &'a str,
    picture: String,
    proposed: &'a str,
    stages: String,
    power: Power,
    findings: Vec<FindingCard>,
    ways: Vec<Way>,
    /// What its witness cloths can tell of staining.
    staining: String,
    departures: Vec<(String, bool)>,
    order: Order,
    pieces: Vec<PieceRow>,
    text: String,
}

struct FindingCard {
    sentence: String,
    consequence: String,
    /// What a button says, and the change as data.
    mends: Vec<(String, String)>,
}

/// Ways of dye from one arm to another.
struct Way {
    from: String,
    to: String,
    through: Vec<String>,
    shows: bool,
}

struct PieceRow {
    code: String,
    arm: String,
    role: &'static str,
    shares: String,
    board: usize,
    window: usize,
}

pub(crate) async fn page(
    State(app): State<App>,
    Path(slug): Path<String>,
    Query(wanted): Query<Wanted>,
) -> Result<Response, Error> {
    let revision = wanted.revision;
    let kept = app
        .at_bench(move |bench| super::find(bench, &slug, revision))
        .await?;
    Ok(render(&app, kept, Problems::default(), None, &wanted)
        .await?
        .into_response())
}

/// The page of a plan, with what is wrong and the text that was typed, if any.
pub(crate) async fn render(
    app: &App,
    kept: KeptPlan,
    problems: Problems,
    typed: Option<String>,
    wanted: &Wanted,
) -> Result<Html<String>, Error> {
    let power = Power::of(&kept.plan, promises::of(app, &kept.plan).await?, wanted);
    let app = app.clone();
    blocking(move || {
        let page = ShowPage::of(&app, &kept, &problems, typed, power).map_err(Error::broken)?;
        Ok(Html(page.render()?))
    })
    .await?
}

impl<'a> ShowPage<'a> {
    fn of(
        app: &'a App,
        kept: &'a KeptPlan,
        problems: &'a Problems,
        typed: Option<String>,
        power: Power,
    ) -> Result<Self, PlanError> {
        let plan = &kept.plan;
        let order = plan.order();
        let said = |change: &'a store::Revision| change.change.as_str();
        Ok(Self {
            assets: Assets::get(),
            token: app.token.as_str(),
            problems,
            newest: kept.revisions.first().map(|r| r.number) == Some(kept.number),
            title: match plan.title.trim() {
                "" => &plan.question,
                title => title,
            },
            picture: margin_pair::svg(plan.margin.de00()),
            proposed: kept.revisions.last().map_or("", said),
            stages: plan
                .looked_at()
                .iter()
                .map(u32::to_string)
                .collect::<Vec<_>>()
                .join(", "),
            power,
            findings: critique(plan).iter().map(FindingCard::of).collect(),
            ways: ways(carried(plan)),
            staining: plan.staining_told().sentence(plan.staining),
            departures: departures(plan)
                .iter()
                .map(|departure| (departure.sentence(), departure.on_purpose))
                .collect(),
            pieces: order.pieces.iter().map(PieceRow::of).collect(),
            order,
            text: match typed {
                Some(text) => text,
                None => plan.to_toml()?,
            },
            kept,
            plan,
        })
    }
}

impl FindingCard {
    fn of(found: &Finding) -> Self {
        let button = |mend: &trial::plan::Mend| {
            let data = serde_json::to_string(mend).ok()?;
            Some((mend.label(), data))
        };
        Self {
            sentence: found.sentence.clone(),
            consequence: found.consequence.clone(),
            mends: found.mends.iter().filter_map(button).collect(),
        }
    }
}

/// One row for each two arms, the loads in it.
fn ways(all: Vec<Carried>) -> Vec<Way> {
    let mut ways: Vec<Way> = Vec::new();
    for one in all {
        let known = ways
            .iter_mut()
            .find(|way| way.from == one.from && way.to == one.to && way.shows == one.shows);
        match known {
            Some(way) => way.through.push(one.through),
            None => ways.push(Way {
                from: one.from,
                to: one.to,
                through: vec![one.through],
                shows: one.shows,
            }),
        }
    }
    ways
}

impl PieceRow {
    fn of(allotted: &Allotted) -> Self {
        let names = allotted.shares.iter().map(|(_, name)| name.as_str());
        Self {
            code: allotted.piece.code.clone(),
            arm: allotted.arm_name.clone(),
            role: report::words::role(allotted.piece.role),
            shares: names.collect::<Vec<_>>().join(", "),
            board: allotted.board,
            window: allotted.window,
        }
    }
}
