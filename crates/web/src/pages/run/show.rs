//! `GET /runs/{id}?at=4`: the run sheet with its clocks and notes; with `.json` after the number, the same as data.

use super::time;
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
    Celsius,
    run::{Clock, Event, Noted, Run, What, usual_departures},
    run_sheet::Step,
};
use locale::Locale;
use report::chart;
use serde::Deserialize;
use serde_json::json;
use store::KeptRun;

/// A preset of a temperature is this far from the planned one, K.
const OFF_K: f64 = 5.0;

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

/// A clock as the page and its script show it.
struct ClockCard {
    number: u32,
    title: String,
    running: bool,
    /// How long it had run when it last stopped, s.
    ran_s: i64,
    /// Since when it runs, s since 1970; 0 when it doesn't.
    since_s: i64,
    planned_s: Option<i64>,
    words: String,
    over: bool,
}

struct StepCard<'a> {
    step: &'a Step,
    open: bool,
    is_running: bool,
    is_done: bool,
    /// How far it has come, in words.
    state: &'static str,
    clock: ClockCard,
    began: String,
    heat: String,
    /// Temperatures to tap, value and words.
    warm: Vec<(String, String)>,
    usual: Vec<&'static str>,
    notes: Vec<NoteCard>,
    /// Words that were typed and couldn't be taken.
    words: String,
}

/// A note that counts.
struct NoteCard {
    number: u32,
    step: String,
    when: String,
    time: String,
    words: String,
    /// What can be corrected beside the time; none for clocks.
    value: Option<String>,
    corrected: bool,
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

impl ClockCard {
    fn of(step: &Step, clock: Clock, now_s: i64) -> Self {
        let left = step.minutes.map(|planned| clock.left_s(planned, now_s));
        let gone = time::length(clock.elapsed_s(now_s));
        let words = match left {
            Some(left) if left >= 0 => text::run::left(&gone, time::length(left)),
            Some(left) => text::run::over(&gone, time::length(left)),
            None => gone,
        };
        Self {
            number: step.number,
            title: step.title.clone(),
            running: clock.is_running(),
            ran_s: clock.ran_s,
            since_s: clock.running_since_s.unwrap_or(0),
            planned_s: step.minutes.map(|minutes| (minutes * 60.0).round() as i64),
            words,
            over: left.is_some_and(|left| left < 0),
        }
    }
}

impl<'a> StepCard<'a> {
    fn of(run: &Run, step: &'a Step, wanted: bool, words: &str, now_s: i64) -> Self {
        let clock = run.clock(step.number);
        let is_running = clock.is_running();
        let is_done = !is_running && clock.began_s.is_some();
        let state = match (is_running, is_done) {
            (true, _) => text::run::running(),
            (_, true) => text::run::done(),
            _ => text::run::to_do(),
        };
        let span = |from: i64, to: i64| {
            text::run::from_to(time::of_day(from, now_s), time::of_day(to, now_s))
        };
        let began = match (clock.began_s, clock.stopped_s, clock.is_running()) {
            (Some(from), Some(to), false) => span(from, to),
            (Some(from), _, _) => text::run::since(time::of_day(from, now_s)),
            _ => String::new(),
        };
        Self {
            open: is_running || wanted,
            is_running,
            is_done,
            state,
            clock: ClockCard::of(step, clock, now_s),
            began,
            heat: match (step.from_c, step.to_c) {
                (Some(from), Some(to)) if from != to => text::run::from_to(from, to),
                (_, Some(at)) => at.to_string(),
                _ => String::new(),
            },
            warm: warm(step),
            usual: usual_departures(step.kind),
            notes: run
                .noted_of(step.number)
                .map(|n| NoteCard::of(n, now_s))
                .collect(),
            words: words.to_owned(),
            step,
        }
    }
}

/// Temperatures to tap: as planned, and a little off.
fn warm(step: &Step) -> Vec<(String, String)> {
    let Some(planned) = step.to_c.map(Celsius::celsius) else {
        return Vec::new();
    };
    [planned - OFF_K, planned, planned + OFF_K]
        .into_iter()
        .filter_map(|degrees| Celsius::new(degrees).ok())
        .map(|at| {
            let as_planned = if at.celsius() == planned {
                text::run::as_planned()
            } else {
                ""
            };
            let words = format!("{}{as_planned}", at.shown());
            (format!("{} °C", at.celsius()), words)
        })
        .collect()
}

/// A temperature to the hundredth of a degree, for correcting.
fn in_full(at: Celsius) -> String {
    let degrees = (at.local_degrees() * 100.0).round() / 100.0;
    format!("{degrees} {}", Celsius::local_scale())
}

impl NoteCard {
    fn of(noted: &Noted, now_s: i64) -> Self {
        Self {
            number: noted.number,
            step: noted.step.map(|step| step.to_string()).unwrap_or_default(),
            when: time::of_day(noted.at_s, now_s),
            time: time::of_day(noted.at_s, noted.at_s),
            words: said(&noted.what),
            value: match &noted.what {
                What::Temperature(at) => Some(in_full(*at)),
                What::Departed(words) | What::Remarked(words) => Some(words.clone()),
                _ => None,
            },
            corrected: noted.corrected,
        }
    }
}

/// What happened, in words.
pub(crate) fn said(what: &What) -> String {
    match what {
        What::Started => text::run::clock_started().to_owned(),
        What::Stopped => text::run::clock_stopped().to_owned(),
        What::Temperature(at) => text::run::it_was_2(at),
        What::Departed(words) => text::run::done_otherwise_2(words),
        What::Remarked(words) => words.clone(),
        What::Finished => text::run::run_finished().to_owned(),
        What::Withdrawn(why) if why.is_empty() => text::run::taken_back().to_owned(),
        What::Withdrawn(why) => text::run::taken_back_2(why),
    }
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
