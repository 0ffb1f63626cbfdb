//! Resist-dyed pieces beside plain ones: pale and deep are told apart, and evenly
//! dyed cloth is left whole.
//!
//! Source of the truth: spectra inside `scene`, which shares no code with `photo`.
//! The whole table: `cargo run --release -p photo --example splits`.

#[allow(dead_code, reason = "each test file uses its share")]
mod common;
mod resist_scenes;

use common::median;
use resist_scenes::{Tally, scene};

#[test]
fn pale_and_deep_are_told_apart_and_plain_cloth_stays_whole() {
    let mut tally = Tally::default();
    for seed in 100..104 {
        tally.add(&scene(seed, [1600, 1200]), true);
    }
    println!(
        "{} of {} split, {} of {} plain ones too; medians: pale {:.2}, deep {:.2}, plain {:.2}",
        tally.found,
        tally.resisted,
        tally.false_splits,
        tally.plain.len(),
        median(&tally.pale),
        median(&tally.deep),
        median(&tally.plain)
    );
    assert_eq!((tally.false_splits, tally.refused), (0, 0));
    assert!(tally.found * 10 >= tally.resisted * 9);
    let limit = 1.5 * median(&tally.plain) + 0.5;
    assert!(median(&tally.pale) < limit && median(&tally.deep) < limit);
    assert!(median(&tally.share) < 0.1);
}
