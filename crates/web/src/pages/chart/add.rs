//! `POST /charts`: keeps a chart, or says what is wrong with it.

use super::list;
use crate::app::{App, now};
use crate::error::{Error, refusal_json, wants_json};
use crate::form::Problems;
use crate::text;
use crate::upload::{CHART, Upload};
use axum::extract::{Request, State};
use axum::http::{HeaderMap, StatusCode};
use axum::response::{IntoResponse, Redirect, Response};
use store::StoreError;

pub(crate) async fn act(
    State(app): State<App>,
    headers: HeaderMap,
    request: Request,
) -> Result<Response, Error> {
    let json = wants_json(&headers);
    let upload = match Upload::receive(&app, &headers, request, &CHART).await {
        Err(Error::TooLarge(message)) if !json => {
            return refuse(&app, StatusCode::PAYLOAD_TOO_LARGE, "", "chart", message).await;
        }
        received => received?,
    };
    let name = upload.text("name");
    let Some((file, bytes)) = upload.files.into_iter().next() else {
        let message = text::chart::choose_the_file_with_the_values().to_owned();
        if json {
            return Ok(refusal_json(
                StatusCode::UNPROCESSABLE_ENTITY,
                "form",
                &message,
            ));
        }
        return refuse(
            &app,
            StatusCode::UNPROCESSABLE_ENTITY,
            &name,
            "chart",
            message,
        )
        .await;
    };
    let typed = name.clone();
    let added = app
        .at_bench(
            move |bench| match bench.add_chart(&typed, &file, &bytes, &now()) {
                Ok(_) => Ok(Ok(())),
                Err(StoreError::Input { field, message }) => Ok(Err((field, message))),
                Err(error) => Err(error.into()),
            },
        )
        .await?;
    match added {
        Ok(()) => Ok(Redirect::to("/charts").into_response()),
        Err((_, message)) if json => Ok(refusal_json(
            StatusCode::UNPROCESSABLE_ENTITY,
            "form",
            &message,
        )),
        Err((field, message)) => {
            refuse(
                &app,
                StatusCode::UNPROCESSABLE_ENTITY,
                &name,
                field,
                message,
            )
            .await
        }
    }
}

async fn refuse(
    app: &App,
    status: StatusCode,
    name: &str,
    field: &str,
    message: String,
) -> Result<Response, Error> {
    let charts = app.at_bench(|bench| Ok(bench.charts()?)).await?;
    let mut problems = Problems::default();
    problems.add(field, message);
    Ok((status, list::render(app, &charts, name, &problems)?).into_response())
}
