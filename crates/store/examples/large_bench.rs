//! Prints how long pages wait for a bench of 10,000 trials and 1,000,000 readings.
//!
//! Run it with `cargo run --release -p store --example large_bench`; with a folder's name after
//! `--` the bench stays there, for the example `page_times` of `web`.

use photo::board::Code;
use std::{error::Error, path::PathBuf, time::Instant};
use store::Bench;
use trial::{PieceId, TrialId};

const TRIALS: i64 = 10_000;
const SEARCHES: u32 = 500;

const FILL: &str = include_str!("large_bench.sql");

fn main() -> Result<(), Box<dyn Error>> {
    let passing = tempfile::tempdir()?;
    let home = std::env::args()
        .nth(1)
        .map_or_else(|| passing.path().to_owned(), PathBuf::from);
    Bench::open(&home)?;
    let database = rusqlite::Connection::open(home.join("woadstone.sqlite"))?;
    database.execute_batch(&format!("BEGIN; {FILL}"))?;
    for piece in 0..10 * TRIALS as u32 {
        let tag = Code::from_number(piece).to_string();
        database.execute("UPDATE piece SET tag = ?1 WHERE id = ?2", (tag, piece + 1))?;
    }
    database.execute_batch("COMMIT;")?;
    let start = Instant::now();
    let bench = Bench::open(&home)?;
    println!("open the bench: {:?}", start.elapsed());
    for _ in 0..2 {
        let start = Instant::now();
        println!(
            "list {} trials: {:?}",
            bench.trials()?.len(),
            start.elapsed()
        );
        let start = Instant::now();
        let middle = TrialId(TRIALS / 2);
        let found = (
            bench
                .trial_by_id(middle)?
                .map_or(0, |trial| trial.pieces.len()),
            bench.photos(middle)?.len(),
            bench.current_readings(middle)?.len(),
        );
        println!(
            "pieces, photos, readings of one {found:?}: {:?}",
            start.elapsed()
        );
        let start = Instant::now();
        let readings = bench.readings_of(PieceId(TRIALS))?.len();
        println!("{readings} readings of a piece: {:?}", start.elapsed());
        let start = Instant::now();
        bench.next_waiting()?;
        println!("look at the queue: {:?}", start.elapsed());
    }
    let colours = (0..SEARCHES).map(|k| {
        let part = |step: u32, from: f64, to: f64| {
            from + (to - from) * f64::from(k * step % SEARCHES) / f64::from(SEARCHES)
        };
        [
            part(7, 15.0, 90.0),
            part(11, -75.0, 75.0),
            part(13, -75.0, 75.0),
        ]
    });
    let near = colours.map(|lab| timed(|| bench.readings_near(lab, "D65/10", 24)));
    said("readings near a colour", near.collect::<Result<_, _>>()?);
    let words = [
        "trial",
        "trial 77",
        "arm",
        "t",
        "trial 4242",
        "which",
        "no such word",
    ];
    let found = (0..SEARCHES).map(|k| {
        let word = words[k as usize % words.len()];
        timed(|| bench.search(word))
    });
    said("words", found.collect::<Result<_, _>>()?);
    Ok(())
}

/// How long it took, ms.
fn timed<T, E>(work: impl FnOnce() -> Result<T, E>) -> Result<f64, E> {
    let start = Instant::now();
    work()?;
    Ok(1000.0 * start.elapsed().as_secs_f64())
}

/// Prints the median and the 99th percentile.
fn said(what: &str, mut times_ms: Vec<f64>) {
    times_ms.sort_by(f64::total_cmp);
    let at = |share: f64| times_ms[(share * (times_ms.len() - 1) as f64).round() as usize];
    println!(
        "search for {what}: median {:.1} ms, 99th percentile {:.1} ms",
        at(0.5),
        at(0.99)
    );
}
