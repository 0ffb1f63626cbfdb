//! How far the photos of a trial have come, and who is told when that changes.

use crate::text;
use report::words;
use serde::Serialize;
use std::collections::HashMap;
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
    reader_at: Mutex<ReaderAt>,
    /// Held by whoever reads photos: one at a time, so that none is read twice.
    pub(crate) reader: tokio::sync::Mutex<()>,
    /// Counts how often phones were cut off.
    cuts: watch::Sender<u64>,
    listeners: Arc<Semaphore>,
}

/// Where the reader of photos is.
#[derive(Default)]
struct ReaderAt {
    /// The photo that is being read.
    photo: Option<PhotoId>,
    /// How often each photo was read since the program started. A second reading
    /// can be over before anyone looks, and leaves the photo's state as it was.
    turns: HashMap<PhotoId, u64>,
}

impl Default for Progress {
    fn default() -> Self {
        Self {
            changes: watch::Sender::new(0),
            ending: watch::Sender::new(false),
            reader_at: Mutex::default(),
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
        let mut at = self
            .reader_at
            .lock()
            .unwrap_or_else(PoisonError::into_inner);
        let before = std::mem::replace(&mut at.photo, photo);
        if let Some(before) = before {
            *at.turns.entry(before).or_default() += 1;
        }
        drop(at);
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
        let at = self
            .reader_at
            .lock()
            .unwrap_or_else(PoisonError::into_inner);
        let turn = at.turns.get(&photo.id).copied().unwrap_or_default();
        Status::of(photo, at.photo == Some(photo.id), turn)
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
    /// How often it was read since the program started.
    #[serde(skip)]
    turn: u64,
    /// Whether nothing more will come without the person.
    #[serde(skip)]
    pub(crate) done: bool,
}

impl Status {
    fn of(photo: &Photo, is_read_now: bool, turn: u64) -> Self {
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
                "reading" => text::progress::being_read(),
                _ => words::photo_state(&photo.state),
            },
            why: match &photo.state {
                PhotoState::Refused { message, .. } => message.clone(),
                _ => String::new(),
            },
            turn,
            done,
        }
    }
}

/// How many of some photos are done, in a sentence.
pub(crate) fn told(photos: &[Status]) -> String {
    let count = |state: &str| photos.iter().filter(|photo| photo.state == state).count();
    let mut parts = vec![text::progress::of_read(count("read"), photos.len())];
    for (state, words) in [
        ("reading", text::progress::being_read()),
        ("waiting", "waiting"),
        ("unmarked", text::progress::to_be_marked()),
        ("refused", text::progress::could_not_be_read()),
        ("taken-out", text::progress::taken_out_of_the_queue()),
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
    use trial::TrialId;

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
    fn a_second_reading_is_news_though_the_state_is_the_same() {
        let photo = Photo {
            id: PhotoId(7),
            trial: TrialId(1),
            stage: 0,
            name: "a.jpg".into(),
            hash: "00".repeat(32),
            bytes: 1,
            width: 1,
            height: 1,
            corners: None,
            chart: None,
            areas: Vec::new(),
            state: PhotoState::Waiting,
            added_at: String::new(),
        };
        let progress = Progress::default();
        let before = progress.of(&photo);
        progress.set_reading(Some(photo.id));
        assert_eq!(progress.of(&photo).state, "reading");
        progress.set_reading(None);
        let after = progress.of(&photo);
        assert_eq!(after.state, before.state);
        assert_ne!(after, before);
        progress.set_reading(None);
        assert_eq!(progress.of(&photo), after);
    }

    #[test]
    fn states_are_counted_in_words() {
        let status = |state| Status {
            id: 1,
            state,
            words: "",
            why: String::new(),
            turn: 0,
            done: false,
        };
        let photos = ["read", "reading", "waiting", "waiting", "refused"].map(status);
        assert_eq!(
            told(&photos),
            "1 of 5 read, 1 being read, 2 waiting, 1 could not be read."
        );
    }
}
