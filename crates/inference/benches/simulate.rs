//! What drawing a planned trial costs on one core: `cargo bench -p inference`.
//! Wall time, the least of a few rounds.

use inference::simulate::{Contrasts, Design, Layout, Piece, Runs, ScatterOf, Truth};
use std::time::Instant;

/// Rounds, of which the quickest counts.
const ROUNDS: usize = 5;
/// Trials that are drawn of each stage.
const RUNS: u32 = 2000;
/// Stages of a trial, each a layout of its own.
const STAGES: usize = 6;

fn main() {
    println!("| trial | stages | runs of each | ms |");
    println!("|---|---|---|---|");
    for (name, scatter, keepers) in [
        ("scatter of all arms, own start", ScatterOf::AllArms, 0),
        ("scatter of each pair, own start", ScatterOf::EachPair, 0),
        ("scatter of all arms, 2 keepers", ScatterOf::AllArms, 2),
        ("scatter of each pair, 2 keepers", ScatterOf::EachPair, 2),
    ] {
        let stages: Vec<Layout> = (0..STAGES)
            .map(|_| layout(4, 12, keepers, scatter))
            .collect();
        let ms = least_ms(|| stages.iter().for_each(|stage| simulate(stage, RUNS)));
        println!("| 4 arms x 12 pieces, {name} | {STAGES} | {RUNS} | {ms:.0} |");
    }
    let many = layout(2, 5000, 0, ScatterOf::AllArms);
    let ms = least_ms(|| simulate(&many, RUNS));
    println!("| 2 arms x 5,000 pieces | 1 | {RUNS} | {ms:.0} |");
}

/// Loads of two kinds that hold pieces of all arms: 2 dye baths, 3 washes.
fn layout(arms: usize, per_arm: usize, keepers: u32, scatter: ScatterOf) -> Layout {
    let pieces = (0..arms * per_arm).map(|at| {
        let (arm, number) = (at % arms, at / arms);
        Piece {
            arm,
            loads: vec![Some(number % 2), Some(number / 2 % 3)],
        }
    });
    Layout {
        arms,
        pieces: pieces.collect(),
        keepers: vec![keepers; arms],
        kinds: 2,
        contrasts: Contrasts::Against(0),
        scatter,
    }
}

fn simulate(layout: &Layout, runs: u32) {
    let truth = Truth {
        effects: (0..layout.arms).map(|arm| arm as f64 / 2.0).collect(),
        piece_sd: 0.8,
        load_sds: vec![1.0, 0.6],
        reading_sd: 0.3,
        photos: 2,
        margin: Some(1.5),
        parts: 1,
    };
    let design = Design::of(layout).expect("the layout is whole");
    let found = design
        .simulate(&truth, &Runs::new(runs, 1))
        .expect("the truth is whole");
    assert_eq!(found.len(), layout.arms - 1);
}

fn least_ms(work: impl Fn()) -> f64 {
    (0..ROUNDS)
        .map(|_| {
            let begun = Instant::now();
            work();
            begun.elapsed().as_secs_f64() * 1e3
        })
        .fold(f64::MAX, f64::min)
}
