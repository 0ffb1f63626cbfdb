//! Prints how well rendered photos are read: `reading_accuracy [PHOTOS] [FIRST_SEED]`.

#[path = "../tests/common.rs"]
#[allow(dead_code, reason = "each test file uses its share")]
mod common;

use common::{errors, median, photo, request};

fn main() {
    let mut arguments = std::env::args()
        .skip(1)
        .filter_map(|a| a.parse::<u64>().ok());
    let photos = arguments.next().unwrap_or(30);
    let first = arguments.next().unwrap_or(0);
    println!(
        "seed light found corner_px  model                                     loo   colour  pair   near   held"
    );
    let lights = ["D65", "D50", "FL2", "LED"];
    let (mut colour, mut pairs, mut near) = (Vec::new(), Vec::new(), Vec::new());
    let (mut found, mut held) = (0, 0);
    for seed in first..first + photos {
        let rendered = photo(seed);
        let light = lights[(seed % 4) as usize];
        match photo::read(&rendered.jpeg, &request(&rendered)) {
            Err(refusal) => println!("{seed:>4} {light:<5} {}: {refusal}", refusal.code.as_str()),
            Ok(reading) => {
                found += 1;
                let e = errors(&rendered, &reading);
                let off = reading
                    .chart
                    .corners
                    .iter()
                    .zip(&rendered.truth.chart_corners)
                    .map(|(a, b)| (a[0] - b[0]).hypot(a[1] - b[1]))
                    .fold(0.0, f64::max);
                println!(
                    "{seed:>4} {light:<5} yes   {off:>6.1}     {:<42} {:.2}  {:.2}    {:.2}   {:.2}   {}/{}",
                    reading.chart.model,
                    reading.chart.loo_de00_median,
                    median(&e.colour),
                    median(&e.difference),
                    median(&e.near_difference),
                    e.held,
                    e.difference.len()
                );
                held += e.held;
                colour.extend(e.colour);
                pairs.extend(e.difference);
                near.extend(e.near_difference);
            }
        }
    }
    println!(
        "{found} of {photos} charts found; medians (CIEDE2000): colour {:.3}, difference of any two {:.3}, of two near ones {:.3}; {:.1} % of {} intervals hold the truth",
        median(&colour),
        median(&pairs),
        median(&near),
        100.0 * held as f64 / pairs.len().max(1) as f64,
        pairs.len()
    );
}
