//! `POST /bin`: puts something in the bin, or takes it out again.

use crate::app::{App, now};
use crate::error::Error;
use crate::form::Signed;
use crate::text;
use axum::extract::State;
use axum::response::Redirect;
use trial::PhotoId;

pub(crate) async fn act(State(app): State<App>, form: Signed) -> Result<Redirect, Error> {
    let (kind, name) = (form.text("kind"), form.text("name"));
    let back = form.text("do") == "restore";
    let to = app
        .at_bench(move |bench| {
            let Some(thing) = super::thing(&kind, &name) else {
                return Err(Error::Malformed(
                    text::bin::there_is_no_such_thing_to_put().to_owned(),
                ));
            };
            if !back {
                bench.put_in_bin(thing, &now())?;
                return Ok("/bin".to_owned());
            }
            bench.restore(thing, &now())?;
            Ok(match kind.as_str() {
                "photo" => of_photo(bench, &name)?,
                kind => format!("/{kind}s/{name}"),
            })
        })
        .await?;
    Ok(Redirect::to(&to))
}

/// The address of a photo's page.
fn of_photo(bench: &store::Bench, id: &str) -> Result<String, Error> {
    let photo = bench.photo(PhotoId(id.parse().unwrap_or_default()))?;
    let trial = photo
        .map(|photo| bench.trial_by_id(photo.trial))
        .transpose()?;
    Ok(match trial.flatten() {
        Some(trial) => format!("/trials/{}/photos/{id}", trial.slug),
        None => "/".to_owned(),
    })
}
