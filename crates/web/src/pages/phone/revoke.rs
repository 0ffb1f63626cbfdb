//! `POST /phone/revoke`, at the computer only: a device is let in no more.

use crate::app::{App, now};
use crate::error::Error;
use crate::form::Signed;
use crate::text;
use axum::extract::State;
use axum::response::Redirect;

pub(crate) async fn act(State(app): State<App>, form: Signed) -> Result<Redirect, Error> {
    let device = form.text("device").parse().map_err(|_| {
        Error::Malformed(text::phone::say_which_device_the_page_lists_those().to_owned())
    })?;
    app.at_bench(move |bench| Ok(bench.revoke_device(device, &now())?))
        .await?;
    app.progress.cut_phones();
    Ok(Redirect::to("/phone#devices"))
}
