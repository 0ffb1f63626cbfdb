//! How far the photos of a trial have come, and who is told when that changes.

use report::words;
use serde::Serialize;
use std::sync::{Arc, Mutex, PoisonError};
use tokio::sync::{OwnedSemaphorePermit, Semaphore, watch};
use trial::{Photo, PhotoId, PhotoState};

/// Most pages that are told at one time. A page that is one too many looks again by itself.
const MOST_LISTENERS: usize = 24;

/// What is going on with photos, for all pages.
pub(crate) struct Progress {
    /// Counts changes; what it counts to means nothing.
    changes: watch::Sender<u64>,
    /// Whether the program is about to end.
    ending: watch::Sender<bool>,
    /// The photo that is being read.
    reading: Mutex<Option<PhotoId>>,
    /// Held by whoever reads photos: one at a time, so that none is read twice.
    pub(crate) reader: tokio::sync::Mutex<()>,
    /// Counts how often phones were cut off.
    cuts: watch::Sender<u64>,
    listeners: Arc<Semaphore>,
}

impl Default for Progress {
    fn default() -> Self {
        Self {
            changes: watch::Sender::new(0),
            ending: watch::Sender::new(false),
            reading: Mutex::new(None),
            cuts: watch::Sender::new(0),
            reader: tokio::sync::Mutex::new(()),
            listeners: Arc::new(Semaphore::new(MOST_LISTENERS)),
        }
    }
}

/// A page that is told of changes; makes room for another one when it is dropped.
pub(crate) struct Listener {
    pub(crate) changes: watch::Receiver<u64>,
    pub(crate) ending: watch::Receiver<bool>,
    /// Changes when phones are cut off.
    pub(crate) cuts: watch::Receiver<u64>,
    _room: OwnedSemaphorePermit,
}

impl Progress {
    /// Tells every page that something about photos has changed.
    pub(crate) fn changed(&self) {
        self.changes.send_modify(|count| *count += 1);
    }

    /// Ends what would otherwise go on for ever.
    pub(crate) fn end(&self) {
        self.ending.send_replace(true);
    }

    /// Ends what phones are being told; those that may, ask anew.
    pub(crate) fn cut_phones(&self) {
        self.cuts.send_modify(|count| *count += 1);
    }

    /// Notes which photo is being read, if any.
    pub(crate) fn set_reading(&self, photo: Option<PhotoId>) {
        *self.reading.lock().unwrap_or_else(PoisonError::into_inner) = photo;
        self.changed();
    }

    /// A place among those who are told; none if there are too many.
    pub(crate) fn listen(&self) -> Option<Listener> {
        Some(Listener {
            changes: self.changes.subscribe(),
            ending: self.ending.subscribe(),
            cuts: self.cuts.subscribe(),
            _room: Arc::clone(&self.listeners).try_acquire_owned().ok()?,
        })
    }

    /// How far a photo has come.
    pub(crate) fn of(&self, photo: &Photo) -> Status {
        let reading = *self.reading.lock().unwrap_or_else(PoisonError::into_inner);
        Status::of(photo, reading == Some(photo.id))
    }
}

/// How far a photo has come, for pages.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub(crate) struct Status {
    pub(crate) id: i64,
    /// Short name of the state, for scripts and styles.
    pub(crate) state: &'static str,
    /// The state in words.
    pub(crate) words: &'static str,
    /// Why it could not be read; empty otherwise.
    pub(crate) why: String,
    /// Whether nothing more will come without the person.
    #[serde(skip)]
    pub(crate) done: bool,
}

impl Status {
    fn of(photo: &Photo, is_read_now: bool) -> Self {
        let (state, done) = match &photo.state {
            PhotoState::Unmarked => ("unmarked", false),
            PhotoState::Waiting if is_read_now => ("reading", false),
            PhotoState::Waiting => ("waiting", false),
            PhotoState::TakenOut => ("taken-out", false),
            PhotoState::Read { .. } => ("read", true),
            PhotoState::Refused { .. } => ("refused", true),
        };
        Self {
            id: photo.id.0,
            state,
            words: match state {
                "reading" => "being read",
                _ => words::photo_state(&photo.state),
            },
            why: match &photo.state {
                PhotoState::Refused { message, .. } => message.clone(),
                _ => String::new(),
            },
            done,
        }
    }
}

/// How many of some photos are done, in a sentence.
pub(crate) fn told(photos: &[Status]) -> String {
    let count = |state: &str| photos.iter().filter(|photo| photo.state == state).count();
    let mut parts = vec![format!("{} of {} read", count("read"), photos.len())];
    for (state, words) in [
        ("reading", "being read"),
        ("waiting", "waiting"),
        ("unmarked", "to be marked"),
        ("refused", "could not be read"),
        ("taken-out", "taken out of the queue"),
    ] {
        if count(state) > 0 {
            parts.push(format!("{} {words}", count(state)));
        }
    }
    format!("{}.", parts.join(", "))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn there_is_room_for_so_many_listeners_and_again_when_one_leaves() {
        let progress = Progress::default();
        let mut listeners: Vec<Listener> = (0..MOST_LISTENERS)
            .map(|_| progress.listen().unwrap())
            .collect();
        assert!(progress.listen().is_none());
        listeners.pop();
        assert!(progress.listen().is_some());
    }

    #[test]
    fn states_are_counted_in_words() {
        let status = |state| Status {
            id: 1,
            state,
            words: "",
            why: String::new(),
            done: false,
        };
        let photos = ["read", "reading", "waiting", "waiting", "refused"].map(status);
        assert_eq!(
            told(&photos),
            "1 of 5 read, 1 being read, 2 waiting, 1 could not be read."
        );
    }
}
