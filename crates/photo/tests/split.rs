//! Resist-dyed pieces beside plain ones: pale and deep are told apart, and evenly
//! dyed cloth is left whole.
//!
//! Source of the truth: spectra inside `scene`, which shares no code with `photo`.
//! The whole table: `cargo run --release -p photo --example splits`.

#[allow(dead_code, reason = "each test file uses its share")]
mod common;
mod resist_scenes;

use common::median;
use photo::FlagCode;
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

/// The whole of a divided piece is the mean light of both its parts, however much
/// brighter the pale one is: it is no glare.
#[test]
fn a_bright_pale_part_counts_in_the_whole() {
    let mut divided = 0;
    for seed in 100..104 {
        let rendered = scene::render(&scene(seed, [1600, 1200]));
        let Ok(reading) = photo::read(&rendered.jpeg, &common::request(&rendered)) else {
            continue;
        };
        for read in &reading.readings {
            let Some(split) = &read.split else { continue };
            divided += 1;
            let shines = read
                .flags
                .iter()
                .any(|flag| matches!(flag.code, FlagCode::Glare | FlagCode::WetLook));
            assert!(!shines, "{seed} {}: {:?}", read.id, read.flags);
            let luminance = |l: f64| ((l + 16.0) / 116.0).powi(3);
            let both = split.pale.share * luminance(split.pale.lab.l)
                + split.deep.share * luminance(split.deep.lab.l);
            let whole = luminance(read.lab.expect("what is divided was read").l);
            // Borders between the parts belong to neither.
            assert!(
                (whole / both - 1.0).abs() < 0.15,
                "{seed} {}: {whole} {both}",
                read.id
            );
        }
    }
    assert!(divided > 10, "{divided}");
}
