//! How often verdicts are wrong, over trials drawn at random with a known truth.
//!
//! `cargo run --release -p trial --example verdict_error_rates [TRIALS] [TABLE]`, where TABLE
//! is the number of the one table to make, from 1.

#[path = "../tests/support/simulation.rs"]
mod simulation;

use simulation::{Loads, Setting, count};

/// What washing does to pieces, standard deviations of L*, a*, b*.
const USUAL: [f64; 3] = [0.45, 0.25, 0.35];
const MOSTLY_LIGHTNESS: [f64; 3] = [0.8, 0.1, 0.1];

/// Seed of the first trial of each row.
const SEED: u64 = 20_260;

fn main() {
    let trials = std::env::args()
        .nth(1)
        .and_then(|text| text.parse().ok())
        .unwrap_or(2000);
    let only: Option<usize> = std::env::args().nth(2).and_then(|text| text.parse().ok());
    println!(
        "{trials} trials in each row, margin {}; shares in percent.\n",
        simulation::MARGIN
    );
    let usual = Setting {
        pieces: [0; 2],
        keepers: 0,
        loads: Loads::None,
        along_fade: false,
        washing: USUAL,
        second_scatters: 1.0,
        truth_de00: 0.0,
    };
    let sides = [[2, 2], [3, 3], [4, 4], [5, 5], [6, 6], [8, 8], [3, 6]];
    let even = [[4, 4], [6, 6], [8, 8]];
    let tables = [
        ("Each piece against its own start", &sides[..], usual),
        (
            "The same, arms differ along the way they fade",
            &sides[..],
            Setting {
                along_fade: true,
                ..usual
            },
        ),
        (
            "One keeper in each arm, a photo for each arm and stage",
            &sides[..],
            Setting {
                keepers: 1,
                ..usual
            },
        ),
        (
            "Three keepers in each arm, a photo for each arm and stage",
            &sides[..],
            Setting {
                keepers: 3,
                ..usual
            },
        ),
        (
            "The second arm scatters three times as much",
            &sides[..],
            Setting {
                second_scatters: 3.0,
                ..usual
            },
        ),
        (
            "Pieces scatter mostly in lightness",
            &sides[..],
            Setting {
                washing: MOSTLY_LIGHTNESS,
                ..usual
            },
        ),
        (
            "Two loads that hold both arms",
            &sides[..],
            Setting {
                loads: Loads::Shared(2),
                ..usual
            },
        ),
        (
            "Two loads for each arm alone",
            &even[..],
            Setting {
                loads: Loads::Own(2),
                ..usual
            },
        ),
        (
            "Four loads for each arm alone",
            &even[..],
            Setting {
                loads: Loads::Own(4),
                ..usual
            },
        ),
    ];
    for (number, (words, sides, setting)) in (1..).zip(tables) {
        if only.is_none_or(|only| only == number) {
            table(words, sides, setting, trials);
        }
    }
}

fn table(words: &str, sides: &[[usize; 2]], setting: Setting, trials: usize) {
    println!("### {words}\n");
    println!(
        "| pieces | true difference | visible | small | alike | open | a difference shown | interval holds |"
    );
    println!("|---|---|---|---|---|---|---|---|");
    for &pieces in sides {
        for truth_de00 in [0.0, 0.5, 1.0, 3.0] {
            let seen = count(
                Setting {
                    pieces,
                    truth_de00,
                    ..setting
                },
                trials,
                SEED,
            );
            let percent = |n| format!("{:.1}", 100.0 * seen.share(n));
            println!(
                "| {} v {} | {truth_de00} | {} | {} | {} | {} | {} | {} |",
                pieces[0],
                pieces[1],
                percent(seen.visible),
                percent(seen.small),
                percent(seen.alike),
                percent(seen.open),
                percent(seen.shown),
                percent(seen.covered),
            );
        }
    }
    println!();
}
