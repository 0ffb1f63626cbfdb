//! What can go wrong while a report is written.

/// A report that could not be written.
#[derive(Debug, thiserror::Error)]
pub enum ReportError {
    /// The page's template could not be filled in.
    #[error(
        "The report could not be laid out ({0}). The trial itself is untouched; please report this."
    )]
    Layout(#[from] askama::Error),
}
