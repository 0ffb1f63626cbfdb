//! Prints how often verdicts by eye are wrong, as tables for `docs/verdict-by-eye.md`:
//!
//!     cargo run --release -p trial --example eye_verdict_error_rates 2000

#[path = "../tests/support/gradings.rs"]
#[allow(
    dead_code,
    reason = "the tables don't print everything that is counted"
)]
mod gradings;

use gradings::{Eyes, STEADY, Setting, UNSTEADY, USUAL, count};

const SEED: u64 = 2026;
const PIECES: [usize; 5] = [2, 3, 4, 6, 8];

fn main() {
    let trials = std::env::args().nth(1).and_then(|n| n.parse().ok());
    let trials = trials.unwrap_or(2000);
    println!("{trials} gradings in each row; shares in percent.\n");
    let tables: [(&str, f64, f64, Eyes); 8] = [
        ("A margin of 1, about grade 4", 1.0, 4.0, USUAL),
        ("A margin of 2, about grade 3-4", 2.0, 3.5, USUAL),
        ("A margin of 1, next to grade 5", 1.0, 5.0, USUAL),
        ("A margin of 2, about grade 2", 2.0, 2.0, USUAL),
        ("Steady eyes, a margin of 1 about grade 4", 1.0, 4.0, STEADY),
        (
            "Unsteady eyes, a margin of 2 about grade 3-4",
            2.0,
            3.5,
            UNSTEADY,
        ),
        ("Staining, a margin of 3 about grade 4", 3.0, 4.0, USUAL),
        ("Staining, a margin of 3 about grade 3", 3.0, 3.0, USUAL),
    ];
    for (words, margin_de00, middle, eyes) in tables {
        table(words, margin_de00, middle, eyes, trials);
    }
}

fn table(words: &str, margin_de00: f64, middle: f64, eyes: Eyes, trials: usize) {
    println!("### {words}\n");
    println!(
        "| pieces per arm | people | true difference, margins | visible | small | alike | open | interval holds |"
    );
    println!("|---|---|---|---|---|---|---|---|");
    for pieces in PIECES {
        for judges in 1..=4 {
            for margins in [0.0, 1.0, 3.0] {
                let setting = Setting {
                    pieces: [pieces; 2],
                    judges,
                    staining: words.starts_with("Staining"),
                    margin_de00,
                    margins,
                    middle,
                    eyes,
                };
                let seen = count(setting, trials, SEED);
                let percent = |n| format!("{:.1}", 100.0 * seen.share(n));
                println!(
                    "| {pieces} | {judges} | {margins} | {} | {} | {} | {} | {} |",
                    percent(seen.visible),
                    percent(seen.small),
                    percent(seen.alike),
                    percent(seen.open),
                    percent(seen.covered),
                );
            }
        }
    }
    println!();
}
