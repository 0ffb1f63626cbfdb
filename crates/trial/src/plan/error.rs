//! Why a plan can't be taken.

/// A field that can't be taken, with a sentence that says what to do.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{message}")]
pub struct PlanError {
    /// The field, such as `arms[1].pieces`; empty where the text as a whole can't be read.
    pub field: String,
    /// What is wrong and what to do, a sentence or two.
    pub message: String,
}

impl PlanError {
    pub(super) fn new(field: impl Into<String>, message: impl Into<String>) -> Self {
        Self {
            field: field.into(),
            message: message.into(),
        }
    }
}
