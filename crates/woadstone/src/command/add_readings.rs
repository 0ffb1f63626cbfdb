//! `woadstone add-readings TRIAL FILE --stage N`.

use crate::text;
use std::{fmt::Write, path::PathBuf};

use colour::table;
use store::Delivery;
use trial::{Matched, Trial, matched};

use crate::{
    cli::AddReadingsArgs,
    command::{file, now, open, publish},
    home,
    outcome::{Outcome, Stop, print},
};

/// Adds what a file measures of a trial's pieces, and says what it left out.
pub fn run(home: Option<PathBuf>, args: &AddReadingsArgs) -> Outcome {
    let mut bench = open(&home::own(home)?)?;
    let trial = publish::results(&bench, &args.trial)?.trial;
    let named = |e: &dyn std::fmt::Display| Stop::refused(format!("{}: {e}", args.file.display()));
    let content = file(&args.file)?;
    let text = table::text(&content).map_err(|e| named(&e))?;
    let table = table::read(&text, args.view).map_err(|e| named(&e))?;
    let found = matched(&trial, &table, args.repeatability).map_err(|e| named(&e))?;
    print(&told(&trial, &found))?;
    if args.dry_run {
        return print(&format!(
            "{}\n",
            text::command::nothing_was_added_this_was_a_dry()
        ));
    }
    let instrument = match args.instrument.as_str() {
        "" => table.instrument.as_deref().unwrap_or(""),
        said => said,
    };
    let name = args.file.file_name().unwrap_or_default().to_string_lossy();
    let delivery = Delivery {
        stage: args.stage,
        file_name: &name,
        content: &content,
        by: &args.by,
        on: &args.on,
        instrument,
        readings: &found.readings,
    };
    let count = bench
        .add_readings(trial.id, &delivery, &now())
        .map_err(Stop::refused)?;
    print(&format!(
        "{}\n",
        text::command::added_to_stage(count, args.stage)
    ))
}

fn told(trial: &Trial, found: &Matched) -> String {
    let mut text = String::new();
    for reading in &found.readings {
        let code = trial.piece(reading.piece).map_or("", |p| p.code.as_str());
        let [l, a, b] = reading.lab;
        let _ = writeln!(
            text,
            "  {code:<12} L* {l:6.2}   a* {a:6.2}   b* {b:6.2}   {}, {}",
            reading.view, reading.source
        );
    }
    for note in &found.notes {
        let _ = writeln!(text, "{}", text::command::note(note));
    }
    if !found.unknown.is_empty() {
        let _ = writeln!(
            text,
            "{}",
            text::command::left_out_no_piece_has_such(found.unknown.join(", "))
        );
    }
    text
}
