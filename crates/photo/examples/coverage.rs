//! Prints how often 95 % intervals hold the truth, by difficulty, in one photo
//! and across photos: `coverage [PAIRS_OF_PHOTOS] [FIRST_SEED]`.
//!
//! Each pair of photos shows the same pieces by the same camera, laid anew in
//! other light. Source of the truth: spectra inside `scene`, which shares no code
//! with `photo`.

mod wild;

use colour::{Lab, difference::ciede2000};
use photo::PhotoReading;
use scene::{Rendered, render};
use wild::{NAMES, pair, request, truth};

/// How often intervals held, and by how much the figures missed.
#[derive(Default)]
struct Tally {
    misses: Vec<f64>,
    held: usize,
    above: usize,
}

impl Tally {
    fn add(&mut self, told: (f64, f64, f64), truth: f64) {
        let (de00, low, high) = told;
        self.misses.push((de00 - truth).abs());
        self.held += usize::from((low..=high).contains(&truth));
        self.above += usize::from(truth > high);
    }

    fn line(&mut self) -> String {
        self.misses.sort_by(f64::total_cmp);
        let n = self.misses.len().max(1);
        let at = |share: f64| {
            self.misses
                .get((share * n as f64) as usize)
                .copied()
                .unwrap_or(f64::NAN)
        };
        format!(
            "{n:>6} {:>6.1} % {:>6.1} % {:>8.3} {:>8.3}",
            100.0 * self.held as f64 / n as f64,
            100.0 * self.above as f64 / n as f64,
            at(0.5),
            at(0.95)
        )
    }
}

const KINDS: [&str; 6] = [
    "a colour against the truth",
    "any two pieces, one photo",
    "two depths of a dye, one photo",
    "any two pieces, across photos",
    "two depths of a dye, across photos",
    "the same piece, across photos",
];

fn main() {
    let mut arguments = std::env::args()
        .skip(1)
        .filter_map(|a| a.parse::<u64>().ok());
    let pairs = arguments.next().unwrap_or(20);
    let first = arguments.next().unwrap_or(0);
    let mut tallies: [[Tally; KINDS.len()]; 3] = Default::default();
    let (mut read, mut refused) = (0, 0);
    for seed in first..first + pairs {
        let level = (seed % 3) as usize;
        let photos: Vec<(Rendered, PhotoReading)> = pair(seed, 1600, 1200)
            .iter()
            .filter_map(|scene| {
                let rendered = render(scene);
                match photo::read(&rendered.jpeg, &request(&rendered)) {
                    Ok(reading) => Some((rendered, reading)),
                    Err(why) => {
                        println!("seed {seed}, {}: {}", NAMES[level], why.code.as_str());
                        refused += 1;
                        None
                    }
                }
            })
            .collect();
        read += photos.len();
        for (rendered, reading) in &photos {
            inside(&mut tallies[level], rendered, reading);
        }
        if let [one, other] = &photos[..] {
            across(&mut tallies[level], one, other);
        }
    }
    println!("{read} photos read, {refused} refused");
    println!(
        "{:<8}{:<36}{:>6} {:>8} {:>8} {:>8} {:>8}",
        "", "", "n", "held", "above", "median", "95 %"
    );
    for (name, tallies) in NAMES.iter().zip(&mut tallies) {
        for (kind, tally) in KINDS.iter().zip(tallies.iter_mut()) {
            println!("{name:<8}{kind:<36}{}", tally.line());
        }
    }
    for (k, kind) in KINDS.iter().enumerate() {
        let mut all = Tally::default();
        for level in &mut tallies {
            let tally = std::mem::take(&mut level[k]);
            all.misses.extend(tally.misses);
            all.held += tally.held;
            all.above += tally.above;
        }
        println!("{:<8}{kind:<36}{}", "all", all.line());
    }
}

fn inside(tallies: &mut [Tally], rendered: &Rendered, reading: &PhotoReading) {
    for r in &reading.readings {
        let Some(lab) = r.lab else { continue };
        let own = truth(rendered, &r.id);
        // The truth has no error of its own: what is asked is whether the region
        // around the reading reaches it.
        let (held, far) = reach(lab, &r.cov, own);
        tallies[0].misses.push(ciede2000(lab, own));
        tallies[0].held += usize::from(held);
        tallies[0].above += usize::from(far);
    }
    for d in &reading.differences {
        let true_de = ciede2000(truth(rendered, &d.a), truth(rendered, &d.b));
        tallies[1].add((d.de00, d.low, d.high), true_de);
        if d.a[..1] == d.b[..1] {
            tallies[2].add((d.de00, d.low, d.high), true_de);
        }
    }
}

/// Whether the truth lies in a reading's 95 % region, and whether outside.
///
/// Source: published, the quantile 7.815 of chi-squared with three degrees of freedom.
fn reach(lab: Lab, cov: &[[f64; 3]; 3], truth: Lab) -> (bool, bool) {
    let d = nalgebra::Vector3::new(truth.l - lab.l, truth.a - lab.a, truth.b - lab.b);
    let cov = nalgebra::Matrix3::from_fn(|r, c| cov[r][c]);
    let length = cov
        .try_inverse()
        .map_or(f64::INFINITY, |inverse| d.dot(&(inverse * d)));
    (length < 7.815, length >= 7.815)
}

fn across(tallies: &mut [Tally], one: &(Rendered, PhotoReading), other: &(Rendered, PhotoReading)) {
    for a in &one.1.readings {
        for b in &other.1.readings {
            let Some(d) = one.1.difference_across(&a.id, &other.1, &b.id) else {
                continue;
            };
            let true_de = ciede2000(truth(&one.0, &a.id), truth(&other.0, &b.id));
            let told = (d.de00, d.low, d.high);
            if a.id == b.id {
                tallies[5].add(told, true_de);
            } else {
                tallies[3].add(told, true_de);
                if a.id[..1] == b.id[..1] {
                    tallies[4].add(told, true_de);
                }
            }
        }
    }
}
