//! Photos: new ones, all of a trial, one of them, where the pieces lie on it.

pub(crate) mod add;
pub(crate) mod events;
mod layers;
pub(crate) mod list;
pub(crate) mod mark;
pub(crate) mod new;
pub(crate) mod preview;
pub(crate) mod queue;
pub(crate) mod show;
pub(crate) mod stage;
mod taken;
pub(crate) mod tile;

use crate::error::Error;
use crate::form::Signed;
use crate::text;
use axum::response::Redirect;
use store::Bench;
use trial::{Photo, PhotoId, Trial};

/// The trial and the photo of it, or the page that says which is missing.
pub(crate) fn find(bench: &mut Bench, slug: &str, id: i64) -> Result<(Trial, Photo), Error> {
    let trial = super::trial::find(bench, slug)?;
    let photo = bench
        .photo(PhotoId(id))?
        .filter(|photo| photo.trial == trial.id)
        .ok_or(Error::NotFound(text::photo::this_trial_has_no_such_photo()))?;
    Ok((trial, photo))
}

/// The page that a button was pressed on, and to which the answer leads back.
#[derive(Clone, Copy)]
pub(crate) enum Return {
    Photo,
    List,
}

impl Return {
    pub(crate) fn of(form: &Signed) -> Self {
        match form.text("back").as_str() {
            "list" => Self::List,
            _ => Self::Photo,
        }
    }

    pub(crate) fn to(self, trial: &Trial, photo: i64) -> Redirect {
        let slug = &trial.slug;
        Redirect::to(&match self {
            Self::Photo => format!("/trials/{slug}/photos/{photo}"),
            Self::List => format!("/trials/{slug}/photos#photo-{photo}"),
        })
    }
}
