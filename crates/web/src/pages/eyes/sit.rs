//! `POST /trials/{slug}/eyes/{session}/judges`: a person begins to judge.

use super::show::{self, JudgeForm, Typed};
use crate::app::{App, now};
use crate::error::Error;
use crate::form::{Problems, Signed};
use axum::extract::{Path, State};
use axum::response::{IntoResponse, Redirect, Response};
use store::StoreError;
use trial::{TrialError, eyes::Judge};

pub(crate) async fn act(
    State(app): State<App>,
    Path((slug, session)): Path<(String, i64)>,
    form: Signed,
) -> Result<Response, Error> {
    let typed = JudgeForm {
        session,
        name: form.text("name"),
        light: form.text("light"),
        vision: form.text("vision"),
        distance: form.text("distance"),
    };
    let mut problems = Problems::default();
    match typed.vision.parse() {
        Err(message) => problems.add("vision", message),
        Ok(vision) => {
            let judge = Judge {
                name: typed.name.clone(),
                light: typed.light.clone(),
                vision,
                distance: typed.distance.clone(),
            };
            let (name, seed) = (slug.clone(), rand::random());
            let begun = app
                .at_bench(move |bench| {
                    super::find(bench, &name, session)?;
                    match bench.begin_sitting(session, judge, seed, &now()) {
                        Ok(sitting) => Ok(Ok(sitting)),
                        Err(StoreError::Trial(TrialError { field, message })) => {
                            Ok(Err((field, message)))
                        }
                        Err(error) => Err(error.into()),
                    }
                })
                .await?;
            match begun {
                Ok(sitting) => {
                    return Ok(Redirect::to(&format!("/judging/{sitting}")).into_response());
                }
                Err((field, message)) => problems.add(field, message),
            }
        }
    }
    let typed = Typed {
        session: None,
        judge: typed,
        problems,
    };
    show::show(&app, slug, typed).await
}
