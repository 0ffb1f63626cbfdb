//! The journal of the bench and of each trial.

pub(crate) mod show;
