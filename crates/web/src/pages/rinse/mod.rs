//! Where the dye of a run went: readings of the spent bath and the rinse waters, and their balance.

mod draft;
pub(crate) mod note;
pub(crate) mod show;
