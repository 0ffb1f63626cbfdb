//! What plans promise: worked out once, when a plan is kept or first looked at.

use crate::app::{App, blocking};
use crate::error::Error;
use trial::plan::{Plan, PlanError, Promise, RUNS};

/// What a plan promises, or why that can't be told; slow where the bench hasn't kept it.
pub(crate) async fn of(app: &App, plan: &Plan) -> Result<Result<Promise, PlanError>, Error> {
    let own = plan.clone();
    let kept = app.at_bench(move |bench| Ok(bench.kept_promise(&own)?));
    if let Some(promise) = kept.await? {
        return Ok(Ok(promise));
    }
    let own = plan.clone();
    let promise = match blocking(move || own.promise(RUNS)).await? {
        Ok(promise) => promise,
        Err(error) => return Ok(Err(error)),
    };
    let (own, found) = (plan.clone(), promise.clone());
    let kept = app.at_bench(move |bench| Ok(bench.keep_promise(&own, &found)?));
    if let Err(error) = kept.await {
        // It is worked out again next time.
        tracing::warn!(?error, "what a plan promises could not be kept");
    }
    Ok(Ok(promise))
}

/// Works out what a plan promises that was just kept, so that its page is there at once. The plan
/// stands whether or not this can be done, and its page says why it promises nothing.
pub(crate) async fn prepare(app: &App, plan: &Plan) {
    if let Err(error) = of(app, plan).await {
        tracing::warn!(?error, "what a plan promises could not be worked out");
    }
}
