//! What a plan promises is what the verdict then says of its trials. More trials and
//! plans are tried by the example `promise_and_verdict`.

#[path = "support/planned.rs"]
mod planned;

use planned::{PLANS, judged};
use trial::plan::{Plan, RUNS};

const TRIALS: usize = 800;

/// Three points, and what chance does to a share of so many trials.
const NEAR: f64 = 0.03 + 0.035;

#[test]
fn the_verdict_keeps_what_the_plan_promised() {
    for (name, text) in [PLANS[0], PLANS[3]] {
        let plan = Plan::from_toml(text).unwrap();
        let promise = plan.promise(RUNS).unwrap();
        let promised = &promise.comparisons[0];
        let margin = judged(&plan, &promise.comparisons, promise.margin_de00, TRIALS)[0].1;
        let null = judged(&plan, &promise.comparisons, 0.0, TRIALS)[0].1;
        let shown = margin.share(margin.shown);
        let alike = null.share(null.alike);
        let errs = null.share(null.shown);
        assert!(
            (shown - promised.shows_margin).abs() < NEAR,
            "{name}: {shown} {promised:?}"
        );
        assert!(
            (alike - promised.shows_alike).abs() < NEAR,
            "{name}: {alike} {promised:?}"
        );
        assert!((0.01..=0.07).contains(&errs), "{name}: {errs}");
        // At the margin's edge a difference is seldom called greater than it.
        assert!(margin.share(margin.visible) < 0.05, "{name}: {margin:?}");
    }
}
