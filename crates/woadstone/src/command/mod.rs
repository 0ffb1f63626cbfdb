//! One file a command.

mod add_readings;
mod bath;
mod board;
mod decide;
mod demo;
mod difference;
mod grade;
mod grade_by_eye;
mod plan;
mod power;
mod publish;
mod read;
mod serve;
mod setup_check;
mod tags;

use crate::text;
use std::io::ErrorKind;
use std::path::Path;

use store::Bench;

use crate::{
    cli::{Cli, Command, ServeArgs},
    outcome::{Outcome, Stop, print},
};

/// Runs what was asked for.
pub fn run(cli: Cli) -> Outcome {
    match cli.command {
        None => serve::run(cli.home, &ServeArgs { port: 7117 }),
        Some(Command::Serve(args)) => serve::run(cli.home, &args),
        Some(Command::Demo(args)) => demo::run(cli.home, &args),
        Some(Command::Read(args)) => read::run(&args),
        Some(Command::Bath(args)) => bath::run(&args),
        Some(Command::Grade(args)) => grade::run(&args),
        Some(Command::Difference(args)) => difference::run(&args),
        Some(Command::Decide(args)) => decide::run(&args),
        Some(Command::Plan(args)) => plan::run(&args),
        Some(Command::Power(args)) => power::run(&args),
        Some(Command::SetupCheck(args)) => setup_check::run(cli.home, &args),
        Some(Command::AddReadings(args)) => add_readings::run(cli.home, &args),
        Some(Command::GradeByEye(args)) => grade_by_eye::run(cli.home, &args),
        Some(Command::Board(args)) => board::run(&args),
        Some(Command::Tags(args)) => tags::run(cli.home, &args),
        Some(Command::Publish(args)) => publish::run(cli.home, &args),
    }
}

/// Opens a bench; what is printed and served from now on is written by its settings.
fn open(home: &Path) -> Result<Bench, Stop> {
    let bench = Bench::open(home).map_err(Stop::refused)?;
    locale::set(bench.locale().map_err(Stop::refused)?);
    Ok(bench)
}

/// The bytes of a file that a person named.
fn file(path: &Path) -> Result<Vec<u8>, Stop> {
    std::fs::read(path).map_err(|e| {
        Stop::refused(match e.kind() {
            ErrorKind::NotFound => text::command::there_is_no_such_file(path.display()),
            _ => text::command::cant_be_opened(path.display(), &e),
        })
    })
}

/// Writes text to the file a person named, or to standard output.
fn write_out(text: &str, out: Option<&Path>) -> Outcome {
    let Some(path) = out else {
        return print(text);
    };
    std::fs::write(path, text)
        .map_err(|e| Stop::refused(text::command::cant_be_written(path.display(), &e)))?;
    print(&format!("{}\n", text::command::wrote(path.display())))
}

/// The time now, as the store keeps it.
fn now() -> String {
    jiff::Timestamp::now().to_string()
}
