//! Processor time and peak memory.

use std::{fs, process::Command};

use crate::pictures::Picture;

/// What decoding and reading cost, medians.
pub struct Cost {
    pub decode_ms: f64,
    pub read_ms: f64,
    pub ratio: f64,
}

/// Milliseconds that this thread spends on the processor for `work`.
pub fn processor_ms(work: impl FnOnce()) -> f64 {
    let before = spent_ns();
    work();
    (spent_ns() - before) / 1e6
}

/// Nanoseconds that this thread has spent on the processor.
fn spent_ns() -> f64 {
    // The kernel brings the figure up to date when a thread yields, else by ticks.
    std::thread::yield_now();
    fs::read_to_string("/proc/thread-self/schedstat")
        .ok()
        .and_then(|text| text.split_whitespace().next()?.parse().ok())
        .expect("/proc/thread-self/schedstat tells the time spent")
}

/// The value in the middle.
pub fn median(values: &mut [f64]) -> f64 {
    values.sort_by(f64::total_cmp);
    values[values.len() / 2]
}

/// Peak memory, MB, of a process of its own that reads the picture and no other.
pub fn peak_mb(picture: &Picture) -> f64 {
    let file = std::env::temp_dir().join(format!("read_photo_{}.jpg", std::process::id()));
    fs::write(&file, &picture.jpeg).expect("the folder for temporary files can be written");
    let areas = serde_json::to_string(&picture.areas).expect("areas are plain");
    let program = std::env::current_exe().expect("a running program has a path");
    let told = Command::new(program)
        .arg("--peak")
        .arg(&file)
        .arg(areas)
        .output()
        .expect("this program can be started again");
    let _ = fs::remove_file(&file);
    String::from_utf8_lossy(&told.stdout)
        .trim()
        .parse()
        .expect("the process tells its peak")
}

/// Reads the file named first with the areas named second and prints the peak.
pub fn peak_of_this(arguments: &[String]) {
    let bytes = fs::read(&arguments[0]).expect("the file is there");
    let request = photo::Request {
        areas: serde_json::from_str(&arguments[1]).expect("areas"),
        ..photo::Request::default()
    };
    photo::read(&bytes, &request).expect("a rendered photo is read");
    let status = fs::read_to_string("/proc/self/status").expect("/proc is there");
    let peak_kb: f64 = status
        .lines()
        .find_map(|line| {
            line.strip_prefix("VmHWM:")?
                .split_whitespace()
                .next()?
                .parse()
                .ok()
        })
        .expect("the peak is told");
    println!("{:.1}", peak_kb / 1024.0);
}
