//! Prints how often intervals of fade curves hold, as a Markdown table.
//!
//! `cargo run --release -p inference --example decay_coverage [trials]`

#[path = "../tests/support/fades.rs"]
mod fades;

use fades::{Setting, held};
use inference::decay::Curve;

fn main() {
    let trials = std::env::args()
        .nth(1)
        .and_then(|n| n.parse().ok())
        .unwrap_or(2000);
    println!(
        "| pieces | looks at rounds | floor, rate | reading SD | pieces' own SD | keeper | missing | at the last round | twice as far | floor | half-way round | width at the last | no change, line, curve |"
    );
    println!("|---|---|---|---|---|---|---|---|---|---|---|---|---|");
    let slow = Curve {
        floor: 0.5,
        rate: 0.15,
    };
    let fast = Curve {
        floor: 0.6,
        rate: 0.5,
    };
    let hardly = Curve {
        floor: 0.96,
        rate: 0.5,
    };
    let to_nothing = Curve {
        floor: 0.0,
        rate: 0.1,
    };
    let none = Curve {
        floor: 1.0,
        rate: 0.5,
    };
    let usual: &[u32] = &[1, 3, 5];
    let long: &[u32] = &[1, 2, 3, 5, 7, 10, 15, 20];
    let mut settings = Vec::new();
    for pieces in [2, 3, 4, 6, 8] {
        for (stages, truth) in [(usual, fast), (usual, slow), (long, fast), (long, slow)] {
            for keeper in [false, true] {
                settings.push((pieces, stages, truth, 0.02, [0.1, 0.0], keeper, 0.0));
            }
        }
    }
    for truth in [hardly, to_nothing, none] {
        let own = if truth.floor > 0.0 {
            [0.1, 0.0]
        } else {
            [0.0, 0.0]
        };
        settings.push((4, usual, truth, 0.02, own, true, 0.0));
        settings.push((4, long, truth, 0.02, own, false, 0.0));
    }
    for own in [[0.0, 0.0], [0.0, 0.3], [0.2, 0.2]] {
        settings.push((4, long, fast, 0.02, own, false, 0.0));
        settings.push((6, usual, fast, 0.05, own, true, 0.0));
    }
    settings.push((6, long, fast, 0.02, [0.1, 0.1], false, 0.2));
    settings.push((4, &[2, 5], fast, 0.02, [0.1, 0.0], true, 0.0));
    for (pieces, stages, truth, reading, own, keeper, missing) in settings {
        let setting = Setting {
            pieces,
            stages,
            truth,
            reading,
            own,
            keeper,
            missing,
        };
        let h = held(&setting, trials);
        let share = |v: f64| format!("{:.1} %", 100.0 * v);
        let list: Vec<String> = stages.iter().map(u32::to_string).collect();
        println!(
            "| {pieces} | {} | {}, {} | {reading} | {} and {} | {} | {} | {} | {} | {} | {} | {:.3} | {:.0}, {:.0}, {:.0} % |",
            list.join(" "),
            truth.floor,
            truth.rate,
            own[0],
            own[1],
            if keeper { "yes" } else { "no" },
            share(missing),
            share(h.last),
            share(h.twice),
            share(h.floor),
            share(h.passing),
            h.width,
            100.0 * h.shapes[0],
            100.0 * h.shapes[1],
            100.0 * h.shapes[2],
        );
    }
}
