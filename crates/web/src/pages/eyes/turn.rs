//! `GET /judging/{sitting}`: the pair that a person judges next, known by codes alone;
//! with `?last`, the one before it anew. `POST`: keeps the grade and shows the next.
//!
//! Neither the address nor the page tells the arm, the piece or what anybody gave.

use crate::app::{App, now};
use crate::assets::Assets;
use crate::error::Error;
use crate::form::Signed;
use crate::text;
use crate::text::eyes as say;
use askama::Template;
use axum::extract::{Path, Query, State};
use axum::response::{Html, Redirect};
use colour::{Lab, grade::Grade};
use serde::Deserialize;
use trial::eyes::{Given, Judging, Pair, PairKind, Sitting};

#[derive(Template)]
#[template(path = "eyes/turn.html")]
struct TurnPage<'a> {
    assets: &'static Assets,
    token: &'a str,
    sitting: i64,
    judge: &'a str,
    /// Where the trial's own page on judging is, for when all is done.
    back: String,
    closed: bool,
    turn: Option<TurnCard>,
    done: usize,
    all: usize,
}

struct TurnCard {
    number: usize,
    codes: [String; 2],
    staining: bool,
    /// Where the pair is shown on the screen, SVG.
    shown: Option<String>,
    grades: Vec<GradeButton>,
    /// What was given before, where it is corrected.
    before: Option<String>,
    remark: String,
}

struct GradeButton {
    grade: String,
    key: usize,
    meaning: &'static str,
}

/// Whether the last grade is to be given anew.
#[derive(Deserialize)]
pub(crate) struct Wanted {
    last: Option<String>,
}

pub(crate) async fn page(
    State(app): State<App>,
    Path(sitting): Path<i64>,
    Query(wanted): Query<Wanted>,
) -> Result<Html<String>, Error> {
    let (slug, judging) = app
        .at_bench(move |bench| {
            let found = bench.session_of_sitting(sitting)?;
            let (trial, judging) =
                found.ok_or(Error::NotFound(say::nobody_judges_at_this_address()))?;
            let trial = bench.trial_by_id(trial)?;
            Ok((
                trial
                    .ok_or(Error::NotFound(say::nobody_judges_at_this_address()))?
                    .slug,
                judging,
            ))
        })
        .await?;
    let own = judging.sittings.iter().find(|own| own.id == sitting);
    let own = own.ok_or(Error::NotFound(say::nobody_judges_at_this_address()))?;
    let next = own.next();
    let anew = next.unwrap_or(own.order.len()).checked_sub(1);
    let at = match wanted.last {
        Some(_) => anew,
        None => next,
    };
    let page = TurnPage {
        assets: Assets::get(),
        token: app.token.as_str(),
        sitting,
        judge: &own.judge.name,
        back: format!("/trials/{slug}/eyes"),
        closed: judging.closed_at.is_some(),
        turn: at.map(|at| card(&judging, own, at)),
        done: own.done(),
        all: own.order.len(),
    };
    Ok(Html(page.render()?))
}

fn card(judging: &Judging, own: &Sitting, at: usize) -> TurnCard {
    let turn = own.order[at];
    let pair = &judging.session.pairs[turn.pair];
    let mut codes = pair.cloths.map(|cloth| cloth.code.to_string());
    if turn.swapped {
        codes.reverse();
    }
    let staining = pair.kind == PairKind::Staining;
    TurnCard {
        number: at + 1,
        codes,
        staining,
        shown: shown(pair, turn.swapped),
        grades: (2..=10)
            .map(|half_steps| button(half_steps, staining))
            .collect(),
        before: own.given[at].as_ref().map(|given| match given.grade {
            Some(grade) => grade.to_string(),
            None => text::eyes::cant_tell_2().to_owned(),
        }),
        remark: own.given[at]
            .as_ref()
            .map_or_else(String::new, |given| given.remark.clone()),
    }
}

fn shown(pair: &Pair, swapped: bool) -> Option<String> {
    let mut labs = pair.labs?.map(Lab::from);
    if swapped {
        labs.reverse();
    }
    Some(report::swatch::side_by_side(
        labs,
        text::eyes::the_pair_side_by_side(),
        0.0,
    ))
}

fn button(half_steps: u8, staining: bool) -> GradeButton {
    GradeButton {
        grade: Grade::from_half_steps(half_steps).to_string(),
        key: usize::from(half_steps) - 1,
        meaning: match (half_steps, staining) {
            (10, false) => text::eyes::no_change(),
            (10, true) => text::eyes::no_stain(),
            (2, false) => text::eyes::the_most_change(),
            (2, true) => text::eyes::the_deepest_stain(),
            _ => "",
        },
    }
}

pub(crate) async fn give(
    State(app): State<App>,
    Path(sitting): Path<i64>,
    form: Signed,
) -> Result<Redirect, Error> {
    let malformed = |what: &str| Error::Malformed(what.to_owned());
    let turn = form.text("turn").parse::<usize>();
    let turn = turn.ok().and_then(|number| number.checked_sub(1));
    let turn = turn.ok_or_else(|| malformed(text::eyes::the_form_names_no_pair_go_back()))?;
    let grade = match form.text("grade").as_str() {
        "none" => None,
        text => {
            let grade = text.parse::<Grade>();
            Some(grade.map_err(|error| malformed(&format!("{error}.")))?)
        }
    };
    let given = Given {
        grade,
        remark: form.text("remark"),
        made_at: now(),
    };
    app.at_bench(move |bench| {
        bench
            .session_of_sitting(sitting)?
            .ok_or(Error::NotFound(say::nobody_judges_at_this_address()))?;
        Ok(bench.give_grade(sitting, turn, &given)?)
    })
    .await?;
    Ok(Redirect::to(&format!("/judging/{sitting}")))
}
