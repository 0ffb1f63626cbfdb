//! `GET /trials/{slug}/compare?a=3-0&b=5-5&gap=small`: any two pieces or stages side by side,
//! and what each grade looks like around the first.

use crate::app::App;
use crate::assets::Assets;
use crate::error::Error;
use crate::text;
use crate::text::trial as say;
use askama::Template;
use axum::extract::{Path, Query, State};
use axum::response::Html;
use report::compare::{Comparison, compare, name};
use serde::Deserialize;
use std::collections::{BTreeMap, BTreeSet};
use trial::{
    PieceId, Results, Role, Trial,
    side_by_side::{SideBySide, Sight, sights},
};

#[derive(Template)]
#[template(path = "trial/compare.html")]
struct ComparePage<'a> {
    assets: &'static Assets,
    trial: &'a Trial,
    margin: String,
    /// What may be chosen, by arm.
    choices: Vec<Group>,
    chosen: [String; 2],
    names: [String; 2],
    touching: bool,
    /// What was asked for and is not there.
    missing: Option<&'static str>,
    shown: Option<Comparison>,
}

struct Group {
    arm: String,
    sights: Vec<(String, String)>,
}

/// Which two, as piece and stage; and `gap=small` for a gap between them.
#[derive(Deserialize)]
pub(crate) struct Wanted {
    a: Option<String>,
    b: Option<String>,
    gap: Option<String>,
}

pub(crate) async fn page(
    State(app): State<App>,
    Path(slug): Path<String>,
    Query(wanted): Query<Wanted>,
) -> Result<Html<String>, Error> {
    let (results, doubts) = app
        .at_bench(move |bench| {
            let results = super::results(bench, &slug)?;
            let mut doubts = BTreeMap::new();
            for photo in &results.photos {
                if let Some(doubt) = bench.doubt(photo.id)? {
                    doubts.insert(photo.id, doubt);
                }
            }
            Ok((results, doubts))
        })
        .await?;
    let all = sights(&results.readings);
    let asked = [&wanted.a, &wanted.b].map(|text| text.as_deref());
    let found = asked.map(|text| text.and_then(read).filter(|sight| all.contains(sight)));
    let missing = asked
        .iter()
        .zip(&found)
        .any(|(asked, found)| asked.is_some_and(|text| !text.is_empty()) && found.is_none());
    let chosen = match (found, usual(&results, &all)) {
        ([Some(a), Some(b)], _) => Some([a, b]),
        ([a, b], Some([first, second])) => Some([a.unwrap_or(first), b.unwrap_or(second)]),
        _ => None,
    };
    let trial = &results.trial;
    let names = chosen.map(|pair| pair.map(|sight| name(trial, sight)));
    let side = chosen.and_then(|pair| SideBySide::of(&results.readings, &doubts, pair));
    let touching = wanted.gap.as_deref() != Some("small");
    let shown = match (&side, &names) {
        (Some(side), Some([a, b])) => Some(compare(side, [a, b], touching)),
        _ => None,
    };
    let page = ComparePage {
        assets: Assets::get(),
        trial,
        margin: report::words::number(trial.margin_de00),
        choices: choices(trial, &all),
        missing: match (missing, chosen.is_some() && shown.is_none()) {
            (true, _) => Some(text::trial::nothing_was_read_of_what_this_address()),
            (_, true) => Some(text::trial::these_two_were_read_by_different_means()),
            _ => None,
        },
        chosen: chosen.map_or_else(Default::default, |pair| pair.map(written)),
        names: names.unwrap_or_default(),
        touching,
        shown,
    };
    Ok(Html(page.render()?))
}

/// `3-5` is piece number 3 after 5 rounds.
fn read(text: &str) -> Option<Sight> {
    let (piece, stage) = text.split_once('-')?;
    Some(Sight {
        stage: stage.parse().ok()?,
        piece: PieceId(piece.parse().ok()?),
    })
}

fn written(sight: Sight) -> String {
    format!("{}-{}", sight.piece, sight.stage)
}

/// Two that are worth a look where none were asked for: a test piece at its first stage and at its
/// last.
fn usual(results: &Results, all: &BTreeSet<Sight>) -> Option<[Sight; 2]> {
    let mut tests = all.iter().filter(|sight| {
        let piece = results.trial.piece(sight.piece);
        piece.is_some_and(|piece| piece.role == Role::Test)
    });
    let last = tests.next_back().or(all.last())?;
    let own = all.iter().find(|sight| sight.piece == last.piece);
    Some([*own.unwrap_or(last), *last])
}

fn choices(trial: &Trial, all: &BTreeSet<Sight>) -> Vec<Group> {
    let of_arm = |arm: &trial::Arm| Group {
        arm: arm.name.clone(),
        sights: trial
            .pieces_of(arm.id)
            .flat_map(|piece| all.iter().filter(move |sight| sight.piece == piece.id))
            .map(|sight| (written(*sight), name(trial, *sight)))
            .collect(),
    };
    let groups = trial.arms.iter().map(of_arm);
    groups.filter(|group| !group.sights.is_empty()).collect()
}
