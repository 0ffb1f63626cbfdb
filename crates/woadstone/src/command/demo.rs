//! `woadstone demo`: the main job on the invented trial, before the person's eyes.

use crate::text;
use std::{fmt::Write, path::PathBuf};

use report::words;
use trial::{PhotoState, Results, Trial};

use crate::{
    cli::DemoArgs,
    command::{decide, now, open, publish, serve},
    demo::{self, Step},
    home,
    outcome::{Outcome, Stop, print},
};

/// Reads the demo's photographs, prints what they say, writes the report, serves.
pub fn run(home: Option<PathBuf>, args: &DemoArgs) -> Outcome {
    let home = home::demo(home)?;
    let mut bench = open(&home)?;
    print(&format!(
        "{}\n\n",
        text::command::an_invented_trial_no_such_napkins()
    ))?;
    let slug = demo::lay_out(&mut bench, &now(), &mut |step| tell(&step))?;
    let Results {
        trial,
        readings,
        decision,
        undecided,
        fades,
        ..
    } = publish::results(&bench, &slug)?;
    print(&readings_table(&trial, &readings))?;
    let decision = decision.ok_or_else(|| Stop::refused(undecided.unwrap_or_default()))?;
    print(&format!(
        "{}\n{}\n{}{}\n",
        trial.question,
        text::command::the_margin_the_smallest_difference(format_args!("{:.1}", trial.margin_de00)),
        decide::table(&decision),
        decide::fades(fades.as_ref())
    ))?;
    let report = home.join("report.html");
    publish::write(&bench, &slug, &report)?;
    print(&format!("{}\n", text::command::report(report.display())))?;
    if args.no_serve {
        return Ok(());
    }
    serve::serve(bench, args.port, &format!("trials/{slug}"))
}

/// A line for each step; a terminal that is gone is no reason to stop.
fn tell(step: &Step<'_>) {
    let line = match step {
        Step::Photographing { stage, arm } => {
            text::command::photographing(arm, words::stage(*stage))
        }
        Step::Read { name, state } => match state {
            PhotoState::Read {
                model,
                loo_de00_median,
                ..
            } => format!(
                "{}\n",
                text::command::read_chart_missed(name, model, format_args!("{loo_de00_median:.2}"))
            ),
            PhotoState::Refused { message, .. } => {
                format!("{}\n", text::command::refused(name, message))
            }
            PhotoState::Unmarked | PhotoState::Waiting | PhotoState::TakenOut => {
                format!("{}\n", text::command::waits(name))
            }
        },
    };
    let _ = print(&line);
}

/// Every piece's colour by stage.
fn readings_table(trial: &Trial, readings: &[trial::Reading]) -> String {
    let mut text = String::from(&format!(
        "\n{}\n",
        text::command::readings_cielab_d65_10_95()
    ));
    for arm in &trial.arms {
        let _ = writeln!(text, "  {}", arm.name);
        for piece in trial.pieces.iter().filter(|piece| piece.arm == arm.id) {
            let mut of_piece: Vec<_> = readings.iter().filter(|r| r.piece == piece.id).collect();
            of_piece.sort_by_key(|r| r.stage);
            for r in of_piece {
                let [l, a, b] = r.lab;
                let [sl, sa, sb] = [0, 1, 2].map(|k| 1.96 * r.cov[k][k].max(0.0).sqrt());
                let _ = writeln!(
                    text,
                    "    {}",
                    text::command::round_l_a_b(
                        format_args!("{:<4}", piece.code),
                        r.stage,
                        format_args!("{l:6.2}"),
                        format_args!("{sl:.2}"),
                        format_args!("{a:6.2}"),
                        format_args!("{sa:.2}"),
                        format_args!("{b:6.2}"),
                        format_args!("{sb:.2}")
                    )
                );
            }
        }
    }
    text.push('\n');
    text
}
