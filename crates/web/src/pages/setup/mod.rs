//! The set-up: what it can prove, and a check of it.

pub(crate) mod check;
pub(crate) mod show;

use crate::upload;

/// All photos of a check together, bytes: eight as phones make them.
pub(crate) const MOST_BYTES: usize = 2 * upload::MOST_BYTES;
