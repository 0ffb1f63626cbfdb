//! `woadstone decide READINGS.csv --margin 1.0`.

use std::fmt::Write;

use trial::decide::{Decision, UNBOUNDED_DE00, decide, read_csv};

use crate::{
    cli::DecideArgs,
    command::file,
    outcome::{Outcome, Stop, print, print_json},
};

/// Prints the verdicts over a table of readings.
pub fn run(args: &DecideArgs) -> Outcome {
    let bytes = file(&args.readings)?;
    let rows = read_csv(bytes.as_slice())
        .map_err(|e| Stop::refused(format!("{}: {e}", args.readings.display())))?;
    let decision = decide(&rows, args.margin)
        .map_err(|e| Stop::refused(format!("{}: {e}", args.readings.display())))?;
    if args.json {
        print_json(&decision)
    } else {
        print(&table(&decision))
    }
}

/// The decision as text for a terminal.
pub fn table(decision: &Decision) -> String {
    let mut text = String::from("Change of each arm since its start (CIEDE2000, 95 % interval)\n");
    for arm in &decision.arms {
        let _ = writeln!(
            text,
            "  stage {:>2}  {:<28} {:>5.2}  ({})  grade {}  from {} pieces",
            arm.stage,
            arm.arm,
            arm.de00,
            interval(arm.low, arm.high),
            arm.fade_grade,
            arm.pieces
        );
    }
    text.push_str("\nArms against each other\n");
    for c in &decision.comparisons {
        let _ = writeln!(
            text,
            "  stage {:>2}  {} / {}: {:.2} ({})  {}\n            {}",
            c.stage,
            c.a,
            c.b,
            c.de00,
            interval(c.low, c.high),
            c.verdict,
            c.reason
        );
    }
    text
}

fn interval(low: f64, high: f64) -> String {
    if high >= UNBOUNDED_DE00 {
        "no interval".into()
    } else {
        format!("{low:.2} to {high:.2}")
    }
}
