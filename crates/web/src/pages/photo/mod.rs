//! Photos: a new one, one of them, where the pieces lie on it.

pub(crate) mod add;
pub(crate) mod mark;
pub(crate) mod new;
pub(crate) mod preview;
pub(crate) mod show;

use crate::error::Error;
use store::Bench;
use trial::{Photo, PhotoId, Trial};

/// The trial and the photo of it, or the page that says which is missing.
pub(crate) fn find(bench: &mut Bench, slug: &str, id: i64) -> Result<(Trial, Photo), Error> {
    let trial = super::trial::find(bench, slug)?;
    let photo = bench
        .photo(PhotoId(id))?
        .filter(|photo| photo.trial == trial.id)
        .ok_or(Error::NotFound(
            "This trial has no such photo. Its page lists those it has.",
        ))?;
    Ok((trial, photo))
}
