//! `GET /runs/{id}/sheet?paper=letter`: the run on one sheet of paper, with what was noted.

use super::{cards::said, time};
use crate::app::App;
use crate::error::Error;
use crate::pages::board::{paper, to_print};
use crate::pages::recipe::amounts::cautions;
use crate::text;
use axum::extract::{Path, Query, State};
use axum::response::Response;
use dyeing::{
    run::{Run, What},
    run_sheet::Step,
};
use report::run_sheet::{PrintedSheet, StepNotes, run_sheet};
use serde::Deserialize;

#[derive(Deserialize)]
pub(crate) struct Wanted {
    paper: Option<String>,
}

pub(crate) async fn page(
    State(app): State<App>,
    Path(id): Path<i64>,
    Query(wanted): Query<Wanted>,
) -> Result<Response, Error> {
    let kept = app
        .at_bench(move |bench| super::find_to_show(bench, id))
        .await?;
    let run = &kept.run;
    let begun = report::words::day(&kept.begun_at);
    let more = match &kept.trial {
        Some((_, trial)) => text::run::begun_2(&begun, trial),
        None => text::run::begun_3(&begun),
    };
    let whole = run.noted().iter().filter(|n| n.step.is_none());
    let printed = PrintedSheet {
        title: &kept.title,
        about: &run.sheet.about,
        more,
        cautions: cautions(&run.sheet.cautions),
        steps: &run.sheet.steps,
        notes: run.sheet.steps.iter().map(|s| notes(run, s)).collect(),
        whole: run
            .sheet
            .departures
            .iter()
            .cloned()
            .chain(whole.map(|n| said(&n.what)))
            .collect(),
        paper: paper(wanted.paper.as_deref()),
    };
    Ok(to_print(run_sheet(&printed).map_err(Error::broken)?))
}

fn notes(run: &Run, step: &Step) -> StepNotes {
    let clock = run.clock(step.number);
    let day = |at_s: i64| time::of_day(at_s, at_s);
    let times = [clock.began_s, clock.stopped_s]
        .into_iter()
        .flatten()
        .map(day);
    let mut warmth = Vec::new();
    let mut words = Vec::new();
    for noted in run.noted_of(step.number) {
        match &noted.what {
            What::Temperature(at) => warmth.push(at.shown()),
            What::Departed(text) | What::Remarked(text) => words.push(text.clone()),
            _ => {}
        }
    }
    StepNotes {
        times: times.collect::<Vec<_>>().join(text::run::to()),
        warmth: warmth.join(", "),
        words: words.join("; "),
    }
}
