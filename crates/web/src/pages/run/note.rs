//! `POST /runs/{id}`: notes what happened, by one tap or in words.

use super::show::render;
use super::time;
use crate::app::App;
use crate::error::Error;
use crate::form::{Problems, Signed};
use crate::text;
use axum::extract::{Path, State};
use axum::http::StatusCode;
use axum::response::{IntoResponse, Redirect, Response};
use dyeing::{
    Celsius,
    run::{Noted, What},
};
use store::{KeptRun, NewEvent, StoreError};

/// The field that is at fault, and why.
type Fault = (String, String);

pub(crate) async fn act(
    State(app): State<App>,
    Path(id): Path<i64>,
    form: Signed,
) -> Result<Response, Error> {
    let step: Option<u32> = form.text("step").parse().ok();
    let place = step.map_or("#top".to_owned(), |step| {
        // The step stays open.
        format!("?at={step}#step-{step}")
    });
    let typed = (step, form.text("words"));
    let done = app
        .at_bench(move |bench| {
            let kept = super::find_to_show(bench, id)?;
            let now_s = time::now_s();
            let event = match asked(&form, step, &kept, now_s) {
                Ok(event) => event,
                Err(fault) => return Ok(Some((kept, fault))),
            };
            match bench.note_run(id, &event, now_s) {
                Ok(_) => Ok(None),
                Err(StoreError::Input { message, .. }) => {
                    let field = step.map_or("top".to_owned(), |step| format!("step-{step}"));
                    Ok(Some((kept, (field, message))))
                }
                Err(error) => Err(error.into()),
            }
        })
        .await?;
    match done {
        None => Ok(Redirect::to(&format!("/runs/{id}{place}")).into_response()),
        Some((kept, (field, message))) => {
            let mut problems = Problems::default();
            problems.add(field, message);
            let page = render(&app, &kept, &problems, typed)?;
            Ok((StatusCode::UNPROCESSABLE_ENTITY, page).into_response())
        }
    }
}

/// The event that a button asks for.
fn asked(form: &Signed, step: Option<u32>, kept: &KeptRun, now_s: i64) -> Result<NewEvent, Fault> {
    let field = |name: &str| step.map_or(name.to_owned(), |step| format!("{name}-{step}"));
    let tapped = |name: &str| form.has(name).then(|| form.text(name));
    let new = |what: What, at_s: i64| NewEvent {
        step,
        at_s,
        what,
        of: None,
    };
    if let Some(celsius) = tapped("warm") {
        let celsius = temperature(&celsius).map_err(|why| (field("temperature"), why))?;
        return Ok(new(What::Temperature(celsius), now_s));
    }
    if let Some(words) = tapped("tap") {
        return Ok(new(What::Departed(words), now_s));
    }
    let words = form.text("words");
    match form.text("do").as_str() {
        "start" => Ok(new(What::Started, ago(form, &field("ago"), now_s)?)),
        "stop" => Ok(new(What::Stopped, ago(form, &field("ago"), now_s)?)),
        "temperature" => {
            let celsius = temperature(&form.text("temperature"));
            let celsius = celsius.map_err(|why| (field("temperature"), why))?;
            Ok(new(What::Temperature(celsius), now_s))
        }
        "depart" if words.is_empty() => Err((
            field("words"),
            text::run::the_note_is_empty_write_a_few().to_owned(),
        )),
        "remark" if words.is_empty() => Err((
            field("words"),
            text::run::the_note_is_empty_write_a_few().to_owned(),
        )),
        "depart" => Ok(new(What::Departed(words), now_s)),
        "remark" => Ok(new(What::Remarked(words), now_s)),
        "finish" => Ok(new(What::Finished, now_s)),
        correction @ ("withdraw" | "correct") => corrected(form, correction, kept, now_s),
        _ => Err((
            field("step"),
            text::run::this_button_is_of_no_page().to_owned(),
        )),
    }
}

/// A correction or a withdrawal of an earlier note.
fn corrected(form: &Signed, how: &str, kept: &KeptRun, now_s: i64) -> Result<NewEvent, Fault> {
    let number: u32 = form.text("of").parse().unwrap_or(0);
    let at = |what: &str| format!("{what}-of-{number}");
    let earlier: Option<&Noted> = kept.run.noted().iter().find(|n| n.number == number);
    let Some(earlier) = earlier else {
        let message = text::run::that_note_was_taken_back_already();
        return Err(("top".to_owned(), message.to_owned()));
    };
    let new = |what: What, at_s: i64| NewEvent {
        step: earlier.step,
        at_s,
        what,
        of: Some(number),
    };
    if how == "withdraw" {
        return Ok(new(What::Withdrawn(form.text("why")), now_s));
    }
    let typed = form.text("time");
    // The time as the page showed it leaves the seconds as they were.
    let at_s = if typed == time::of_day(earlier.at_s, earlier.at_s) {
        earlier.at_s
    } else {
        time::read(&typed, earlier.at_s).ok_or_else(|| {
            (
                at("time"),
                text::run::give_the_time_of_day_such().to_owned(),
            )
        })?
    };
    let what = match &earlier.what {
        What::Temperature(_) => {
            What::Temperature(temperature(&form.text("value")).map_err(|why| (at("value"), why))?)
        }
        What::Departed(_) => What::Departed(form.text("value")),
        What::Remarked(_) => What::Remarked(form.text("value")),
        same => same.clone(),
    };
    Ok(new(what, at_s))
}

/// Now, or as many minutes ago as the form says.
fn ago(form: &Signed, field: &str, now_s: i64) -> Result<i64, Fault> {
    let typed = form.text("ago");
    if typed.is_empty() {
        return Ok(now_s);
    }
    let minutes: Option<f64> = typed.replace(',', ".").parse().ok();
    let minutes = minutes.filter(|m| (0.0..=10_000.0).contains(m));
    let minutes = minutes.ok_or_else(|| {
        let message = text::run::give_how_many_minutes_ago();
        (field.to_owned(), message.to_owned())
    })?;
    Ok(now_s - (minutes * 60.0).round() as i64)
}

/// A temperature with its scale, or a bare number on the scale that the page shows.
fn temperature(typed: &str) -> Result<Celsius, String> {
    let bare = typed.replace(',', ".").trim().parse::<f64>();
    let read = match bare {
        Ok(degrees) => Celsius::on_local_scale(degrees),
        Err(_) => typed.parse(),
    };
    read.map_err(|error| match error {
        dyeing::DyeingError::Parse(_) => {
            let bare = match locale::current().measures {
                locale::Measures::Metric => 60,
                locale::Measures::UsCustomary => 140,
            };
            text::run::give_a_temperature_such_as_or_60(bare)
        }
        other => crate::pages::recipe::places::sentence(&other.to_string()),
    })
}

#[cfg(test)]
mod tests {
    use super::temperature;

    #[test]
    fn temperatures_are_read_with_and_without_their_scale() {
        for text in ["60", "60,0", "60 C", "60 °C", "140 F"] {
            assert!(
                (temperature(text).unwrap().celsius() - 60.0).abs() < 1e-9,
                "{text}"
            );
        }
        for (text, part) in [
            ("", "Give a temperature"),
            ("warm", "Give a temperature"),
            ("400", "0 to 140"),
            ("NaN", "0 to 140"),
        ] {
            assert!(temperature(text).unwrap_err().contains(part), "{text}");
        }
    }
}
