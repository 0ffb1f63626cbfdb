//! The `woadstone` program: its command line and the wiring, nothing else.

mod cli;
mod command;
mod demo;
mod home;
mod outcome;
mod text;

use std::process::ExitCode;

use clap::Parser;

fn main() -> ExitCode {
    tracing_subscriber::fmt()
        .with_writer(std::io::stderr)
        .with_max_level(tracing::Level::WARN)
        .init();
    outcome::exit_code(command::run(cli::Cli::parse()))
}
