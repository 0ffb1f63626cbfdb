//! What plans promise, drawn in the background: begun when a plan is kept, so that it is there when the
//! plan's page is first looked at or soon after.
//!
//! One thread of its own draws one plan after the other. It is no task of the server, which therefore
//! ends without waiting for it; what it drew is kept by one write, or drawn again another time.

use crate::app::{App, blocking};
use crate::error::Error;
use std::collections::VecDeque;
use std::sync::{Mutex, MutexGuard, PoisonError};
use std::time::Duration;
use store::Bench;
use tokio::sync::watch;
use trial::plan::{Plan, Promise, RUNS};

/// How long a page waits for figures that are being drawn. Small plans take less.
const PATIENCE: Duration = Duration::from_millis(10);
/// Plans kept by another edition of the rules that are drawn when the program starts.
const MOST_AT_START: u32 = 100;
/// Results that are held because the bench can't keep them.
const MOST_HELD: usize = 100;

/// What a plan promises, or a sentence why that can't be told.
pub(crate) type Told = Result<Promise, String>;

/// Plans whose trials are being drawn or wait for it.
pub(crate) struct Promises {
    work: Mutex<Work>,
    /// Counts plans that are done; what it counts to means nothing.
    done: watch::Sender<u64>,
}

#[derive(Default)]
struct Work {
    waiting: VecDeque<Plan>,
    drawing: Option<Plan>,
    /// Whether a thread draws, or is about to end.
    busy: bool,
    /// What the bench doesn't keep: why a plan can promise nothing, or a promise that
    /// could not be written.
    held: VecDeque<(Plan, Told)>,
}

impl Default for Promises {
    fn default() -> Self {
        Self {
            work: Mutex::default(),
            done: watch::Sender::new(0),
        }
    }
}

/// What a plan promises, if that is known by now or within a moment; it is being drawn
/// otherwise.
pub(crate) async fn of(app: &App, plan: &Plan) -> Result<Option<Told>, Error> {
    let mut done = app.promises.done.subscribe();
    if let Some(told) = known(app, plan).await? {
        return Ok(Some(told));
    }
    draw(app, plan);
    let drawn = async {
        // The app itself holds the sender, so that this can't fail.
        while app.promises.is_at_work_on(plan) && done.changed().await.is_ok() {}
    };
    if tokio::time::timeout(PATIENCE, drawn).await.is_err() {
        return Ok(None);
    }
    known(app, plan).await
}

/// What a plan promises, if that is known by now.
pub(crate) async fn known(app: &App, plan: &Plan) -> Result<Option<Told>, Error> {
    let (own, at) = (plan.clone(), app.clone());
    blocking(move || at.promises.held(&own).or_else(|| kept(&at, &own))).await
}

fn kept(app: &App, plan: &Plan) -> Option<Told> {
    match app.at_bench_here(|bench| Ok(bench.kept_promise(plan)?)) {
        Ok(promise) => promise.map(Ok),
        Err(error) => {
            tracing::warn!(?error, "what a plan promises could not be looked up");
            None
        }
    }
}

/// Begins to draw a plan's trials before those of all that wait, unless that was begun.
pub(crate) fn draw(app: &App, plan: &Plan) {
    let mut work = app.promises.work();
    work.want(plan);
    begin(app, work);
}

/// Begins to draw the trials of plans that were kept while the program reckoned by other
/// rules, or ended before they were drawn.
pub(crate) async fn catch_up(app: &App) {
    match app
        .at_bench(|bench| Ok(bench.unpromised_plans(MOST_AT_START)?))
        .await
    {
        Ok(plans) if plans.is_empty() => {}
        Ok(plans) => {
            let mut work = app.promises.work();
            work.waiting.extend(plans);
            begin(app, work);
        }
        Err(error) => tracing::warn!(?error, "plans that promise nothing yet could not be listed"),
    }
}

fn begin(app: &App, mut work: MutexGuard<'_, Work>) {
    if work.busy {
        return;
    }
    work.busy = true;
    drop(work);
    let own = app.clone();
    let named = std::thread::Builder::new().name("promises".to_owned());
    if let Err(error) = named.spawn(move || Turn(&own).work_off()) {
        app.promises.work().busy = false;
        tracing::warn!(%error, "what a plan promises could not be begun");
    }
}

/// The turn of the thread that draws: over when it is dropped, even by a panic.
struct Turn<'a>(&'a App);

impl Turn<'_> {
    fn work_off(&self) {
        while let Some(plan) = self.0.promises.next() {
            if kept(self.0, &plan).is_none() {
                self.draw(&plan);
            }
            self.0.promises.tell();
        }
    }

    fn draw(&self, plan: &Plan) {
        let promise = match plan.promise(RUNS) {
            Ok(promise) => promise,
            Err(error) => return self.0.promises.hold(plan, Err(error.message)),
        };
        let keep = |bench: &mut Bench| Ok(bench.keep_promise(plan, &promise)?);
        if let Err(error) = self.0.at_bench_here(keep) {
            tracing::warn!(?error, "what a plan promises could not be kept");
            self.0.promises.hold(plan, Ok(promise));
        }
    }
}

impl Drop for Turn<'_> {
    fn drop(&mut self) {
        if std::thread::panicking() {
            let mut work = self.0.promises.work();
            work.drawing = None;
            work.busy = false;
        }
        self.0.promises.tell();
    }
}

impl Work {
    fn want(&mut self, plan: &Plan) {
        if self.drawing.as_ref() != Some(plan) {
            self.waiting.retain(|waiting| waiting != plan);
            self.waiting.push_front(plan.clone());
        }
    }

    /// The next plan to be drawn; where there is none, the thread's turn is over.
    fn next(&mut self) -> Option<Plan> {
        self.drawing = self.waiting.pop_front();
        self.busy = self.drawing.is_some();
        self.drawing.clone()
    }
}

impl Promises {
    fn work(&self) -> MutexGuard<'_, Work> {
        self.work.lock().unwrap_or_else(PoisonError::into_inner)
    }

    fn next(&self) -> Option<Plan> {
        self.work().next()
    }

    fn tell(&self) {
        self.done.send_modify(|count| *count += 1);
    }

    fn is_at_work_on(&self, plan: &Plan) -> bool {
        let work = self.work();
        work.drawing.as_ref() == Some(plan) || work.waiting.contains(plan)
    }

    fn hold(&self, plan: &Plan, told: Told) {
        let mut work = self.work();
        if work.held.len() == MOST_HELD {
            work.held.pop_front();
        }
        work.held.push_back((plan.clone(), told));
    }

    fn held(&self, plan: &Plan) -> Option<Told> {
        let work = self.work();
        let found = work.held.iter().find(|(held, _)| held == plan);
        found.map(|(_, told)| told.clone())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_plan_is_drawn_twice_and_the_one_that_is_looked_at_comes_first() {
        let plan = |seed: u32| {
            let text = include_str!("../../../docs/plans/two-arms.toml");
            let mut plan = Plan::from_toml(text).unwrap();
            plan.seed = seed;
            plan
        };
        let mut work = Work::default();
        work.waiting.extend([plan(1), plan(2)]);
        work.want(&plan(2));
        assert_eq!(work.next(), Some(plan(2)));
        work.want(&plan(2));
        assert_eq!(work.next(), Some(plan(1)));
        assert_eq!(work.next(), None);
        assert!(!work.busy);
    }
}
