//! `POST /materials/{id}`: another lot, something used, a lot used up, something taken back.

use super::find;
use super::list::LotDraft;
use super::show::{Using, render};
use crate::app::{App, now};
use crate::error::Error;
use crate::form::{Problems, Signed};
use crate::pages::recipe::places::sentence;
use axum::extract::{Path, State};
use axum::http::StatusCode;
use axum::response::{IntoResponse, Redirect, Response};
use dyeing::{Kitchen, stock::Stock};
use store::{Bench, StoreError};

pub(crate) async fn act(
    State(app): State<App>,
    Path(id): Path<i64>,
    form: Signed,
) -> Result<Response, Error> {
    let mut problems = Problems::default();
    let is_lot = form.text("do") == "lot";
    let draft = if is_lot {
        LotDraft::typed(&form)
    } else {
        LotDraft::today()
    };
    let lot: i64 = form.text("lot").parse().unwrap_or(0);
    let using = Using {
        lot,
        amount: form.text("used"),
        words: form.text("words"),
    };
    let (material, draft, using, problems) = app
        .at_bench(move |bench| {
            let material = find(bench, id)?;
            let done = match form.text("do").as_str() {
                "lot" => match draft.read(&mut problems) {
                    Some(lot) => bench.add_lot(id, &lot, &now()).map(|_| ()),
                    None => Ok(()),
                },
                "up" => bench.use_up(lot, &using.words, &now()),
                "back" => bench.return_to_lot(form.text("taken").parse().unwrap_or(0), &now()),
                _ => uses(bench, &using, &mut problems),
            };
            match done {
                Ok(()) => {}
                Err(StoreError::Input { field, message }) => {
                    let field = match field {
                        "used" | "words" => format!("{field}-{lot}"),
                        other => other.to_owned(),
                    };
                    problems.add(field, message);
                }
                Err(error) => return Err(error.into()),
            }
            Ok((material, draft, using, problems))
        })
        .await?;
    if problems.is_empty() {
        return Ok(Redirect::to(&format!("/materials/{id}#lots")).into_response());
    }
    let page = render(&app, &material, &draft, &using, &problems)?;
    Ok((StatusCode::UNPROCESSABLE_ENTITY, page).into_response())
}

/// Takes what was typed from a lot.
fn uses(bench: &mut Bench, using: &Using, problems: &mut Problems) -> Result<(), StoreError> {
    match Stock::read(&using.amount, Kitchen::usual()) {
        Ok(amount) => bench.use_lot(using.lot, amount, &using.words, &now()),
        Err(error) => {
            let field = format!("used-{}", using.lot);
            problems.add(field, sentence(&error.to_string()));
            Ok(())
        }
    }
}
