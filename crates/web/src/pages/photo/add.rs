//! `POST /trials/{slug}/photos`: takes a photo in, or says why not and keeps nothing of it.

use super::new::NewPage;
use crate::app::{App, blocking, now};
use crate::areas;
use crate::error::{Error, refusal_json, wants_json};
use crate::form::Problems;
use crate::pages::chart;
use crate::upload::{self, Upload};
use askama::Template;
use axum::Json;
use axum::extract::{Path, Request, State};
use axum::http::{HeaderMap, StatusCode, header};
use axum::response::{Html, IntoResponse, Redirect, Response};
use photo::{ChartReference, FlagCode, RefusalCode, Survey};
use store::KeptChart;
use trial::{ChartId, Trial, on_board};

/// A form that was not taken: the answer's status, a short code, the field, the sentence.
struct Refused {
    status: StatusCode,
    code: &'static str,
    field: &'static str,
    message: String,
}

/// What the form gave, all of it in order.
struct Taken {
    stage: u32,
    name: String,
    bytes: Vec<u8>,
    chart: Option<ChartId>,
    survey: Survey,
}

pub(crate) async fn act(
    State(app): State<App>,
    Path(slug): Path<String>,
    headers: HeaderMap,
    request: Request,
) -> Result<Response, Error> {
    let json = wants_json(&headers);
    let (trial, charts) = app
        .at_bench(move |bench| {
            let trial = crate::pages::trial::find(bench, &slug)?;
            Ok((trial, bench.charts()?))
        })
        .await?;
    let (mut stage, mut corners) = ("0".to_owned(), String::new());
    let mut chart = String::new();
    let taken = match Upload::receive(&app, &headers, request, &upload::PHOTO).await {
        Ok(upload) => {
            (stage, corners) = (upload.text("stage"), upload.text("corners"));
            chart = upload.text("chart");
            take(upload, charts).await?
        }
        Err(Error::TooLarge(message)) => Err(Refused {
            status: StatusCode::PAYLOAD_TOO_LARGE,
            code: "too_large",
            field: "photo",
            message,
        }),
        Err(error) => return Err(error),
    };
    match taken {
        Ok(taken) => store(&app, trial, taken, json).await,
        Err(refused) if json => Ok(refusal_json(refused.status, refused.code, &refused.message)),
        Err(refused) => {
            let mut problems = Problems::default();
            problems.add(refused.field, refused.message);
            let chosen = chart.parse().ok().map(ChartId);
            let charts = app
                .at_bench(move |bench| Ok(chart::choices(bench, chosen)?))
                .await?;
            let page = NewPage::of(&app, &trial, &stage, &corners, &charts, &problems);
            Ok((refused.status, Html(page.render()?)).into_response())
        }
    }
}

/// Checks the form and looks at the photo before anything is stored.
async fn take(upload: Upload, charts: Vec<KeptChart>) -> Result<Result<Taken, Refused>, Error> {
    let wrong = |field, message: String| Refused {
        status: StatusCode::UNPROCESSABLE_ENTITY,
        code: "form",
        field,
        message,
    };
    let Some(stage) = upload.text("stage").parse().ok().filter(|s| *s <= 10_000) else {
        return Ok(Err(wrong(
            "stage",
            "Give the number of rounds the pieces have been through as a whole number; 0 is before the first.".to_owned(),
        )));
    };
    let corners = match areas::parse_chart(&upload.text("corners")) {
        Ok(corners) => corners,
        Err(message) => return Ok(Err(wrong("corners", message))),
    };
    let (chart, reference) = match upload.text("chart").as_str() {
        "" => (None, ChartReference::published()),
        id => match charts.into_iter().find(|kept| kept.id.to_string() == id) {
            Some(kept) => (Some(kept.id), kept.reference),
            None => {
                let message = "Choose one of the charts that are kept here.".to_owned();
                return Ok(Err(wrong("chart", message)));
            }
        },
    };
    let Some((name, bytes)) = upload.files.into_iter().next() else {
        return Ok(Err(wrong("photo", "Choose a photo to add.".to_owned())));
    };
    let (bytes, looked) = blocking(move || {
        let looked = photo::survey_by(&bytes, corners, &reference);
        (bytes, looked)
    })
    .await?;
    Ok(match looked {
        Ok(survey) => Ok(Taken {
            stage,
            name,
            bytes,
            chart,
            survey,
        }),
        Err(refusal) => Err(Refused {
            status: if refusal.code == RefusalCode::TooLarge {
                StatusCode::PAYLOAD_TOO_LARGE
            } else {
                StatusCode::UNPROCESSABLE_ENTITY
            },
            code: refusal.code.as_str(),
            field: if refusal.code == RefusalCode::BadCorners {
                "corners"
            } else {
                "photo"
            },
            message: refusal.message,
        }),
    })
}

async fn store(app: &App, trial: Trial, taken: Taken, json: bool) -> Result<Response, Error> {
    let told = taken
        .survey
        .board
        .as_ref()
        .map(|board| on_board(&trial, taken.stage, board))
        .unwrap_or_default();
    let mut notices = told.notices;
    let unread = taken.survey.flags.iter();
    let unread = unread.filter(|flag| flag.code == FlagCode::BoardUnread);
    notices.extend(unread.map(|flag| flag.message.clone()));
    let (id, areas) = (trial.id, told.areas);
    let marked = !areas.is_empty();
    let photo = app
        .at_bench(move |bench| {
            let photo = bench.add_photo(
                store::NewPhoto {
                    trial: id,
                    stage: taken.stage,
                    name: &taken.name,
                    bytes: &taken.bytes,
                    width: taken.survey.width,
                    height: taken.survey.height,
                    corners: Some(taken.survey.corners),
                    chart: taken.chart,
                    notices: &notices,
                },
                &now(),
            )?;
            if marked {
                bench.mark_areas(photo, areas, &now())?;
            }
            Ok(photo)
        })
        .await?;
    if marked {
        app.read_waiting_a_while().await;
    }
    let url = format!("/trials/{}/photos/{photo}", trial.slug);
    if json {
        let body = Json(serde_json::json!({ "url": url }));
        return Ok((StatusCode::CREATED, [(header::LOCATION, url)], body).into_response());
    }
    Ok(Redirect::to(&url).into_response())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[tokio::test]
    async fn a_form_without_a_file_asks_for_one() {
        let upload = Upload::with(&[("stage", "0")]);
        let refused = take(upload, Vec::new()).await.unwrap().err().unwrap();
        assert_eq!(
            (refused.field, refused.message.as_str()),
            ("photo", "Choose a photo to add.")
        );
    }
}
