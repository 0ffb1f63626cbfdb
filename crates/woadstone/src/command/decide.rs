//! `woadstone decide READINGS.csv --margin 1.0`.

use crate::text;
use std::fmt::Write;

use serde::Serialize;
use trial::decide::{Decision, UNBOUNDED_DE00, decide, read_csv};
use trial::eyes::{self, FromEyes};
use trial::fade::{self, Fades};

use crate::{
    cli::DecideArgs,
    command::file,
    outcome::{Outcome, Stop, print, print_json},
};

/// Prints the verdicts over a table of readings, or of grades judged by eye.
pub fn run(args: &DecideArgs) -> Outcome {
    let bytes = file(&args.readings)?;
    if eyes::holds_grades(&bytes) {
        return by_eye(args, &bytes);
    }
    let rows = read_csv(bytes.as_slice())
        .map_err(|e| Stop::refused(format!("{}: {e}", args.readings.display())))?;
    let decision = decide(&rows, args.margin)
        .map_err(|e| Stop::refused(format!("{}: {e}", args.readings.display())))?;
    let decided = Decided {
        fades: fade::of_rows(&rows),
        decision,
    };
    if args.json {
        print_json(&decided)
    } else {
        print(&(table(&decided.decision) + &fades(decided.fades.as_ref())))
    }
}

fn by_eye(args: &DecideArgs, bytes: &[u8]) -> Outcome {
    let refused = |e| Stop::refused(format!("{}: {e}", args.readings.display()));
    let rows = eyes::read_csv(bytes).map_err(refused)?;
    let found = eyes::decide(&rows, args.margin).map_err(refused)?;
    if args.json {
        print_json(&found)
    } else {
        print(&grades(&found))
    }
}

/// A decision by eye as text for a terminal.
fn grades(found: &FromEyes) -> String {
    let mut text = String::from("Mean grade of each arm, judged by eye (5 is none, 1 the most)\n");
    for arm in &found.arms {
        let _ = writeln!(
            text,
            "  stage {:>2}  {:<28} {:>5.2}  {}, {} pieces, {} judges",
            arm.stage,
            arm.arm,
            arm.grade,
            scale(arm.staining),
            arm.pieces,
            arm.judges
        );
    }
    text.push_str("\nArms against each other, judged by eye\n");
    for c in &found.comparisons {
        let _ = writeln!(
            text,
            "  stage {:>2}  {} / {}, {}: {:.2} grades ({:.2} to {:.2})  {}\n            {}\n            {}",
            c.stage,
            c.a,
            c.b,
            scale(c.staining),
            c.difference,
            c.low,
            c.high,
            c.verdict,
            c.plain,
            c.reason
        );
    }
    text
}

/// What a grade is of.
const fn scale(staining: bool) -> &'static str {
    match staining {
        true => "staining",
        false => "change",
    }
}

/// A decision with the fades beside it.
#[derive(Serialize)]
struct Decided {
    #[serde(flatten)]
    decision: Decision,
    fades: Option<Fades>,
}

/// How each arm fades, as text for a terminal; empty where nothing is known.
pub fn fades(fades: Option<&Fades>) -> String {
    let Some(fades) = fades else {
        return String::new();
    };
    let mut text = String::from("\nHow each arm fades from round to round\n");
    for arm in &fades.arms {
        let _ = writeln!(text, "  {}\n            {}", arm.plain, arm.technical);
    }
    text
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
        text::command::no_interval().into()
    } else {
        format!("{low:.2} to {high:.2}")
    }
}
