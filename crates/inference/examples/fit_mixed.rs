//! Fits a mixed model of arms at stages to a table and prints what it took.
//!
//! `cargo run --release -p inference --example fit_mixed -- values.csv`, columns piece,
//! arm, stage, value (whole numbers, then a number). `bench/mixed_model.py` sets it
//! beside a reference library.

use inference::mixed::{Cells, Place};
use std::{error::Error, time::Instant};

/// Fits, of which the quickest counts.
const ROUNDS: usize = 5;

fn main() -> Result<(), Box<dyn Error>> {
    let path = std::env::args().nth(1).ok_or("name a table of values")?;
    let mut rows: Vec<(usize, usize, usize, f64)> = Vec::new();
    for row in csv::Reader::from_path(path)?.deserialize() {
        rows.push(row?);
    }
    let mut least = f64::MAX;
    for _ in 0..ROUNDS {
        let begun = Instant::now();
        let mut cells = Cells::new(0);
        for &(piece, arm, stage, value) in &rows {
            cells.add(Place { piece, loads: &[] }, arm, stage, value)?;
        }
        let fit = cells.fit()?;
        let last = rows.iter().map(|row| row.2).max().unwrap_or(0);
        let found = fit.contrast(&cells.difference(0, 1, last)?)?;
        let ms = begun.elapsed().as_secs_f64() * 1e3;
        if ms < least {
            least = ms;
            println!("ms {ms}");
            println!("pieces {}", fit.pieces.variance);
            println!("residual {}", fit.residual);
            println!("log_likelihood {}", fit.log_likelihood);
            println!("difference {}", found.estimate);
            println!("standard_error {}", found.standard_error);
        }
    }
    Ok(())
}
