//! What plans promise, drawn in the background: begun when a plan is kept, so that it is there when the
//! plan's page is first looked at or soon after.
//!
//! One thread of its own draws one plan after the other. It is no task of the server, which therefore
//! ends without waiting for it; what it drew is kept by one write, or drawn again another time.

use crate::app::{App, blocking};
use crate::error::Error;
use crate::text;
use std::collections::VecDeque;
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::sync::{Mutex, MutexGuard, PoisonError};
use std::time::Duration;
use store::Bench;
use tokio::sync::watch;
use trial::plan::{Plan, PlanError, Promise, RUNS};

/// How long a page waits for figures that are being drawn. Small plans take less.
const PATIENCE: Duration = Duration::from_millis(10);
/// Plans kept by another edition of the rules that are drawn when the program starts.
const MOST_AT_START: usize = 100;
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
        Ok(found) => {
            for (slug, error) in found.unread {
                tracing::warn!(slug, %error, "what a plan promises is not worked out");
            }
            if !found.plans.is_empty() {
                let mut work = app.promises.work();
                work.waiting.extend(found.plans);
                begin(app, work);
            }
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
    if let Err(error) = named.spawn(move || Turn(&own).work_off(|plan| plan.promise(RUNS))) {
        app.promises.work().busy = false;
        tracing::warn!(%error, "what a plan promises could not be begun");
    }
}

/// The turn of the thread that draws: over when it is dropped, even by a panic.
struct Turn<'a>(&'a App);

impl Turn<'_> {
    fn work_off(&self, reckon: impl Fn(&Plan) -> Result<Promise, PlanError>) {
        while let Some(plan) = self.0.promises.next() {
            if self.0.promises.held(&plan).is_none() && kept(self.0, &plan).is_none() {
                self.keep(&plan, drawn(&plan, &reckon));
            }
            self.0.promises.tell();
        }
    }

    fn keep(&self, plan: &Plan, told: Told) {
        let Ok(promise) = told else {
            return self.0.promises.hold(plan, told);
        };
        let keep = |bench: &mut Bench| Ok(bench.keep_promise(plan, &promise)?);
        if let Err(error) = self.0.at_bench_here(keep) {
            tracing::warn!(?error, "what a plan promises could not be kept");
            self.0.promises.hold(plan, Ok(promise));
        }
    }
}

/// What a plan promises. A plan at which the program fails gets a sentence, so that it isn't
/// drawn again at each look and those behind it have their turn.
fn drawn(plan: &Plan, reckon: impl Fn(&Plan) -> Result<Promise, PlanError>) -> Told {
    // Nothing is shared with what failed: the plan is only read.
    match catch_unwind(AssertUnwindSafe(|| reckon(plan))) {
        Ok(told) => told.map_err(|error| error.message),
        Err(_) => {
            tracing::error!(
                question = plan.question,
                "a plan's trials could not be drawn"
            );
            Err(text::plan::what_this_plan_can_show_failed().to_owned())
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
    use std::sync::Arc;
    use std::sync::atomic::{AtomicUsize, Ordering};

    fn plan(seed: u32) -> Plan {
        let text = include_str!("../../../docs/plans/two-arms.toml");
        let mut plan = Plan::from_toml(text).expect("an example of the documents");
        plan.seed = seed;
        plan
    }

    #[test]
    fn a_plan_at_which_the_program_fails_says_so_and_the_next_is_drawn() {
        let home = tempfile::tempdir().unwrap();
        let bench = Arc::new(Mutex::new(Bench::open(home.path()).unwrap()));
        let app = App::new(bench, Arc::new(|_| Err(String::new())), 1);
        let times = AtomicUsize::new(0);
        let reckon = |own: &Plan| {
            times.fetch_add(1, Ordering::Relaxed);
            assert!(own.seed != 1, "a plan that can't be drawn");
            own.promise(10)
        };
        app.promises.work().waiting.extend([plan(1), plan(2)]);
        Turn(&app).work_off(reckon);
        let told = app.promises.held(&plan(1)).unwrap();
        assert!(told.unwrap_err().contains("Woadstone failed"));
        assert!(kept(&app, &plan(2)).unwrap().is_ok());
        app.promises.work().want(&plan(1));
        Turn(&app).work_off(reckon);
        assert_eq!(times.load(Ordering::Relaxed), 2);
        assert!(!app.promises.work().busy);
    }

    #[test]
    fn no_plan_is_drawn_twice_and_the_one_that_is_looked_at_comes_first() {
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
