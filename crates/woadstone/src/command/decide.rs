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
    let mut text = String::from(&format!(
        "{}\n",
        text::command::mean_grade_of_each_arm_judged()
    ));
    for arm in &found.arms {
        let _ = writeln!(
            text,
            "  {}",
            text::command::stage_pieces_judges(
                format_args!("{:>2}", arm.stage),
                format_args!("{:<28}", arm.arm),
                format_args!("{:>5.2}", arm.grade),
                scale(arm.staining),
                arm.pieces,
                arm.judges
            )
        );
    }
    text.push_str(&format!(
        "\n{}\n",
        text::command::arms_against_each_other_judged_by_eye()
    ));
    for c in &found.comparisons {
        let _ = writeln!(
            text,
            "  {}\n            {}\n            {}",
            text::command::stage_grades(
                format_args!("{:>2}", c.stage),
                &c.a,
                &c.b,
                scale(c.staining),
                format_args!("{:.2}", c.difference),
                format_args!("{:.2}", c.low),
                format_args!("{:.2}", c.high),
                c.verdict
            ),
            c.plain,
            c.reason
        );
    }
    text
}

/// What a grade is of.
fn scale(staining: bool) -> &'static str {
    match staining {
        true => text::command::staining(),
        false => text::command::change(),
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
    let mut text = String::from(&format!(
        "\n{}\n",
        text::command::how_each_arm_fades_from_round()
    ));
    for arm in &fades.arms {
        let _ = writeln!(text, "  {}\n            {}", arm.plain, arm.technical);
    }
    text
}

/// The decision as text for a terminal.
pub fn table(decision: &Decision) -> String {
    let mut text = String::from(&format!(
        "{}\n",
        text::command::change_of_each_arm_since_its_start()
    ));
    for arm in &decision.arms {
        let _ = writeln!(
            text,
            "  {}",
            text::command::stage_grade_from_pieces(
                format_args!("{:>2}", arm.stage),
                format_args!("{:<28}", arm.arm),
                format_args!("{:>5.2}", arm.de00),
                interval(arm.low, arm.high),
                &arm.fade_grade,
                arm.pieces
            )
        );
    }
    text.push_str(&format!("\n{}\n", text::command::arms_against_each_other()));
    for c in &decision.comparisons {
        let _ = writeln!(
            text,
            "  {}\n            {}",
            text::command::stage_differs(
                format_args!("{:>2}", c.stage),
                &c.a,
                &c.b,
                format_args!("{:.2}", c.de00),
                interval(c.low, c.high),
                c.verdict
            ),
            c.reason
        );
    }
    text
}

fn interval(low: f64, high: f64) -> String {
    if high >= UNBOUNDED_DE00 {
        text::command::no_interval().into()
    } else {
        text::command::to(format_args!("{low:.2}"), format_args!("{high:.2}"))
    }
}
