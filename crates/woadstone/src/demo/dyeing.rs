//! The demo's bath: its recipe, a finished run by it, and readings of its waters.

use anyhow::Context;
use dyeing::{
    Celsius,
    balance::{WaterNote, WrittenReading},
    run::What,
    run_sheet::{Step, StepKind},
};
use jiff::{SignedDuration, Timestamp};
use store::{Bench, NewEvent};

use super::scenario;

/// The recipe as a person wrote it.
const RECIPE: &str = include_str!("recipe.toml");
/// The recipe's address on the bench, made of its name.
const SLUG: &str = "brick-red-napkins-invented";
/// The run's title.
const RUN: &str = "Napkins for Quillet Harbour, invented";
/// It was dyed so long before the demo is laid out.
const BEFORE: SignedDuration = SignedDuration::from_hours(30);

/// Jars compared with a ladder of the bath: volume and step, the spent bath first.
const JARS: [(&str, &str); 5] = [
    ("14 L", "1:4 to 1:5"),
    ("15 L", "1:12"),
    ("15 L", "1:32"),
    ("10 L", "1:64"),
    ("10 L", "1:200 to 1:256"),
];

/// Puts the recipe, its run and the readings on the bench; what is there already stays, and a run
/// that was cut short is taken up where it ended.
///
/// # Errors
/// The bench can't be read or written.
pub fn lay_out(bench: &mut Bench, now: &str) -> anyhow::Result<()> {
    if bench.recipe(SLUG, None)?.is_none() {
        bench.keep_recipe(RECIPE, "written for the demo", now)?;
    }
    let trial = bench
        .trial(scenario::SLUG)?
        .context("the demo has no trial")?;
    let now: Timestamp = now.parse().context("the time now is no time")?;
    let begun = now
        .checked_sub(BEFORE)
        .context("the time now is too early")?;
    let known = bench.runs_of_trial(trial.id)?;
    let run = match known.iter().find(|run| run.title == RUN) {
        Some(run) => run.id,
        None => {
            let at = begun.to_string();
            bench.begin_run(SLUG, 1, Some(scenario::SLUG), RUN, &at)?
        }
    };
    let kept = bench
        .run(run)?
        .context("the demo's run was begun and then not found")?;
    let events = events(&kept.run.sheet.steps, begun.as_second());
    for event in events.iter().skip(kept.run.events().len()) {
        bench.note_run(run, event, event.at_s)?;
    }
    let over_s = events.last().map_or(begun.as_second(), |e| e.at_s);
    let read = bench.water_events(run)?.len();
    for (k, (volume, step)) in JARS.into_iter().enumerate().skip(read) {
        let jar = WrittenReading {
            volume: volume.to_owned(),
            looks_like: Some(step.to_owned()),
            ..WrittenReading::default()
        };
        let what = if k == 0 {
            WaterNote::Bath(jar)
        } else {
            WaterNote::Rinse(jar)
        };
        bench.note_water(run, &what, None, over_s)?;
    }
    Ok(())
}

/// Every step as planned, but for a bath that was too cool; with two remarks.
fn events(steps: &[Step], begun_s: i64) -> Vec<NewEvent> {
    let mut events = Vec::new();
    let at = |minutes: f64| begun_s + (60.0 * minutes).round() as i64;
    for step in steps {
        let mut note = |minutes: f64, what: What| {
            events.push(NewEvent {
                step: Some(step.number),
                at_s: at(step.begins_min + minutes),
                what,
                of: None,
            });
        };
        note(0.0, What::Started);
        let is_fixing = step.text.contains("soda") && step.text.contains("slowly");
        if is_fixing && let Ok(cool) = Celsius::new(53.0) {
            note(1.0, What::Temperature(cool));
        }
        if step.kind == StepKind::Wash {
            let words = "left out for Rinsed cold only, as the trial asks";
            // The arm's own treatment: worth a note, and no departure.
            note(1.0, What::Remarked(words.to_owned()));
        }
        note(step.minutes.unwrap_or(5.0), What::Stopped);
    }
    let last = events.last().map_or(begun_s, |e| e.at_s);
    let whole = |seconds: i64, what: What| NewEvent {
        step: None,
        at_s: last + seconds,
        what,
        of: None,
    };
    let water = "well water, harder than usual".to_owned();
    events.push(whole(60, What::Remarked(water)));
    events.push(whole(120, What::Finished));
    events
}
