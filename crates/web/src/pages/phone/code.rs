//! `POST /phone/code`, at the computer only: makes a code with which one phone can be paired.

use crate::app::App;
use crate::error::Error;
use crate::form::Signed;
use crate::text;
use axum::extract::State;
use axum::response::Redirect;
use std::time::Instant;

pub(crate) async fn act(State(app): State<App>, _form: Signed) -> Result<Redirect, Error> {
    if app.phones.network.address().is_none() {
        return Err(Error::Malformed(
            text::phone::switch_the_local_network_on_first().to_owned(),
        ));
    }
    app.phones.codes.make(Instant::now());
    Ok(Redirect::to("/phone#code"))
}
