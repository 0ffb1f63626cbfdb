//! `POST /settings`: keeps what was chosen.

use super::show::{Draft, render};
use crate::app::{App, now};
use crate::error::Error;
use crate::form::{Problems, Signed};
use axum::extract::State;
use axum::http::StatusCode;
use axum::response::{IntoResponse, Redirect, Response};
use locale::{Locale, LocaleError};
use std::str::FromStr;

pub(crate) async fn act(State(app): State<App>, form: Signed) -> Result<Response, Error> {
    let draft = Draft {
        measures: form.text("measures"),
        currency: form.text("currency"),
        sums: form.text("sums"),
        dates: form.text("dates"),
        clock: form.text("clock"),
    };
    let mut problems = Problems::default();
    let Some(chosen) = draft.read(&mut problems) else {
        let page = render(&app, &draft, &problems, false)?;
        return Ok((StatusCode::UNPROCESSABLE_ENTITY, page).into_response());
    };
    app.at_bench(move |bench| {
        bench.set_locale(chosen, &now())?;
        // While the bench is held, so that two who choose at once leave one choice everywhere.
        locale::set(chosen);
        Ok(())
    })
    .await?;
    Ok(Redirect::to("/settings?kept=1").into_response())
}

impl Draft {
    /// What was chosen, or what is wrong with its fields.
    fn read(&self, problems: &mut Problems) -> Option<Locale> {
        let currency = match self.currency.as_str() {
            "" => Some(None),
            code => taken("currency", code, problems).map(Some),
        };
        let measures = taken("measures", &self.measures, problems);
        let sums = taken("sums", &self.sums, problems);
        let dates = taken("dates", &self.dates, problems);
        let clock = taken("clock", &self.clock, problems);
        Some(Locale {
            measures: measures?,
            currency: currency?,
            sums: sums?,
            dates: dates?,
            clock: clock?,
        })
    }
}

/// A field's choice; what is wrong with it goes to the problems.
fn taken<T: FromStr<Err = LocaleError>>(
    field: &str,
    typed: &str,
    problems: &mut Problems,
) -> Option<T> {
    typed
        .parse()
        .map_err(|fault: LocaleError| problems.add(field, fault.to_string()))
        .ok()
}
