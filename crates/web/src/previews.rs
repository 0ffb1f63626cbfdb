//! Photos made small for screens, kept while the program runs.

use crate::error::Error;
use axum::body::Bytes;
use std::collections::HashMap;
use std::sync::{Mutex, PoisonError};

/// The longest side of a picture in a list, pixels.
pub(crate) const SMALL_PX: u32 = 480;
/// The longest side of a picture to mark areas on, pixels.
pub(crate) const LARGE_PX: u32 = 1600;

/// How many pictures are kept; some 20 MB at most.
const MOST_KEPT: usize = 60;

/// Pictures by content hash and size. A hash names the content, so none ever goes stale.
#[derive(Default)]
pub(crate) struct Previews(Mutex<HashMap<(String, u32), Bytes>>);

impl Previews {
    pub(crate) fn kept(&self, hash: &str, longest_px: u32) -> Option<Bytes> {
        self.0
            .lock()
            .unwrap_or_else(PoisonError::into_inner)
            .get(&(hash.to_owned(), longest_px))
            .cloned()
    }

    /// Makes a picture from a photo's bytes, unless it is kept already, and keeps it; slow.
    pub(crate) fn make(&self, hash: &str, longest_px: u32, photo: &[u8]) -> Result<Bytes, Error> {
        if let Some(kept) = self.kept(hash, longest_px) {
            return Ok(kept);
        }
        let jpeg = Bytes::from(photo::preview(photo, longest_px).map_err(Error::refused)?);
        let mut kept = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        if kept.len() >= MOST_KEPT {
            kept.clear();
        }
        kept.insert((hash.to_owned(), longest_px), jpeg.clone());
        Ok(jpeg)
    }
}
