//! Photos cut into squares at full size, the last few kept while the program runs.

use crate::error::Error;
use photo::Tiles;
use std::collections::VecDeque;
use std::sync::{Arc, Mutex, PoisonError};

/// How many photos are kept cut; a loupe is over one at a time.
const MOST_KEPT: usize = 3;

/// Cut photos by content hash, the newest last.
#[derive(Default)]
pub(crate) struct TileStore {
    kept: Mutex<VecDeque<(String, Arc<Tiles>)>>,
    /// Held by whoever cuts a photo.
    pub(crate) turn: tokio::sync::Mutex<()>,
}

impl TileStore {
    pub(crate) fn kept(&self, hash: &str) -> Option<Arc<Tiles>> {
        let kept = self.kept.lock().unwrap_or_else(PoisonError::into_inner);
        let found = kept.iter().find(|(name, _)| name == hash);
        found.map(|(_, tiles)| Arc::clone(tiles))
    }

    /// Cuts a photo and keeps the squares; slow.
    pub(crate) fn make(&self, hash: &str, photo: &[u8]) -> Result<Arc<Tiles>, Error> {
        let tiles = Arc::new(photo::tiles(photo).map_err(Error::refused)?);
        let mut kept = self.kept.lock().unwrap_or_else(PoisonError::into_inner);
        if kept.len() >= MOST_KEPT {
            kept.pop_front();
        }
        kept.push_back((hash.to_owned(), Arc::clone(&tiles)));
        Ok(tiles)
    }
}
