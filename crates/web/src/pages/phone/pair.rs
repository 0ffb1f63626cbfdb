//! `/pair`, on the local network only: the one page a device gets that is not paired.

use crate::app::{App, now};
use crate::assets::Assets;
use crate::error::{Error, refusal_json, wants_json};
use crate::form::Problems;
use crate::phone::{self, Refused};
use crate::text;
use crate::text::phone as say;
use crate::token::Token;
use askama::Template;
use axum::extract::{ConnectInfo, Form, Query, State};
use axum::http::{HeaderMap, StatusCode, header};
use axum::response::{Html, IntoResponse, Redirect, Response};
use serde::Deserialize;
use std::net::SocketAddr;
use std::time::Instant;

#[derive(Template)]
#[template(path = "phone/pair.html")]
struct PairPage<'a> {
    assets: &'static Assets,
    code: &'a str,
    name: &'a str,
    problems: &'a Problems,
}

/// What the form or the scanned address brings.
#[derive(Deserialize, Default)]
#[serde(default)]
pub(crate) struct Given {
    code: String,
    name: String,
}

/// Letters of a field that are looked at; longer ones come from no page of ours.
const MOST_LETTERS: usize = 60;

pub(crate) async fn page(Query(given): Query<Given>) -> Result<Response, Error> {
    render(StatusCode::OK, &given, &Problems::default())
}

/// The answer to a device that is not paired, whatever it asked for.
pub(crate) fn stranger(headers: &HeaderMap) -> Response {
    let status = StatusCode::UNAUTHORIZED;
    if wants_json(headers) {
        return refusal_json(
            status,
            "not_paired",
            text::phone::this_device_is_not_paired(),
        );
    }
    render(status, &Given::default(), &Problems::default())
        .unwrap_or_else(IntoResponse::into_response)
}

pub(crate) async fn act(
    State(app): State<App>,
    ConnectInfo(from): ConnectInfo<SocketAddr>,
    Form(given): Form<Given>,
) -> Result<Response, Error> {
    let mut problems = Problems::default();
    let now_at = Instant::now();
    if let Err(Refused) = app.phones.attempts.note(from.ip(), now_at) {
        problems.add("code", text::phone::too_many_codes_were_tried_wait_ten());
        return render(StatusCode::TOO_MANY_REQUESTS, &given, &problems);
    }
    if !app.phones.codes.take(&given.code, now_at) {
        problems.add("code", text::phone::this_code_is_not_good());
        return render(StatusCode::UNPROCESSABLE_ENTITY, &given, &problems);
    }
    let name = match given.name.trim() {
        "" => text::phone::usual_name().to_owned(),
        name => short(name),
    };
    let token = Token::random();
    let kept = token.as_str().to_owned();
    app.at_bench(move |bench| Ok(bench.pair_device(&name, &kept, &now())?))
        .await?;
    let cookie = [(header::SET_COOKIE, phone::device_cookie(token.as_str()))];
    Ok((cookie, Redirect::to("/")).into_response())
}

fn short(text: &str) -> String {
    text.chars()
        .filter(|c| !c.is_control())
        .take(MOST_LETTERS)
        .collect()
}

fn render(status: StatusCode, given: &Given, problems: &Problems) -> Result<Response, Error> {
    let page = PairPage {
        assets: Assets::get(),
        code: &short(&given.code),
        name: &short(&given.name),
        problems,
    };
    Ok((status, Html(page.render()?)).into_response())
}
