//! `GET /runs/{id}?at=4`: the run sheet with its clocks and notes; with `.json` after the number, the same as data.

use super::{
    cards::{ClockCard, NoteCard, StepCard, said},
    time,
};
use crate::app::App;
use crate::assets::Assets;
use crate::error::Error;
use crate::form::Problems;
use crate::text;
use crate::text::run as say;
use askama::Template;
use axum::Json;
use axum::extract::{Path, Query, State};
use axum::response::{Html, IntoResponse, Response};
use dyeing::{
    run::{Event, Run, What},
    run_sheet::Step,
};
use locale::Locale;
use report::chart;
use serde::Deserialize;
use serde_json::json;
use store::KeptRun;

/// Which step is open beside those that run and the next one.
#[derive(Deserialize)]
pub(crate) struct Wanted {
    at: Option<u32>,
}

#[derive(Template)]
#[template(path = "run/show.html")]
struct ShowPage<'a> {
    assets: &'static Assets,
    token: &'a str,
    problems: &'a Problems,
    kept: &'a KeptRun,
    now_s: i64,
    as_of: String,
    cards: Vec<StepCard<'a>>,
    running: Vec<ClockCard>,
    next: Option<&'a Step>,
    finished: bool,
    finish: Option<NoteCard>,
    whole: Vec<NoteCard>,
    whole_words: String,
    departures: Vec<String>,
    curve: String,
    events: Vec<String>,
}

pub(crate) async fn page(
    State(app): State<App>,
    Path(name): Path<String>,
    Query(wanted): Query<Wanted>,
) -> Result<Response, Error> {
    let json = name.ends_with(".json");
    let id = name.trim_end_matches(".json").parse().unwrap_or(-1);
    if json {
        let kept = app.at_bench(move |bench| super::find(bench, id)).await?;
        let departures = locale::within(Locale::DATA, || kept.run.departures());
        return Ok(Json(json!({
            "title": kept.title,
            "recipe": kept.recipe,
            "revision": kept.revision,
            "begun_at": kept.begun_at,
            "sheet": kept.run.sheet,
            "events": kept.run.events(),
            "counts": kept.run.noted(),
            "departures": departures,
        }))
        .into_response());
    }
    let kept = app
        .at_bench(move |bench| super::find_to_show(bench, id))
        .await?;
    let page = render(
        &app,
        &kept,
        &Problems::default(),
        (wanted.at, String::new()),
    )?;
    Ok(page.into_response())
}

/// The page with what is wrong and the words that were typed at a step.
pub(crate) fn render(
    app: &App,
    kept: &KeptRun,
    problems: &Problems,
    (at, words): (Option<u32>, String),
) -> Result<Html<String>, Error> {
    let now_s = time::now_s();
    let run = &kept.run;
    let next = run.next().filter(|_| !run.is_finished());
    let cards: Vec<StepCard> = run
        .sheet
        .steps
        .iter()
        .map(|step| {
            let typed = if at == Some(step.number) {
                words.as_str()
            } else {
                ""
            };
            let wanted = next.is_some_and(|n| n.number == step.number);
            StepCard::of(run, step, wanted || at == Some(step.number), typed, now_s)
        })
        .collect();
    let whole = run.noted().iter().filter(|n| n.step.is_none());
    let (finish, whole): (Vec<_>, Vec<_>) = whole.partition(|n| n.what == What::Finished);
    let page = ShowPage {
        assets: Assets::get(),
        token: app.token.as_str(),
        problems,
        now_s,
        as_of: time::of_day(now_s, now_s),
        running: run
            .running()
            .into_iter()
            .map(|step| ClockCard::of(step, run.clock(step.number), now_s))
            .collect(),
        cards,
        next,
        finished: run.is_finished(),
        finish: finish.first().map(|n| NoteCard::of(n, now_s)),
        whole: whole.into_iter().map(|n| NoteCard::of(n, now_s)).collect(),
        whole_words: if at.is_none() { words } else { String::new() },
        departures: run.departures().into_iter().map(|d| d.sentence).collect(),
        curve: chart::temperature_over_time(&run.sheet.programme, &into_bath(run)),
        events: run.events().iter().map(|e| told(e, now_s)).collect(),
        kept,
    };
    Ok(Html(page.render()?))
}

/// Temperatures that were noted, by minutes since the bath's first step began.
fn into_bath(run: &Run) -> Vec<(f64, f64)> {
    let bath = run.sheet.steps.iter().filter(|s| s.kind.is_of_bath());
    let numbers: Vec<u32> = bath.map(|s| s.number).collect();
    let began = numbers.iter().filter_map(|n| run.clock(*n).began_s).min();
    let Some(began_s) = began else {
        return Vec::new();
    };
    let noted = run.noted().iter();
    let noted = noted.filter(|n| n.step.is_some_and(|step| numbers.contains(&step)));
    noted
        .filter_map(|n| match n.what {
            What::Temperature(at) => Some(((n.at_s - began_s).max(0) as f64 / 60.0, at.celsius())),
            _ => None,
        })
        .collect()
}

/// An event with everything that is kept of it.
fn told(event: &Event, now_s: i64) -> String {
    let step = event
        .step
        .map_or(text::run::whole_run().to_owned(), |step| {
            text::run::step_2(step)
        });
    let of = event.of.map_or(String::new(), text::run::instead_of_note);
    text::run::noted_now_s2(
        &step,
        time::of_day(event.at_s, now_s),
        said(&event.what),
        &of,
        time::of_day(event.noted_s, now_s),
    )
}
