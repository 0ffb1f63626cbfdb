//! What reading a photo costs beside decoding it, as ratios taken in one run:
//! `cargo bench -p photo`. Processor time and peak memory come from `/proc`, so
//! the figures need Linux; see `docs/speed.md` for what they mean.

mod measure;
mod pictures;

use std::{
    sync::atomic::{AtomicUsize, Ordering},
    thread,
    time::Instant,
};

use measure::{Cost, median, peak_mb, processor_ms};
use photo::{Request, read};
use pictures::Picture;

/// Rounds over which a median is taken.
const ROUNDS: usize = 7;
/// Photos of the folder.
const FOLDER: usize = 8;

fn main() {
    let arguments: Vec<String> = std::env::args().collect();
    if let Some(at) = arguments.iter().position(|a| a == "--peak") {
        return measure::peak_of_this(&arguments[at + 1..]);
    }
    let photos = [
        pictures::photo(4000, 3000),
        pictures::on_its_side(4000, 3000),
        pictures::photo(8000, 6000),
    ];
    println!("| photo | decode, ms | read, ms | read / decode | peak memory, MB |");
    println!("|---|---|---|---|---|");
    for picture in &photos {
        let cost = beside_decoding(picture);
        println!(
            "| {} | {:.0} | {:.0} | {:.2} | {:.0} |",
            picture.name,
            cost.decode_ms,
            cost.read_ms,
            cost.ratio,
            peak_mb(picture),
        );
    }
    println!();
    println!("| threads | folder of {FOLDER} photos, s | beside one thread | processor time, s |");
    println!("|---|---|---|---|");
    let [one, two] = folders(&photos[0]);
    for (threads, folder) in [(1, one), (2, two)] {
        println!(
            "| {threads} | {:.2} | {:.2} | {:.2} |",
            folder.seconds,
            one.seconds / folder.seconds,
            folder.processor_s,
        );
    }
}

/// Decoding and reading in turn, so that what else the machine does falls on both.
fn beside_decoding(picture: &Picture) -> Cost {
    let (mut decode, mut whole, mut ratios) = (Vec::new(), Vec::new(), Vec::new());
    for _ in 0..ROUNDS {
        let alone = processor_ms(|| drop(pictures::decoded(&picture.jpeg)));
        let read = processor_ms(|| drop(reading(picture)));
        decode.push(alone);
        whole.push(read);
        ratios.push(read / alone);
    }
    Cost {
        decode_ms: median(&mut decode),
        read_ms: median(&mut whole),
        ratio: median(&mut ratios),
    }
}

fn reading(picture: &Picture) -> photo::PhotoReading {
    let request = Request {
        areas: picture.areas.clone(),
        ..Request::default()
    };
    read(&picture.jpeg, &request).expect("a rendered photo is read")
}

/// What reading a folder took.
#[derive(Clone, Copy)]
struct Folder {
    /// Seconds by the clock.
    seconds: f64,
    /// Seconds of all threads on the processor.
    processor_s: f64,
}

/// A folder read by one thread and by two in turn, of each the quickest try.
fn folders(picture: &Picture) -> [Folder; 2] {
    let mut best = [Folder {
        seconds: f64::INFINITY,
        processor_s: f64::INFINITY,
    }; 2];
    for _ in 0..ROUNDS {
        for (best, threads) in best.iter_mut().zip([1, 2]) {
            let folder = folder(picture, threads);
            best.seconds = best.seconds.min(folder.seconds);
            best.processor_s = best.processor_s.min(folder.processor_s);
        }
    }
    best
}

fn folder(picture: &Picture, threads: usize) -> Folder {
    let next = AtomicUsize::new(0);
    let work = || {
        processor_ms(|| {
            while next.fetch_add(1, Ordering::Relaxed) < FOLDER {
                reading(picture);
            }
        })
    };
    let begun = Instant::now();
    let spent: f64 = thread::scope(|scope| {
        let workers: Vec<_> = (0..threads).map(|_| scope.spawn(work)).collect();
        let spent = workers.into_iter().map(|worker| worker.join());
        spent.map(|ms| ms.expect("no reading panics")).sum()
    });
    Folder {
        seconds: begun.elapsed().as_secs_f64(),
        processor_s: spent / 1000.0,
    }
}
