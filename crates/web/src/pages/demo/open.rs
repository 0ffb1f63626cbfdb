//! `POST /demo`: lays the demo trial on the bench and opens it.

use crate::app::App;
use crate::error::Error;
use crate::form::Signed;
use axum::extract::State;
use axum::response::Redirect;
use std::sync::Arc;

pub(crate) async fn act(State(app): State<App>, _form: Signed) -> Result<Redirect, Error> {
    let demo = Arc::clone(&app.demo);
    let slug = app
        .at_bench(move |bench| demo(bench).map_err(Error::broken))
        .await?;
    Ok(Redirect::to(&format!("/trials/{slug}")))
}
