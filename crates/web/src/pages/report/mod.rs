//! The published report.

pub(crate) mod show;
