//! Searching the notebook, by words and by colour.

mod ask;
pub(crate) mod show;
