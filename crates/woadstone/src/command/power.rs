//! `woadstone power --sd S --margin M --pieces N --arms K`.

use crate::text;
use std::fmt::Write;

use inference::{
    InferenceError,
    power::Test,
    sample_size,
    simulate::{Contrasts, Design, Layout, Outcome as Drawn, Piece, Rate, Runs, ScatterOf, Truth},
};
use serde::Serialize;

use crate::{
    cli::PowerArgs,
    outcome::{Outcome, Stop, print, print_json},
};

/// How often chance alone may show a difference, and each test of equivalence err.
const TAIL: f64 = 0.05;
/// Seeded trials where no formula is at hand.
const RUNS: u32 = 2000;
const SEED: u64 = 1;
/// What pieces are asked for.
const WANTED: [f64; 2] = [0.8, 0.9];
/// Pieces an arm may have.
const MOST_PIECES: usize = 10_000;
/// Pieces in all up to which trials are drawn.
const MOST_DRAWN: usize = 5_000;

/// What is printed.
#[derive(Serialize)]
struct Powers {
    sd: f64,
    margin: f64,
    pieces: usize,
    arms: usize,
    /// How often two arms that differ by the margin are shown to differ.
    difference: f64,
    /// How often two arms that don't differ are shown alike within the margin.
    alike: f64,
    /// The first with all comparisons held to account together, for three arms or more.
    difference_against_control: Option<f64>,
    difference_all_pairs: Option<f64>,
    /// Pieces per arm for two arms.
    pieces_for: Vec<PiecesFor>,
}

#[derive(Serialize)]
struct PiecesFor {
    power: f64,
    difference: Option<u32>,
    difference_exact: Option<f64>,
    alike: Option<u32>,
}

/// Prints the power of equal arms without loads.
pub fn run(args: &PowerArgs) -> Outcome {
    if args.pieces > MOST_PIECES {
        return Err(Stop::refused(text::command::pieces_in_each_arm_are_more(
            args.pieces,
            MOST_PIECES,
        )));
    }
    if !(2..=50).contains(&args.arms) {
        return Err(Stop::refused(text::command::a_trial_compares_2_to_50_arms()));
    }
    if args.pieces < 2 {
        return Err(Stop::refused(
            text::command::one_piece_tells_nothing_of_how_much(),
        ));
    }
    if !(args.margin > 0.0 && args.margin.is_finite()) {
        return Err(Stop::refused(text::command::the_margin_has_to_be_above_0()));
    }
    if !(args.sd > 0.0 && args.sd.is_finite()) {
        return Err(Stop::refused(text::command::equal_pieces_never_read_alike()));
    }
    let powers = powers(args).map_err(Stop::refused)?;
    if args.json {
        print_json(&powers)
    } else {
        print(&as_text(&powers))
    }
}

fn powers(args: &PowerArgs) -> Result<Powers, InferenceError> {
    let (pieces, arms) = (args.pieces as f64, args.arms as f64);
    let error = args.sd * (2.0 / pieces).sqrt();
    let test = Test {
        parts: 1.0,
        df: arms * (pieces - 1.0),
        tail: TAIL,
    };
    let several = args.arms > 2 && args.arms * args.pieces <= MOST_DRAWN;
    let together =
        |contrasts, pick: fn(&Drawn) -> Option<Rate>| -> Result<Option<f64>, InferenceError> {
            several.then(|| drawn(args, contrasts, pick)).transpose()
        };
    Ok(Powers {
        sd: args.sd,
        margin: args.margin,
        pieces: args.pieces,
        arms: args.arms,
        difference: test.power(args.margin / error),
        alike: test.equivalence(args.margin / error, 0.0),
        difference_against_control: together(Contrasts::Against(0), |drawn| {
            drawn.difference_dunnett.or(drawn.difference_holm)
        })?,
        difference_all_pairs: together(Contrasts::AllPairs, |drawn| drawn.difference_holm)?,
        pieces_for: WANTED
            .iter()
            .map(|&power| {
                let ratio = args.margin / args.sd;
                let difference = sample_size::for_difference(ratio, power, TAIL).ok();
                PiecesFor {
                    power,
                    difference: difference.map(|found| found.whole),
                    difference_exact: difference.map(|found| found.exact),
                    alike: sample_size::for_equivalence(ratio, 0.0, power, TAIL)
                        .ok()
                        .map(|found| found.whole),
                }
            })
            .collect(),
    })
}

/// How often the last arm, which alone differs, is shown to differ from the first.
fn drawn(
    args: &PowerArgs,
    contrasts: Contrasts,
    pick: fn(&Drawn) -> Option<Rate>,
) -> Result<f64, InferenceError> {
    let last = args.arms - 1;
    let layout = Layout {
        arms: args.arms,
        pieces: (0..args.arms * args.pieces)
            .map(|i| Piece {
                arm: i / args.pieces,
                loads: Vec::new(),
            })
            .collect(),
        keepers: vec![0; args.arms],
        kinds: 0,
        contrasts,
        scatter: ScatterOf::AllArms,
    };
    let truth = Truth {
        effects: (0..args.arms)
            .map(|arm| if arm == last { args.margin } else { 0.0 })
            .collect(),
        piece_sd: args.sd,
        load_sds: Vec::new(),
        reading_sd: 0.0,
        photos: 1,
        margin: None,
        parts: 1,
    };
    let outcomes = Design::of(&layout)?.simulate(&truth, &Runs::new(RUNS, SEED))?;
    let pair = outcomes
        .iter()
        .find(|drawn| (drawn.contrast.first, drawn.contrast.second) == (0, last));
    Ok(pair.and_then(pick).map_or(0.0, |rate| rate.share))
}

fn as_text(powers: &Powers) -> String {
    let hundred = |share: f64| 100.0 * share;
    let mut text = format!(
        "{}\n  {}\n  {}\n",
        text::command::arms_of_pieces(powers.arms, powers.pieces, powers.sd, powers.margin),
        text::command::a_difference_is_shown(format_args!("{:>5.1}", hundred(powers.difference))),
        text::command::arms_are_shown_alike(format_args!("{:>5.1}", hundred(powers.alike)))
    );
    for (what, share) in [
        (
            text::command::each_against_a_control_held_to_account(),
            powers.difference_against_control,
        ),
        (
            text::command::every_pair_held_to_account_together(),
            powers.difference_all_pairs,
        ),
    ] {
        if let Some(share) = share {
            let _ = writeln!(
                text,
                "  {}",
                text::command::times_in_100_seeded_trials(
                    what,
                    format_args!("{:.0}", hundred(share)),
                    RUNS
                )
            );
        }
    }
    text.push_str(&format!(
        "{}\n",
        text::command::pieces_per_arm_that_two_arms_need()
    ));
    for needed in &powers.pieces_for {
        let say = |pieces: Option<u32>| {
            pieces.map_or(text::command::out_of_reach().into(), |n| n.to_string())
        };
        let _ = writeln!(
            text,
            "  {}",
            text::command::times_in_100_to_show_the_difference(
                format_args!("{:.0}", hundred(needed.power)),
                say(needed.difference),
                say(needed.alike)
            )
        );
    }
    text
}
