//! What is wrong with a trial as entered.

use serde::{Deserialize, Serialize};

/// A field of an entered trial that can't be taken as it is.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error, Serialize, Deserialize)]
#[error("{message}")]
pub struct TrialError {
    /// The field, as a path: `title`, `arms`, `arms[1].pieces[0].code`.
    pub field: String,
    /// What is wrong and how to mend it, in a sentence.
    pub message: String,
}
