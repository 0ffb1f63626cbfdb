//! Prints how well rendered photos are read: `reading_accuracy [PHOTOS] [FIRST_SEED]`.

#[path = "../tests/common/mod.rs"]
#[allow(dead_code, reason = "each test file uses its share")]
mod common;

use common::{Errors, errors, median, photo, request};

fn main() {
    let mut arguments = std::env::args()
        .skip(1)
        .filter_map(|a| a.parse::<u64>().ok());
    let photos = arguments.next().unwrap_or(30);
    let first = arguments.next().unwrap_or(0);
    println!("seed light corner_px  loo  colour  pair  near  held   model");
    let lights = ["D65", "D50", "FL2", "LED"];
    let mut by_light: [Totals; 4] = Default::default();
    let mut found = 0;
    for seed in first..first + photos {
        let rendered = photo(seed);
        let light = (seed % 4) as usize;
        let reading = match photo::read(&rendered.jpeg, &request(&rendered)) {
            Ok(reading) => reading,
            Err(refusal) => {
                println!(
                    "{seed:>4} {:<5} {}: {refusal}",
                    lights[light],
                    refusal.code.as_str()
                );
                continue;
            }
        };
        found += 1;
        let e = errors(&rendered, &reading);
        let corners = reading
            .chart
            .corners
            .iter()
            .zip(&rendered.truth.chart_corners);
        let off = corners
            .map(|(a, b)| (a[0] - b[0]).hypot(a[1] - b[1]))
            .fold(0.0, f64::max);
        println!(
            "{seed:>4} {:<5} {off:>9.1} {:>4.2} {:>7.2} {:>5.2} {:>5.2} {:>2}/{}  {}",
            lights[light],
            reading.chart.loo_de00_median,
            median(&e.colour),
            median(&e.difference),
            median(&e.near_difference),
            e.held,
            e.difference.len(),
            reading.chart.model,
        );
        by_light[light].add(e);
    }
    let mut all = Totals::default();
    for (light, totals) in lights.iter().zip(by_light) {
        println!("{light}: {totals}");
        all.join(totals);
    }
    println!("{found} of {photos} charts found. All: {all}");
}

/// The errors of many photos.
#[derive(Default)]
struct Totals {
    colour: Vec<f64>,
    difference: Vec<f64>,
    near: Vec<f64>,
    held: [usize; 3],
}

impl Totals {
    fn add(&mut self, e: Errors) {
        self.join(Self {
            colour: e.colour,
            difference: e.difference,
            near: e.near_difference,
            held: [e.colour_held, e.held, e.near_held],
        });
    }

    fn join(&mut self, other: Self) {
        self.colour.extend(other.colour);
        self.difference.extend(other.difference);
        self.near.extend(other.near);
        for (sum, more) in self.held.iter_mut().zip(other.held) {
            *sum += more;
        }
    }
}

impl std::fmt::Display for Totals {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let share = |k: usize, of: &[f64]| 100.0 * self.held[k] as f64 / of.len().max(1) as f64;
        write!(
            f,
            "median CIEDE2000 off: colour {:.3}, difference of any two {:.3}, of two near ones {:.3}; 95 % intervals hold {:.1} / {:.1} / {:.1} %",
            median(&self.colour),
            median(&self.difference),
            median(&self.near),
            share(0, &self.colour),
            share(1, &self.difference),
            share(2, &self.near),
        )
    }
}
