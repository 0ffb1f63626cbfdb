//! What reading a photo costs beside decoding it, as ratios taken in one run:
//! `cargo bench -p photo`. Processor time and peak memory come from `/proc`, so
//! the figures need Linux; see `docs/speed.md` for what they mean.

mod measure;
mod pictures;

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
    println!("| threads | folder of {FOLDER} photos, s | beside one thread |");
    println!("|---|---|---|");
    let one = folder_s(&photos[0], 1);
    for threads in [1, 2] {
        let seconds = if threads == 1 {
            one
        } else {
            folder_s(&photos[0], threads)
        };
        println!("| {threads} | {seconds:.2} | {:.2} |", one / seconds);
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

/// Seconds by the clock to read the folder, the least of three tries.
fn folder_s(picture: &Picture, threads: usize) -> f64 {
    let once = || {
        let next = std::sync::atomic::AtomicUsize::new(0);
        let begun = std::time::Instant::now();
        std::thread::scope(|scope| {
            for _ in 0..threads {
                scope.spawn(|| {
                    while next.fetch_add(1, std::sync::atomic::Ordering::Relaxed) < FOLDER {
                        reading(picture);
                    }
                });
            }
        });
        begun.elapsed().as_secs_f64()
    };
    (0..3).map(|_| once()).fold(f64::INFINITY, f64::min)
}
