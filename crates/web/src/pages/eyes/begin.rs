//! `POST /trials/{slug}/eyes`: begins a session of judging by eye.

use super::show::{self, JudgeForm, SessionForm, Typed};
use crate::app::{App, now};
use crate::error::Error;
use crate::form::{Problems, Signed};
use crate::text;
use axum::extract::{Path, State};
use axum::response::{IntoResponse, Redirect, Response};
use store::StoreError;
use trial::{
    TrialError,
    eyes::{Way, Wish},
    read_stage,
};

/// Pairs that one person sees twice, at most.
const MOST_REPEATS: usize = 50;

pub(crate) async fn act(
    State(app): State<App>,
    Path(slug): Path<String>,
    form: Signed,
) -> Result<Response, Error> {
    let typed = SessionForm {
        stage: form.text("stage"),
        way: form.text("way"),
        staining: form.has("staining"),
        catch: form.has("catch"),
        repeats: form.text("repeats"),
    };
    let mut problems = Problems::default();
    if let Some(wish) = wish(&typed, &mut problems) {
        let name = slug.clone();
        let seed = rand::random();
        let refused = app
            .at_bench(move |bench| {
                let trial = crate::pages::trial::find(bench, &name)?;
                match bench.begin_eye_session(&trial, &wish, seed, &now()) {
                    Ok(_) => Ok(None),
                    Err(StoreError::Trial(TrialError { field, message })) => {
                        Ok(Some((field, message)))
                    }
                    Err(error) => Err(error.into()),
                }
            })
            .await?;
        match refused {
            None => {
                return Ok(Redirect::to(&format!("/trials/{slug}/eyes#sessions")).into_response());
            }
            Some((field, message)) => problems.add(field, message),
        }
    }
    let typed = Typed {
        session: Some(typed),
        judge: JudgeForm::default(),
        problems,
    };
    show::show(&app, slug, typed).await
}

fn wish(typed: &SessionForm, problems: &mut Problems) -> Option<Wish> {
    let stage = read_stage(&typed.stage);
    if stage.is_none() {
        problems.add("stage", text::eyes::give_the_number_of_rounds_the_pieces());
    }
    let way = [Way::Cloth, Way::Screen]
        .into_iter()
        .find(|way| way.as_str() == typed.way);
    if way.is_none() {
        problems.add("way", text::eyes::choose_whether_cloths_or_measured());
    }
    let repeats = match typed.repeats.as_str() {
        "" => Some(0),
        text => text.parse().ok().filter(|count| *count <= MOST_REPEATS),
    };
    if repeats.is_none() {
        problems.add(
            "repeats",
            text::eyes::give_how_many_pairs_come_twice(MOST_REPEATS),
        );
    }
    Some(Wish {
        stage: stage?,
        way: way?,
        staining: typed.staining,
        catch: typed.catch,
        repeats: repeats?,
    })
}
