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

/// Parts are compared with parts of their own kind, after the whole areas.
#[test]
fn pale_is_compared_with_pale_and_deep_with_deep() {
    let rendered = scene::render(&scene(3, [1600, 1200]));
    let reading = photo::read(&rendered.jpeg, &common::request(&rendered)).expect("it is read");
    let areas: Vec<&str> = reading
        .readings
        .iter()
        .filter(|r| r.split.is_some())
        .map(|r| r.id.as_str())
        .collect();
    let n = reading.readings.len();
    let (wholes, pairs) = (n * (n - 1) / 2, areas.len() * (areas.len() - 1) / 2);
    assert!(pairs > 0);
    assert_eq!(reading.differences.len(), wholes + 2 * pairs);
    let of_parts = &reading.differences[wholes..];
    for (kind, differences) in [("pale", &of_parts[..pairs]), ("deep", &of_parts[pairs..])] {
        for d in differences {
            for id in [&d.a, &d.b] {
                let (area, part) = id.split_once('/').expect("a part's name");
                assert!(part == kind && areas.contains(&area), "{id}");
            }
            assert!(d.low <= d.de00 && d.de00 <= d.high);
        }
    }
    for split in reading.readings.iter().filter_map(|r| r.split.as_ref()) {
        assert!(split.pale.lab.l > split.deep.lab.l);
        assert!((split.pale.share + split.deep.share - 1.0).abs() < 1e-9);
    }
}
