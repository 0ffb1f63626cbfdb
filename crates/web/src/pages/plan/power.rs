//! `GET /plans/{slug}/power?revision=2`: what a plan can show, as a part of its page.

use super::show::Wanted;
use crate::app::App;
use crate::error::Error;
use crate::promises::{self, Told};
use crate::text;
use crate::text::plan as say;
use askama::Template;
use axum::extract::{Path, Query, State};
use axum::http::StatusCode;
use axum::response::{Html, IntoResponse, Response};
use report::chart;
use store::KeptPlan;
use trial::plan::{Plan, Promise, Promised};

#[derive(Template)]
#[template(path = "plan/_power.html")]
struct PowerPart<'a> {
    kept: &'a KeptPlan,
    power: Power,
}

/// What a plan can show.
pub(crate) enum Power {
    Shown(Shown),
    /// Why that can't be told.
    Never(String),
    /// It is being worked out; which look at the page the next one will be. A link to
    /// where one is already would show nothing new.
    Awaited(u32),
}

/// What a plan can show, in words and figures.
pub(crate) struct Shown {
    pub(crate) sentences: Vec<String>,
    pub(crate) rows: Vec<[String; 6]>,
    pub(crate) plot: String,
    pub(crate) sizes: Vec<(usize, String)>,
    pub(crate) origin: String,
}

/// Answers at once: 202 while it is being worked out, which this begins where it has not
/// begun.
pub(crate) async fn part(
    State(app): State<App>,
    Path(slug): Path<String>,
    Query(wanted): Query<Wanted>,
) -> Result<Response, Error> {
    let revision = wanted.revision;
    let kept = app
        .at_bench(move |bench| super::find(bench, &slug, revision))
        .await?;
    let told = promises::known(&app, &kept.plan).await?;
    let status = match told {
        Some(_) => StatusCode::OK,
        None => {
            promises::draw(&app, &kept.plan);
            StatusCode::ACCEPTED
        }
    };
    let power = Power::of(&kept.plan, told, &wanted);
    let part = PowerPart { kept: &kept, power }.render()?;
    Ok((status, Html(part)).into_response())
}

impl Power {
    pub(crate) fn of(plan: &Plan, told: Option<Told>, wanted: &Wanted) -> Self {
        match told {
            Some(Ok(promise)) => Self::Shown(Shown::of(plan, &promise)),
            Some(Err(sentence)) => Self::Never(sentence),
            None => Self::Awaited(wanted.look.saturating_add(1)),
        }
    }

    pub(crate) fn is_awaited(&self) -> bool {
        matches!(self, Self::Awaited(_))
    }
}

impl Shown {
    fn of(plan: &Plan, promise: &Promise) -> Self {
        let of_100 = |share: f64| format!("{:.0}", 100.0 * share);
        let pieces = |name: &str| {
            let arm = plan.arms.iter().find(|arm| arm.name == name);
            arm.map_or(0, |arm| arm.pieces)
        };
        let least = |promised: &Promised| pieces(&promised.first).min(pieces(&promised.second));
        let sentence = |promised: &Promised| promised.sentence(least(promised));
        let row = |promised: &Promised| {
            [
                text::plan::against(&promised.second, &promised.first),
                of_100(promised.shows_margin_together),
                of_100(promised.shows_grade_4),
                of_100(promised.shows_alike),
                of_100(promised.errs),
                promised.basis.words().to_owned(),
            ]
        };
        let sizes = promise.by_pieces.iter();
        Self {
            sentences: promise.comparisons.iter().map(sentence).collect(),
            rows: promise.comparisons.iter().map(row).collect(),
            plot: chart::power_by_pieces(&promise.by_pieces),
            sizes: sizes
                .map(|by| (by.pieces, of_100(by.shows_margin)))
                .collect(),
            origin: promise.scatter.origin.clone(),
        }
    }
}
