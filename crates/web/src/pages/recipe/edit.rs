//! `/recipes/{slug}/edit`: the form with a recipe in it; sending it keeps a new revision.

use super::create::{checked, wrong};
use super::draft::Draft;
use super::new::{Purpose, render};
use crate::app::{App, now};
use crate::error::Error;
use crate::form::{Problems, Signed};
use crate::text;
use axum::extract::{Path, State};
use axum::response::{Html, IntoResponse, Redirect, Response};
use dyeing::recipe::Written;
use store::StoreError;

fn purpose(slug: &str, name: &str, revision: u32) -> Purpose {
    Purpose {
        action: format!("/recipes/{slug}/edit"),
        heading: text::recipe::change(name),
        button: text::recipe::keep_as_a_new_revision(),
        hidden: vec![("revision", revision.to_string())],
        is_new: false,
    }
}

pub(crate) async fn page(
    State(app): State<App>,
    Path(slug): Path<String>,
) -> Result<Html<String>, Error> {
    let kept = app
        .at_bench(move |bench| super::find(bench, &slug, None))
        .await?;
    let written = Written::from_toml(&kept.text).map_err(Error::broken)?;
    let purpose = purpose(&kept.slug, &kept.recipe.name, kept.number);
    render(&app, &purpose, &Draft::of(&written), &Problems::default()).await
}

pub(crate) async fn act(
    State(app): State<App>,
    Path(slug): Path<String>,
    form: Signed,
) -> Result<Response, Error> {
    let draft = Draft::typed(&form);
    let seen: u32 = form.text("revision").parse().unwrap_or(0);
    let purpose = purpose(&slug, draft.at("name"), seen);
    if form.has("more") {
        let page = render(&app, &purpose, &draft, &Problems::default()).await?;
        return Ok(page.into_response());
    }
    let written = match checked(&draft) {
        Ok(written) => written,
        Err(problems) => return wrong(&app, &purpose, &draft, &problems).await,
    };
    let text = written.to_toml().map_err(Error::broken)?;
    let place = slug.clone();
    let done = app
        .at_bench(move |bench| {
            super::find(bench, &slug, None)?;
            match bench.revise_recipe(
                &slug,
                seen,
                &text,
                text::recipe::changed_by_the_form(),
                &now(),
            ) {
                Ok(_) => Ok(None),
                Err(StoreError::Input { message, .. }) => Ok(Some(message)),
                Err(error) => Err(error.into()),
            }
        })
        .await?;
    match done {
        None => Ok(Redirect::to(&format!("/recipes/{place}")).into_response()),
        Some(message) => {
            let mut problems = Problems::default();
            problems.add("name", message);
            wrong(&app, &purpose, &draft, &problems).await
        }
    }
}
