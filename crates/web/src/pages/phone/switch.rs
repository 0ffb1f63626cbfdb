//! `POST /phone`, at the computer only: switches the local network on or off.

use super::show::{Typed, render};
use crate::app::{App, now};
use crate::error::Error;
use crate::form::{Problems, Signed};
use crate::phone::{self, USUAL_PORT};
use crate::text;
use axum::extract::State;
use axum::http::StatusCode;
use axum::response::{IntoResponse, Redirect, Response};
use std::net::SocketAddr;
use store::PhoneNetwork;

pub(crate) async fn act(State(app): State<App>, form: Signed) -> Result<Response, Error> {
    if form.text("switch") == "off" {
        app.phones.codes.end();
        app.progress.cut_phones();
        app.phones.network.switch_off().await;
        remember_off(&app).await?;
        return Ok(Redirect::to("/phone").into_response());
    }
    let typed = Typed {
        address: form.text("address"),
        port: form.text("port"),
        at_start: form.has("at-start"),
    };
    let mut problems = Problems::default();
    match chosen(&typed) {
        Ok((wanted, chosen)) => match app.phones.network.switch_on(&app, wanted).await {
            Ok(()) => {
                app.at_bench(move |bench| Ok(bench.choose_phone_network(&chosen, &now())?))
                    .await?;
                return Ok(Redirect::to("/phone").into_response());
            }
            Err(sentence) => problems.add("address", sentence),
        },
        Err((field, sentence)) => problems.add(field, sentence),
    }
    let page = render(&app, &typed, &problems).await?;
    Ok((StatusCode::UNPROCESSABLE_ENTITY, page).into_response())
}

/// Off stays off at the next start, too.
async fn remember_off(app: &App) -> Result<(), Error> {
    app.at_bench(|bench| {
        if let Some(chosen) = bench.phone_network()?.filter(|chosen| chosen.at_start) {
            let off = PhoneNetwork {
                at_start: false,
                ..chosen
            };
            bench.choose_phone_network(&off, &now())?;
        }
        Ok(())
    })
    .await
}

fn chosen(typed: &Typed) -> Result<(SocketAddr, PhoneNetwork), (&'static str, String)> {
    let address =
        phone::chosen_address(&typed.address).map_err(|sentence| ("address", sentence))?;
    let port = match typed.port.as_str() {
        "" => USUAL_PORT,
        port => port.parse().map_err(|_| {
            let sentence = text::phone::the_port_is_a_number_from_0(USUAL_PORT);
            ("port", sentence)
        })?,
    };
    let chosen = PhoneNetwork {
        address: address.to_string(),
        port,
        at_start: typed.at_start,
    };
    Ok((SocketAddr::from((address, port)), chosen))
}
