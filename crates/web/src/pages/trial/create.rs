//! `POST /trials/new`: enters the trial, or shows what is wrong with the form.

use super::new::{Draft, NewPage};
use crate::app::{App, now};
use crate::assets::Assets;
use crate::error::Error;
use crate::form::{Problems, Signed};
use crate::text;
use askama::Template;
use axum::extract::State;
use axum::http::StatusCode;
use axum::response::{Html, IntoResponse, Redirect, Response};

pub(crate) async fn act(State(app): State<App>, form: Signed) -> Result<Response, Error> {
    let mut draft = Draft::typed(&form);
    if form.has("more") {
        draft.grow();
        return again(&app, StatusCode::OK, &draft, &Problems::default());
    }
    let new = match draft.trial() {
        Ok(new) => new,
        Err(problems) => return again(&app, StatusCode::UNPROCESSABLE_ENTITY, &draft, &problems),
    };
    let slug = app
        .at_bench(move |bench| {
            let id = bench.create_trial(&new, &now())?;
            let trial = bench.trial_by_id(id)?;
            trial
                .map(|t| t.slug)
                .ok_or_else(|| Error::broken(text::trial::the_new_trial()))
        })
        .await?;
    Ok(Redirect::to(&format!("/trials/{slug}")).into_response())
}

fn again(
    app: &App,
    status: StatusCode,
    draft: &Draft,
    problems: &Problems,
) -> Result<Response, Error> {
    let page = NewPage {
        assets: Assets::get(),
        token: app.token.as_str(),
        draft,
        problems,
    };
    Ok((status, Html(page.render()?)).into_response())
}
