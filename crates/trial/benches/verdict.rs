//! What a verdict costs on one core: `cargo bench -p trial --bench verdict`.

use colour::Lab;
use inference::chance::Chance;
use std::time::Instant;
use trial::{
    Role,
    decide::{Row, decide},
};

const ARMS: usize = 4;
const STAGES: u32 = 6;
/// Rounds of each measurement, of which the middle one counts.
const ROUNDS: usize = 9;

/// Readings of so many pieces in each arm and a keeper, at the start and five stages.
fn rows(pieces: usize) -> Vec<Row> {
    let mut chance = Chance::new(1);
    let mut rows = Vec::new();
    for arm in 0..ARMS {
        for piece in 0..=pieces {
            let kept = piece == pieces;
            for stage in 0..STAGES {
                let faded = if kept {
                    0.0
                } else {
                    f64::from(stage) * (1.0 + 0.2 * arm as f64)
                };
                let mut near = |value: f64| value + 0.3 * chance.normal();
                rows.push(Row {
                    arm: format!("arm {arm}"),
                    piece: format!("{arm}-{piece}"),
                    role: if kept { Role::Keeper } else { Role::Test },
                    load: (!kept).then(|| format!("wash {}", piece % 3)),
                    photo: None,
                    stated: None,
                    stage,
                    lab: Lab::new(near(40.0 + faded), near(20.0 - faded / 2.0), near(5.0)),
                });
            }
        }
    }
    rows
}

fn main() {
    let mut usual = 0.0;
    for pieces in [6, 60, 600, 6000] {
        let rows = rows(pieces);
        let mut times: Vec<f64> = (0..ROUNDS)
            .map(|_| {
                let begun = Instant::now();
                std::hint::black_box(decide(&rows, 1.0)).expect("the rows are sound");
                begun.elapsed().as_secs_f64()
            })
            .collect();
        times.sort_by(f64::total_cmp);
        let middle = times[ROUNDS / 2];
        if pieces == 6 {
            usual = middle;
        }
        println!(
            "{ARMS} arms x {pieces} pieces x {STAGES} stages: {:.2} ms, {:.1} times that of 6 pieces for {} times the pieces",
            1e3 * middle,
            middle / usual,
            pieces / 6,
        );
    }
}
