//! Prints how resist-dyed pieces are split into pale and deep, how far each part's
//! colour is off beside those of plain pieces in the same photos, and how often
//! evenly dyed cloth is split falsely: `splits [PHOTOS] [FIRST_SEED]`.
//!
//! Source of the truth: spectra inside `scene`, which shares no code with `photo`.

#[path = "../tests/common/mod.rs"]
#[allow(dead_code, reason = "each file uses its share")]
mod common;

#[path = "../tests/resist_scenes/mod.rs"]
mod resist_scenes;

use common::median;
use resist_scenes::Tally;

fn main() {
    let mut arguments = std::env::args()
        .skip(1)
        .filter_map(|a| a.parse::<u64>().ok());
    let photos = arguments.next().unwrap_or(30);
    let first = arguments.next().unwrap_or(0);
    let names = ["easy", "medium", "hard"];
    let mut all: [Tally; 3] = Default::default();
    for seed in first..first + photos {
        let level = (seed % 3) as usize;
        let scene = resist_scenes::scene(seed, [2000, 1500]);
        all[level].add(&scene, true);
    }
    println!("          split  of   pale   deep  plain  share off  false  of  refused");
    for (name, t) in names.iter().zip(&all) {
        println!(
            "{name:<8} {:>6} {:>3} {:>6.2} {:>6.2} {:>6.2} {:>10.3} {:>6} {:>3} {:>8}",
            t.found,
            t.resisted,
            median(&t.pale),
            median(&t.deep),
            median(&t.plain),
            median(&t.share),
            t.false_splits,
            t.plain.len(),
            t.refused,
        );
    }
}
