//! What is to be said about a photo that was just added.

use std::collections::BTreeMap;
use std::sync::{Mutex, PoisonError};
use trial::PhotoId;

/// Photos of which sentences are kept; the oldest give way.
const MOST: usize = 500;

/// Sentences about photos, from their upload until the program ends: they tell what
/// was not marked by itself, which the marks on the photo's page show too.
#[derive(Default)]
pub(crate) struct Notices(Mutex<BTreeMap<PhotoId, Vec<String>>>);

impl Notices {
    /// Keeps the sentences about a photo.
    pub(crate) fn keep(&self, photo: PhotoId, sentences: Vec<String>) {
        let mut kept = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        kept.insert(photo, sentences);
        while kept.len() > MOST {
            kept.pop_first();
        }
    }

    /// The sentences about a photo.
    pub(crate) fn of(&self, photo: PhotoId) -> Vec<String> {
        let kept = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        kept.get(&photo).cloned().unwrap_or_default()
    }
}
