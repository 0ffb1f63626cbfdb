//! What can go wrong while a report is written.

/// A report that could not be written.
#[derive(Debug, thiserror::Error)]
pub enum ReportError {
    /// The page's template could not be filled in.
    #[error("{}", crate::text::error::the_report_could_not_be_laid_out(.0))]
    Layout(#[from] askama::Error),
}
