//! From photos of a set-up to its check.

use crate::text;
use crate::{Reader, StoreError};
use photo::{PhotoReading, Request};
use trial::setup::{SetupCheck, Shown, check};

/// Reads photos of the same pieces and finds what the set-up scatters by.
///
/// `photos` hold each file's name and content, `requests` what to read on each:
/// one for all, or one for each. A piece has the same name on every photo.
///
/// # Errors
/// A photo is refused, none shows a piece, or the pieces make no check: a sentence
/// that names the photo and says what to do.
pub fn check_setup(
    photos: &[(String, Vec<u8>)],
    requests: &[Request],
    read: &Reader<'_>,
) -> Result<SetupCheck, StoreError> {
    let refused = |message: String| StoreError::input("photos", message);
    if requests.len() != 1 && requests.len() != photos.len() {
        return Err(refused(
            text::setup_photos::lists_of_areas_came_for_photos_give(requests.len(), photos.len()),
        ));
    }
    let looks = photos
        .iter()
        .zip(requests.iter().cycle())
        .map(|((name, bytes), request)| {
            read(bytes, request)
                .map(|reading| shown(&reading))
                .map_err(|refusal| refused(format!("{name}: {refusal}")))
        })
        .collect::<Result<Vec<Vec<Shown>>, StoreError>>()?;
    if !looks.is_empty() && looks.iter().all(Vec::is_empty) {
        return Err(refused(
            text::setup_photos::no_piece_was_found_on_these_photos().into(),
        ));
    }
    check(&looks).map_err(|error| refused(error.to_string()))
}

/// The pieces that a reading has a colour of.
fn shown(reading: &PhotoReading) -> Vec<Shown> {
    let read = |area: &photo::AreaReading| {
        Some(Shown {
            piece: area.id.clone(),
            lab: area.lab?,
            texture: Some(area.parts.pixels),
        })
    };
    reading.readings.iter().filter_map(read).collect()
}
