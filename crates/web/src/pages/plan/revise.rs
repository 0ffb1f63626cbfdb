//! `POST /plans/{slug}`: a new revision of a plan by one of its page's buttons.

use super::show::{Wanted, render};
use crate::app::{App, now};
use crate::error::Error;
use crate::form::{Problems, Signed};
use crate::promises;
use crate::text;
use axum::extract::{Path, State};
use axum::http::StatusCode;
use axum::response::{IntoResponse, Redirect, Response};
use store::{Bench, KeptPlan, StoreError};
use trial::plan::{Mend, Plan};

/// What a button asks for: the new plan with what is new in it, or the field that is
/// wrong and why.
type Asked = Result<(Plan, String), (String, String)>;

pub(crate) async fn act(
    State(app): State<App>,
    Path(slug): Path<String>,
    form: Signed,
) -> Result<Response, Error> {
    let typed = form.has("write").then(|| form.text("text"));
    let seen = form.text("revision").parse().unwrap_or(0);
    let place = slug.clone();
    let done = app
        .at_bench(move |bench| {
            let kept = super::find(bench, &slug, None)?;
            let (plan, why) = match asked(bench, &kept, &form)? {
                Ok(asked) => asked,
                Err(problem) => return Ok(Err((kept, problem))),
            };
            match bench.revise_plan(&slug, seen, &plan, &why, &now()) {
                Ok(_) => Ok(Ok(plan)),
                Err(StoreError::Input { message, .. }) => {
                    Ok(Err((kept, ("text".to_owned(), message))))
                }
                Err(error) => Err(error.into()),
            }
        })
        .await?;
    match done {
        Ok(plan) => {
            promises::draw(&app, &plan);
            Ok(Redirect::to(&format!("/plans/{place}")).into_response())
        }
        Err((kept, (field, message))) => {
            let mut problems = Problems::default();
            problems.add(field, message);
            let page = render(&app, kept, problems, typed, &Wanted::default()).await?;
            Ok((StatusCode::UNPROCESSABLE_ENTITY, page).into_response())
        }
    }
}

fn asked(bench: &Bench, kept: &KeptPlan, form: &Signed) -> Result<Asked, Error> {
    if form.has("mend") {
        let mend: Mend = serde_json::from_str(&form.text("mend"))
            .map_err(|_| Error::Malformed(text::plan::this_button_is_of_no_page().to_owned()))?;
        return Ok(Ok((mend.apply(&kept.plan), mend.label())));
    }
    if form.has("back") {
        let number = form.text("back").parse().unwrap_or(0);
        let earlier = super::find(bench, &kept.slug, Some(number))?;
        return Ok(Ok((earlier.plan, text::plan::back_to_revision(number))));
    }
    if form.has("draw") {
        return Ok(drawn(&kept.plan, &form.text("seed")));
    }
    if form.has("sizes") {
        return Ok(sized(&kept.plan, form));
    }
    let plan = Plan::from_toml(&form.text("text"));
    Ok(plan
        .map(|plan| (plan, text::plan::edited_as_text().to_owned()))
        .map_err(|error| {
            let at = match error.field.as_str() {
                "" => String::new(),
                field => format!("{field}: "),
            };
            ("text".to_owned(), format!("{at}{}", error.message))
        }))
}

/// Another order, by the seed that was typed or by chance.
fn drawn(plan: &Plan, seed: &str) -> Asked {
    let seed = match seed {
        "" => rand::random(),
        typed => typed.parse().map_err(|_| {
            let message = text::plan::is_no_seed_give_a_whole_number(typed, u32::MAX);
            ("seed".to_owned(), message)
        })?,
    };
    let mut plan = plan.clone();
    plan.seed = seed;
    Ok((plan, text::plan::order_drawn_from_seed(seed)))
}

/// Pieces and keepers of each arm, and the rounds.
fn sized(plan: &Plan, form: &Signed) -> Asked {
    let mut plan = plan.clone();
    let whole = |field: &str| {
        form.text(field).parse::<usize>().map_err(|_| {
            let message = text::plan::give_a_whole_number_such_as_4().to_owned();
            (field.to_owned(), message)
        })
    };
    for (i, arm) in plan.arms.iter_mut().enumerate() {
        let (pieces, keepers) = (
            whole(&format!("pieces-{}", i + 1))?,
            whole(&format!("keepers-{}", i + 1))?,
        );
        if (pieces, keepers) != (arm.pieces, arm.keepers) {
            arm.codes.clear();
        }
        (arm.pieces, arm.keepers) = (pieces, keepers);
    }
    let rounds = whole("rounds")?;
    let last = plan.rounds;
    plan.rounds = u32::try_from(rounds).unwrap_or(u32::MAX);
    // What was to be looked at last, is: after the new number of rounds.
    for stage in plan.stages.iter_mut().filter(|stage| **stage >= last) {
        *stage = plan.rounds;
    }
    plan.stages.retain(|stage| *stage <= rounds as u32);
    plan.check().map_err(|error| {
        let field = match error.field.as_str() {
            "rounds" => "rounds".to_owned(),
            path => {
                let place = path
                    .strip_prefix("arms[")
                    .and_then(|rest| rest.split_once(']'));
                let place = place.and_then(|(place, _)| place.parse::<usize>().ok());
                place.map_or("text".to_owned(), |place| format!("pieces-{}", place + 1))
            }
        };
        (field, error.message)
    })?;
    Ok((
        plan,
        text::plan::other_numbers_of_pieces_or_rounds().to_owned(),
    ))
}
