//! How often verdicts are wrong, over trials drawn at random with a known truth.
//!
//! `cargo run --release -p trial --example verdict_error_rates [TRIALS]`

#[path = "../tests/support/simulation.rs"]
mod simulation;

use simulation::{Setting, count};

fn main() {
    let trials = std::env::args()
        .nth(1)
        .and_then(|text| text.parse().ok())
        .unwrap_or(1000);
    println!(
        "{trials} trials each, margin {}; shares in percent",
        simulation::MARGIN
    );
    println!(
        "pieces  keeper  washing scatters        truth  visible  small  alike   open  interval holds the truth"
    );
    let sides = [[2, 2], [3, 3], [4, 4], [5, 5], [6, 6], [8, 8], [3, 6]];
    let usual = [0.45, 0.25, 0.35];
    let mostly_lightness = [0.8, 0.1, 0.1];
    for (keeper, second_scatters, washing) in [
        (false, 1.0, usual),
        (true, 1.0, usual),
        (false, 3.0, usual),
        (false, 1.0, mostly_lightness),
    ] {
        for pieces in sides {
            for truth_de00 in [0.0, 0.5, 1.0, 3.0] {
                let setting = Setting {
                    pieces,
                    keeper,
                    second_scatters,
                    washing,
                    truth_de00,
                };
                let seen = count(setting, trials, 20_260);
                let percent = |n| 100.0 * seen.share(n);
                println!(
                    "{:>3} v {}  {:>6}  {:<22}  {:>5}  {:>7.1}  {:>5.1}  {:>5.1}  {:>5.1}  {:>8.1}",
                    pieces[0],
                    pieces[1],
                    if keeper { "one" } else { "none" },
                    format!("{washing:?} x{second_scatters}"),
                    truth_de00,
                    percent(seen.visible),
                    percent(seen.small),
                    percent(seen.alike),
                    percent(seen.open),
                    percent(seen.covered),
                );
            }
        }
    }
}
