//! Prints how often the chart is found in rendered photos, how near its corners
//! are, and what is wrongly taken for a chart: `find_rate [PHOTOS] [FIRST_SEED]`.

#[path = "../tests/chart_scenes/mod.rs"]
mod chart_scenes;

use chart_scenes::{corner_error, decoys, wild};
use scene::render;

fn main() {
    let mut arguments = std::env::args()
        .skip(1)
        .filter_map(|a| a.parse::<u64>().ok());
    let photos = arguments.next().unwrap_or(30);
    let first = arguments.next().unwrap_or(0);
    let (mut errors, mut missed, mut refused) = (Vec::new(), 0, 0);
    for seed in first..first + photos {
        let scene = wild(seed, 4000);
        let rendered = render(&scene);
        let size = format!("{} x {}", scene.width_px, scene.height_px);
        match photo::survey(&rendered.jpeg, None) {
            Ok(survey) => {
                let (px, pitches) = corner_error(&survey.corners, &rendered.truth.chart_corners);
                errors.push((pitches, px));
                if pitches > 0.06 {
                    println!("seed {seed}, {size}: corner off by {px:.1} px, {pitches:.3} pitches");
                }
            }
            Err(why) => {
                let code = why.code.as_str();
                let not_found = ["chart_missing", "chart_cut_off", "mirrored", "two_charts"];
                let count = if not_found.contains(&code) {
                    &mut missed
                } else {
                    &mut refused
                };
                *count += 1;
                println!("seed {seed}, {size}: {code}");
            }
        }
    }
    errors.sort_by(|a, b| a.0.total_cmp(&b.0));
    let at = |share: f64| {
        let k = (share * (errors.len() as f64 - 1.0)).max(0.0) as usize;
        errors.get(k).map_or(f64::NAN, |e| e.0)
    };
    println!(
        "{photos} photos: {missed} charts missed, {refused} refused for other reasons; worst corner, pitches: median {:.3}, 95 % {:.3}, most {:.3}",
        at(0.5),
        at(0.95),
        at(1.0)
    );
    let (mut wrong, mut shown) = (0, 0);
    for seed in first..first + photos / 3 {
        for decoy in decoys(seed) {
            shown += 1;
            let answer = photo::survey(&render(&decoy.scene).jpeg, None);
            let code = answer
                .as_ref()
                .map_or_else(|r| r.code.as_str(), |_| "accepted");
            if !decoy.right.contains(&code) {
                wrong += 1;
                println!("{}, seed {seed}: {code}", decoy.name);
            }
        }
    }
    println!("{shown} decoys: {wrong} answered wrongly");
}
