//! `POST /recipes/new`: keeps a recipe, or shows what is wrong with the form.

use super::draft::Draft;
use super::new::{Purpose, new, render};
use super::places;
use crate::app::{App, now};
use crate::error::Error;
use crate::form::{Problems, Signed};
use crate::text;
use axum::extract::State;
use axum::http::StatusCode;
use axum::response::{IntoResponse, Redirect, Response};
use dyeing::{Plan, recipe::Written};

pub(crate) async fn act(State(app): State<App>, form: Signed) -> Result<Response, Error> {
    let draft = Draft::typed(&form);
    let [plan, trial] = ["plan", "trial"].map(|field| {
        let slug = form.text(field);
        (!slug.is_empty()).then_some(slug)
    });
    let hidden = [("plan", plan.clone()), ("trial", trial.clone())];
    let hidden = hidden
        .into_iter()
        .filter_map(|(name, slug)| Some((name, slug?)));
    let purpose = new(hidden.collect());
    if form.has("more") {
        let page = render(&app, &purpose, &draft, &Problems::default()).await?;
        return Ok(page.into_response());
    }
    let written = match checked(&draft) {
        Ok(written) => written,
        Err(problems) => return wrong(&app, &purpose, &draft, &problems).await,
    };
    let text = written.to_toml().map_err(Error::broken)?;
    let slug = app
        .at_bench(move |bench| {
            let slug = bench.keep_recipe(&text, text::recipe::written_by_the_form(), &now())?;
            if plan.is_some() || trial.is_some() {
                bench.aim_recipe(&slug, plan.as_deref(), trial.as_deref(), &now())?;
            }
            Ok(slug)
        })
        .await?;
    Ok(Redirect::to(&format!("/recipes/{slug}")).into_response())
}

/// The recipe of a form, if everything that follows from it can be worked out.
pub(crate) fn checked(draft: &Draft) -> Result<Written, Problems> {
    let written = draft.written()?;
    let worked_out = written.recipe().and_then(|recipe| Plan::of(&recipe));
    match worked_out {
        Ok(_) => Ok(written),
        Err(error) => Err(places::problem(draft, &error)),
    }
}

/// The form with what is wrong with it.
pub(crate) async fn wrong(
    app: &App,
    purpose: &Purpose,
    draft: &Draft,
    problems: &Problems,
) -> Result<Response, Error> {
    let page = render(app, purpose, draft, problems).await?;
    Ok((StatusCode::UNPROCESSABLE_ENTITY, page).into_response())
}
