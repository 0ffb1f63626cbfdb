//! How a command ends: exit codes and the sentence on standard error.

use crate::text;
use std::{
    fmt::Display,
    io::{ErrorKind, Write},
    process::ExitCode,
};

/// Why a command stopped.
#[derive(Debug)]
pub enum Stop {
    /// The input can't be used; the sentence says what and how to mend it.
    Refused(String),
    /// Something broke that the person can't mend.
    Fault(anyhow::Error),
}

/// What a command returns.
pub type Outcome = Result<(), Stop>;

impl Stop {
    /// Refuses the input with the error's own sentence.
    pub fn refused(why: impl Display) -> Self {
        Self::Refused(why.to_string())
    }
}

impl<E: Into<anyhow::Error>> From<E> for Stop {
    fn from(error: E) -> Self {
        Self::Fault(error.into())
    }
}

/// The exit code: 0 done, 3 input refused, 1 our fault (2, bad use, is clap's).
pub fn exit_code(outcome: Outcome) -> ExitCode {
    match outcome {
        Ok(()) => ExitCode::SUCCESS,
        Err(Stop::Refused(sentence)) => {
            eprintln!("{sentence}");
            ExitCode::from(3)
        }
        Err(Stop::Fault(error)) => {
            eprintln!(
                "{}",
                text::outcome::something_went_wrong_that_is_no_fault(format_args!("{error:#}"))
            );
            ExitCode::FAILURE
        }
    }
}

/// Prints text; a reader that hung up (as `head` does) is no fault.
pub fn print(text: &str) -> Outcome {
    let mut out = std::io::stdout().lock();
    match out.write_all(text.as_bytes()).and_then(|()| out.flush()) {
        Err(e) if e.kind() == ErrorKind::BrokenPipe => Ok(()),
        other => Ok(other?),
    }
}

/// Prints a value as indented JSON.
pub fn print_json(value: &impl serde::Serialize) -> Outcome {
    print(&format!("{}\n", serde_json::to_string_pretty(value)?))
}
