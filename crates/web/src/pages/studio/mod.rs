//! The studio: what serves all trials.

pub(crate) mod show;
