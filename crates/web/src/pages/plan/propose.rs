//! `POST /ask`: proposes a plan and keeps it, or shows what is wrong with the form.

use super::ask::{Draft, render};
use crate::app::{App, blocking, now};
use crate::error::Error;
use crate::form::{Problems, Signed};
use axum::extract::State;
use axum::http::StatusCode;
use axum::response::{IntoResponse, Redirect, Response};

pub(crate) async fn act(State(app): State<App>, form: Signed) -> Result<Response, Error> {
    let mut draft = Draft::typed(&form);
    let scatter = app.at_bench(|bench| Ok(bench.studio_scatter()?)).await?;
    if form.has("more") {
        draft.grow();
        return Ok(render(&app, &draft, &Problems::default(), scatter)?.into_response());
    }
    let wrong = |problems: Problems| -> Result<Response, Error> {
        let page = render(&app, &draft, &problems, scatter.clone())?;
        Ok((StatusCode::UNPROCESSABLE_ENTITY, page).into_response())
    };
    let enquiry = match draft.enquiry(scatter.clone(), rand::random()) {
        Ok(enquiry) => enquiry,
        Err(problems) => return wrong(problems),
    };
    let mut proposal = match blocking(move || enquiry.propose()).await? {
        Ok(proposal) => proposal,
        Err(error) => return wrong(draft.problem(error)),
    };
    proposal.plan.title.clone_from(&draft.title);
    let slug = app
        .at_bench(move |bench| {
            let slug = bench.keep_plan(&proposal.plan, &proposal.sentence, &now())?;
            if let Err(error) = bench.keep_promise(&proposal.plan, &proposal.promise) {
                // The plan stands; its page has it worked out anew.
                tracing::warn!(?error, "what a plan promises could not be kept");
            }
            Ok(slug)
        })
        .await?;
    Ok(Redirect::to(&format!("/plans/{slug}")).into_response())
}
