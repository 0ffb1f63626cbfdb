//! What can be wrong with texts.

use std::path::PathBuf;

/// Why texts could not be compiled.
#[derive(Debug, thiserror::Error)]
#[non_exhaustive]
pub enum WordingError {
    /// A file or folder could not be read or written.
    #[error("{}: {cause}", path.display())]
    File {
        /// Which.
        path: PathBuf,
        /// What the system said.
        cause: std::io::Error,
    },
    /// A file isn't Fluent.
    #[error("{}: this isn't Fluent: {junk:?}. Each message is one `name = text`, and what follows it is indented.", path.display())]
    NotFluent {
        /// Which file.
        path: PathBuf,
        /// The beginning of what was not understood.
        junk: String,
    },
    /// A message that can't become a function.
    #[error("{}: message {message}: {why}", path.display())]
    Message {
        /// Which file.
        path: PathBuf,
        /// The message's name.
        message: String,
        /// What is wrong and what to do.
        why: String,
    },
    /// The environment of a build script is missing.
    #[error("OUT_DIR is not set: call this from a build script")]
    NotABuildScript,
}
