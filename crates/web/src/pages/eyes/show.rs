//! `GET /trials/{slug}/eyes`: sessions of judging by eye, a new one, and what came of them.

use crate::app::App;
use crate::assets::Assets;
use crate::error::Error;
use crate::form::Problems;
use crate::text;
use crate::text::eyes as say;
use askama::Template;
use axum::extract::{Path, State};
use axum::http::StatusCode;
use axum::response::{Html, IntoResponse, Response};
use report::eyes::{self, EyeSection};
use report::words;
use trial::{
    Results, Role, Trial,
    eyes::{Judging, PairKind, Vision, Way},
};

/// A new session as typed.
pub(super) struct SessionForm {
    pub(super) stage: String,
    pub(super) way: String,
    pub(super) staining: bool,
    pub(super) catch: bool,
    pub(super) repeats: String,
}

/// A person as typed, and for which session.
#[derive(Default)]
pub(super) struct JudgeForm {
    pub(super) session: i64,
    pub(super) name: String,
    pub(super) light: String,
    pub(super) vision: String,
    pub(super) distance: String,
}

/// What was typed and what is wrong with it.
pub(super) struct Typed {
    pub(super) session: Option<SessionForm>,
    pub(super) judge: JudgeForm,
    pub(super) problems: Problems,
}

#[derive(Template)]
#[template(path = "eyes/show.html")]
struct ShowPage<'a> {
    assets: &'static Assets,
    token: &'a str,
    trial: &'a Trial,
    keepers: bool,
    witnesses: bool,
    session: &'a SessionForm,
    judge: &'a JudgeForm,
    problems: &'a Problems,
    visions: [Vision; 3],
    open: Vec<SessionCard<'a>>,
    closed: Vec<SessionCard<'a>>,
    section: Option<EyeSection>,
    about: &'static str,
    about_agreement: &'static str,
}

struct SessionCard<'a> {
    id: i64,
    title: String,
    about: String,
    notes: &'a [String],
    cloth: bool,
    begun_on: String,
    closed_on: Option<String>,
    people: Vec<Person<'a>>,
}

struct Person<'a> {
    sitting: i64,
    name: &'a str,
    how: String,
    done: usize,
    all: usize,
}

pub(crate) async fn page(
    State(app): State<App>,
    Path(slug): Path<String>,
) -> Result<Response, Error> {
    let typed = Typed {
        session: None,
        judge: JudgeForm::default(),
        problems: Problems::default(),
    };
    show(&app, slug, typed).await
}

/// The page with what was typed; refused where there are problems.
pub(super) async fn show(app: &App, slug: String, typed: Typed) -> Result<Response, Error> {
    let (results, sessions) = app
        .at_bench(move |bench| {
            let results = crate::pages::trial::results(bench, &slug)?;
            let sessions = bench.eye_sessions(results.trial.id)?;
            Ok((results, sessions))
        })
        .await?;
    let trial = &results.trial;
    let has = |role: Role| trial.pieces.iter().any(|piece| piece.role == role);
    let first = usual(&results);
    let cards = |wanted: bool| {
        let of_kind = sessions
            .iter()
            .filter(move |s| s.closed_at.is_some() == wanted);
        of_kind.map(card).collect()
    };
    let page = ShowPage {
        assets: Assets::get(),
        token: app.token.as_str(),
        trial,
        keepers: has(Role::Keeper),
        witnesses: has(Role::Witness),
        session: typed.session.as_ref().unwrap_or(&first),
        judge: &typed.judge,
        problems: &typed.problems,
        visions: Vision::ALL,
        open: cards(false),
        closed: cards(true),
        section: eyes::section(&results),
        about: eyes::about(),
        about_agreement: report::agreement::about(),
    };
    let status = match typed.problems.is_empty() {
        true => StatusCode::OK,
        false => StatusCode::UNPROCESSABLE_ENTITY,
    };
    Ok((status, Html(page.render()?)).into_response())
}

/// The session that is proposed: the last stage there is, with all that tells how steady
/// an eye is.
fn usual(results: &Results) -> SessionForm {
    let read = results.readings.iter().map(|reading| reading.stage).max();
    SessionForm {
        stage: read.unwrap_or(results.trial.rounds).to_string(),
        way: Way::Cloth.as_str().into(),
        staining: true,
        catch: true,
        repeats: "4".into(),
    }
}

fn card(judging: &Judging) -> SessionCard<'_> {
    let session = &judging.session;
    let count = |kind: PairKind| session.pairs.iter().filter(|p| p.kind == kind).count();
    let mut parts = vec![text::eyes::for_change_in_colour(count(PairKind::Change))];
    let several = [
        (count(PairKind::Catch), text::eyes::without_a_difference()),
        (count(PairKind::Staining), text::eyes::for_staining()),
        (
            session.repeats,
            text::eyes::of_those_for_change_a_second_time(),
        ),
    ];
    for (count, what) in several.into_iter().filter(|(count, _)| *count > 0) {
        parts.push(format!("{count} {what}"));
    }
    SessionCard {
        id: judging.id,
        title: format!(
            "{}, {}",
            words::stage_heading(session.stage),
            session.way.in_words()
        ),
        about: text::eyes::pairs(parts.join(", ")),
        notes: &session.notes,
        cloth: session.way == Way::Cloth,
        begun_on: words::day(&judging.begun_at),
        closed_on: judging.closed_at.as_deref().map(words::day),
        people: judging
            .sittings
            .iter()
            .map(|sitting| Person {
                sitting: sitting.id,
                name: &sitting.judge.name,
                how: [
                    sitting.judge.light.as_str(),
                    sitting.judge.vision.in_words(),
                    sitting.judge.distance.as_str(),
                ]
                .into_iter()
                .filter(|text| !text.is_empty())
                .collect::<Vec<_>>()
                .join(", "),
                done: sitting.done(),
                all: sitting.order.len(),
            })
            .collect(),
    }
}
