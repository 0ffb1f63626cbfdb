//! Prints how long pages wait for a bench of 10,000 trials and 1,000,000 readings.
//!
//! Run it with `cargo run --release -p store --example large_bench`.

use photo::board::Code;
use std::{error::Error, time::Instant};
use store::Bench;
use trial::{PieceId, TrialId};

const TRIALS: i64 = 10_000;

/// 10 pieces and 10 photos for each trial, each piece on each photo.
const FILL: &str = "
    WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < 10000)
    INSERT INTO trial SELECT i, 'trial-' || i, 'Trial ' || i, 'Which?', 1, 9, 0, '', 'now' FROM n;
    WITH RECURSIVE n(i) AS (SELECT 0 UNION ALL SELECT i + 1 FROM n WHERE i < 19999)
    INSERT INTO arm SELECT i + 1, i / 2 + 1, 'arm ' || i, '' FROM n;
    WITH RECURSIVE n(i) AS (SELECT 0 UNION ALL SELECT i + 1 FROM n WHERE i < 99999)
    INSERT INTO piece SELECT i + 1, i / 10 + 1, i / 5 + 1, 'P' || i, 'test', NULL, NULL FROM n;
    WITH RECURSIVE n(i) AS (SELECT 0 UNION ALL SELECT i + 1 FROM n WHERE i < 99999)
    INSERT INTO photo SELECT i + 1, i / 10 + 1, i % 10, 'p.jpg', printf('%064d', i), 1, 9, 9, NULL, 'now', NULL FROM n;
    INSERT INTO marking SELECT id, id, 'now' FROM photo;
    INSERT INTO outcome SELECT id, 'model', 1, NULL, NULL, '[]', 'now' FROM marking;
    INSERT INTO area SELECT photo.id, piece.id, piece.id, '[[1,1],[9,1],[9,9],[1,9]]'
        FROM photo JOIN piece USING (trial_id);
    INSERT INTO reading SELECT NULL, piece.id, photo.id, stage, 40, 20, 10,
        '[[1,0,0],[0,1,0],[0,0,1]]', 1000, 'D65/10', 'photo', '[]', 'now'
        FROM photo JOIN piece USING (trial_id);";

fn main() -> Result<(), Box<dyn Error>> {
    let home = tempfile::tempdir()?;
    Bench::open(home.path())?;
    let database = rusqlite::Connection::open(home.path().join("woadstone.sqlite"))?;
    database.execute_batch(&format!("BEGIN; {FILL}"))?;
    for piece in 0..10 * TRIALS as u32 {
        let tag = Code::from_number(piece).to_string();
        database.execute("UPDATE piece SET tag = ?1 WHERE id = ?2", (tag, piece + 1))?;
    }
    database.execute_batch("COMMIT;")?;
    let start = Instant::now();
    let bench = Bench::open(home.path())?;
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
    Ok(())
}
