//! What plans promise beside what the verdict then says, over trials drawn at random.
//!
//! `cargo run --release -p trial --example promise_and_verdict [TRIALS]`

#[path = "../tests/support/planned.rs"]
mod planned;

use trial::plan::{Plan, RUNS};

fn main() {
    let trials = std::env::args()
        .nth(1)
        .and_then(|text| text.parse().ok())
        .unwrap_or(2000);
    println!(
        "| plan | arms | promised: the margin is shown | it was | promised: shown alike | they were | a difference shown where there is none |"
    );
    println!("|---|---|---|---|---|---|---|");
    for (name, text) in planned::PLANS {
        let plan = Plan::from_toml(text).expect("the plan is sound");
        let promise = plan.promise(RUNS).expect("the plan can be tried");
        let nulls = planned::judged(&plan, &promise.comparisons, 0.0, trials);
        let margins = planned::judged(&plan, &promise.comparisons, promise.margin_de00, trials);
        for (pair, said) in margins {
            let null = nulls
                .iter()
                .find(|(other, _)| *other == pair)
                .expect("the same pairs")
                .1;
            let percent = |share: f64| format!("{:.1}", 100.0 * share);
            println!(
                "| {name} | {} and {} | {} | {} | {} | {} | {} |",
                pair.first,
                pair.second,
                percent(pair.shows_margin),
                percent(said.share(said.shown)),
                percent(pair.shows_alike),
                percent(null.share(null.alike)),
                percent(null.share(null.shown)),
            );
        }
    }
}
