//! What planning costs: `cargo bench -p trial --bench plan`.
//!
//! Plans of several kinds and sizes, the least of a few times by the clock, with a sum of the figures so that
//! two states of the program can be seen to promise the same.

mod kinds;

use kinds::plans;
use std::time::Instant;
use trial::plan::{RUNS, critique};

const TIMES: usize = 5;

fn main() {
    for (name, plan) in plans() {
        let mut least_ms = f64::MAX;
        let mut sum = 0.0;
        for _ in 0..TIMES {
            let begun = Instant::now();
            let promise = plan.promise(RUNS).expect("the plan is small enough");
            least_ms = least_ms.min(1e3 * begun.elapsed().as_secs_f64());
            let of_pairs = promise.comparisons.iter().enumerate().map(|(at, of)| {
                (at + 1) as f64
                    * (of.shows_margin
                        + 2.0 * of.shows_margin_together
                        + 3.0 * of.shows_grade_4
                        + 4.0 * of.shows_alike
                        + 5.0 * of.errs)
            });
            let by_pieces = promise.by_pieces.iter().map(|by| by.shows_margin);
            sum = of_pairs.sum::<f64>() + by_pieces.sum::<f64>();
        }
        let begun = Instant::now();
        let (findings, order) = (critique(&plan).len(), plan.order().pieces.len());
        let looked_ms = 1e3 * begun.elapsed().as_secs_f64();
        println!(
            "{name}: promise {least_ms:.1} ms (figures sum up to {sum:.4}), critique and order {looked_ms:.1} ms \
             ({findings} findings, {order} pieces)"
        );
    }
}
