//! What stands on a run's page: a card for each step, for each clock and for each note.

use super::time;
use crate::text;
use dyeing::{
    Celsius,
    run::{Clock, Noted, Run, What, usual_departures},
    run_sheet::Step,
};

/// A preset of a temperature is this far from the planned one, K.
const OFF_K: f64 = 5.0;

/// A clock as the page and its script show it.
pub(super) struct ClockCard {
    pub(super) number: u32,
    pub(super) title: String,
    pub(super) running: bool,
    /// How long it had run when it last stopped, s.
    pub(super) ran_s: i64,
    /// Since when it runs, s since 1970; 0 when it doesn't.
    pub(super) since_s: i64,
    pub(super) planned_s: Option<i64>,
    pub(super) words: String,
    pub(super) over: bool,
}

pub(super) struct StepCard<'a> {
    pub(super) step: &'a Step,
    pub(super) open: bool,
    pub(super) is_running: bool,
    pub(super) is_done: bool,
    /// How far it has come, in words.
    pub(super) state: &'static str,
    pub(super) clock: ClockCard,
    pub(super) began: String,
    pub(super) heat: String,
    /// Temperatures to tap, value and words.
    pub(super) warm: Vec<(String, String)>,
    pub(super) usual: Vec<&'static str>,
    pub(super) notes: Vec<NoteCard>,
    /// Words that were typed and couldn't be taken.
    pub(super) words: String,
}

/// A note that counts.
pub(super) struct NoteCard {
    pub(super) number: u32,
    pub(super) step: String,
    pub(super) when: String,
    pub(super) time: String,
    pub(super) words: String,
    /// What can be corrected beside the time; none for clocks.
    pub(super) value: Option<String>,
    pub(super) corrected: bool,
}

impl ClockCard {
    pub(super) fn of(step: &Step, clock: Clock, now_s: i64) -> Self {
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
    pub(super) fn of(run: &Run, step: &'a Step, wanted: bool, words: &str, now_s: i64) -> Self {
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
    pub(super) fn of(noted: &Noted, now_s: i64) -> Self {
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
