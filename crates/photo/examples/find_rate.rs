//! Prints how often the chart is found in rendered photos, how near its corners
//! are, and what is wrongly taken for a chart, as a table:
//! `find_rate [PHOTOS] [DECOYS] [FIRST_SEED]`.

#[path = "../tests/chart_scenes/mod.rs"]
mod chart_scenes;

use chart_scenes::{corner_error, decoys, wild};
use photo::Refusal;
use scene::render;
use std::collections::BTreeMap;

/// The least and the most width of a chart, px, of a row of the table.
const WIDTHS_PX: [(f64, f64); 4] = [
    (0.0, 250.0),
    (250.0, 400.0),
    (400.0, 1000.0),
    (1000.0, f64::INFINITY),
];

fn main() {
    let mut arguments = std::env::args()
        .skip(1)
        .filter_map(|a| a.parse::<u64>().ok());
    let photos = arguments.next().unwrap_or(30);
    let look_alikes = arguments.next().unwrap_or(photos);
    let first = arguments.next().unwrap_or(0);
    charts(first..first + photos);
    decoy_kinds(first, look_alikes as usize);
}

/// A photo's chart: its width in px, and its corners' error in pitches or why it
/// wasn't found.
type Seen = (f64, Result<f64, String>);

fn charts(seeds: std::ops::Range<u64>) {
    let mut all: Vec<Seen> = Vec::new();
    let mut uncorrected = 0;
    for seed in seeds {
        let scene = wild(seed, 4000);
        let rendered = render(&scene);
        let truth = rendered.truth.chart_corners;
        let width = (truth[0][0] - truth[1][0]).hypot(truth[0][1] - truth[1][1]);
        let seen = match photo::survey(&rendered.jpeg, None) {
            Ok(survey) => Ok(corner_error(&survey.corners, &truth).1),
            Err(why) if is_of_the_search(&why) => Err(why.code.as_str().to_owned()),
            Err(_) => {
                uncorrected += 1;
                continue;
            }
        };
        if !matches!(seen, Ok(off) if off < 0.08) {
            eprintln!(
                "seed {seed}, {} x {}, chart {width:.0} px: {seen:?}",
                scene.width_px, scene.height_px
            );
        }
        all.push((width, seen));
    }
    println!(
        "| chart's width, px | photos | found | worst corner, pitches: median | 95 % | most |"
    );
    println!("|---|---|---|---|---|---|");
    for (least, most) in WIDTHS_PX {
        let within = |s: &&Seen| (least..most).contains(&s.0);
        let some: Vec<&Seen> = all.iter().filter(within).collect();
        row(&format!("{least:.0} to {most:.0}"), &some);
    }
    row("all", &all.iter().collect::<Vec<_>>());
    println!("\nFound, then refused for the light or the exposure: {uncorrected} more.\n");
}

/// Whether the search refused, not the correction that comes after it.
fn is_of_the_search(why: &Refusal) -> bool {
    ["chart_missing", "chart_cut_off", "mirrored", "two_charts"].contains(&why.code.as_str())
        || why.message.starts_with("A chart lies")
}

fn row(name: &str, seen: &[&Seen]) {
    let mut errors: Vec<f64> = seen.iter().filter_map(|s| s.1.clone().ok()).collect();
    errors.sort_by(f64::total_cmp);
    let at = |share: f64| {
        let k = (share * (errors.len() as f64 - 1.0)).max(0.0) as usize;
        errors
            .get(k)
            .map_or("-".to_owned(), |off| format!("{off:.3}"))
    };
    println!(
        "| {name} | {} | {} | {} | {} | {} |",
        seen.len(),
        errors.len(),
        at(0.5),
        at(0.95),
        at(1.0)
    );
}

fn decoy_kinds(first: u64, count: usize) {
    let mut kinds: BTreeMap<&str, (usize, usize, usize)> = BTreeMap::new();
    for decoy in (first..).flat_map(decoys).take(count) {
        let answer = photo::survey(&render(&decoy.scene).jpeg, None);
        let code = answer
            .as_ref()
            .map_or_else(|r| r.code.as_str(), |_| "accepted");
        let (shown, accepted, otherwise) = kinds.entry(decoy.name).or_default();
        *shown += 1;
        if answer.is_ok() {
            *accepted += 1;
        } else if !decoy.right.contains(&code) {
            *otherwise += 1;
        }
        if !decoy.right.contains(&code) {
            eprintln!("{}, seed {}: {code}", decoy.name, decoy.scene.seed);
        }
    }
    println!("| what is no chart to use | photos | accepted | refused for another reason |");
    println!("|---|---|---|---|");
    for (name, (shown, accepted, otherwise)) in &kinds {
        println!("| {name} | {shown} | {accepted} | {otherwise} |");
    }
    let sum = |part: fn(&(usize, usize, usize)) -> usize| kinds.values().map(part).sum::<usize>();
    println!(
        "| all | {} | {} | {} |",
        sum(|k| k.0),
        sum(|k| k.1),
        sum(|k| k.2)
    );
}
