//! `POST /runs/{id}/rinse`: adds a reading, standards, a correction or a withdrawal.

use super::draft::{Draft, problems};
use super::show::{Shown, render};
use crate::app::App;
use crate::error::Error;
use crate::form::{Problems, Signed};
use crate::pages::run::{find, time};
use axum::extract::{Path, State};
use axum::http::StatusCode;
use axum::response::{IntoResponse, Redirect, Response};
use dyeing::balance::{WaterNote, WrittenCalibration, standing};
use store::{Bench, CLEAR, StoreError};

/// More lines than this are no standards.
const MOST_STANDARDS: usize = 60;

pub(crate) async fn act(
    State(app): State<App>,
    Path(id): Path<i64>,
    form: Signed,
) -> Result<Response, Error> {
    let refused = app
        .at_bench(move |bench| {
            find(bench, id)?;
            let Err((problems, typed)) = note(bench, id, &form)? else {
                return Ok(None);
            };
            Ok(Some((Shown::of(bench, id, CLEAR)?, problems, typed)))
        })
        .await?;
    match refused {
        None => Ok(Redirect::to(&format!("/runs/{id}/rinse#readings")).into_response()),
        Some((shown, problems, typed)) => {
            let page = render(&app, &shown, &problems, &typed)?;
            Ok((StatusCode::UNPROCESSABLE_ENTITY, page).into_response())
        }
    }
}

/// What was typed and couldn't be taken.
#[derive(Default)]
pub(crate) struct Typed {
    /// Number of what was to be corrected; none for a new reading.
    pub(crate) of: Option<u32>,
    pub(crate) reading: Option<Draft>,
    pub(crate) standards: Option<String>,
    pub(crate) clear: Option<String>,
}

type Refused = (Problems, Typed);

/// Adds what a button asks for, or says what is wrong with it.
fn note(bench: &mut Bench, run: i64, form: &Signed) -> Result<Result<(), Refused>, Error> {
    let of: Option<u32> = form.text("of").parse().ok();
    let suffix = of.map_or(String::new(), |of| format!("-{of}"));
    let mut typed = Typed {
        of,
        ..Typed::default()
    };
    let what = match form.text("do").as_str() {
        "withdraw" => WaterNote::Withdrawn(String::new()),
        "calibrate" => {
            let text = form.text("standards");
            let lines = text.lines().map(str::trim).filter(|line| !line.is_empty());
            let standards = lines.map(str::to_owned).take(MOST_STANDARDS).collect();
            typed.standards = Some(text.clone());
            WaterNote::Calibration(WrittenCalibration { standards })
        }
        _ => {
            let draft = Draft::typed(form);
            let reading = draft.reading();
            let is_bath = draft.water == "bath";
            typed.reading = Some(draft);
            match reading {
                Ok(reading) if is_bath => WaterNote::Bath(reading),
                Ok(reading) => WaterNote::Rinse(reading),
                Err(why) => {
                    let mut problems = Problems::default();
                    problems.add(format!("absorbance{suffix}"), why);
                    return Ok(Err((problems, typed)));
                }
            }
        }
    };
    let of = match of {
        Some(of) => Some(of),
        None => in_place_of(bench, run, &what)?,
    };
    match bench.note_water(run, &what, of, time::now_s()) {
        Ok(()) => Ok(Ok(())),
        Err(StoreError::Water(error)) => {
            let problems = if typed.reading.is_some() {
                problems(&error, &suffix)
            } else {
                let sentence = crate::pages::recipe::places::sentence(&error.to_string());
                let mut problems = Problems::default();
                problems.add("standards", sentence);
                problems
            };
            Ok(Err((problems, typed)))
        }
        Err(error) => Err(error.into()),
    }
}

/// A run has one spent bath and one set of standards: another one corrects the first.
fn in_place_of(bench: &Bench, run: i64, what: &WaterNote) -> Result<Option<u32>, Error> {
    if matches!(what, WaterNote::Rinse(_) | WaterNote::Withdrawn(_)) {
        return Ok(None);
    }
    let like = std::mem::discriminant(what);
    let stand = standing(&bench.water_events(run)?);
    let same = |note: &&dyeing::balance::StandingWater| std::mem::discriminant(&note.what) == like;
    Ok(stand.iter().find(same).map(|note| note.number))
}
