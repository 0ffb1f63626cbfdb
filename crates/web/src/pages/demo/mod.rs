//! The demo trial.

pub(crate) mod open;
