//! What planning costs on one core: `cargo bench -p trial --bench plan`.

use std::time::Instant;
use trial::plan::{Plan, RUNS, critique};

fn plan() -> Plan {
    let mut text = String::from(
        "question = \"Which agent keeps the colour?\"\nasks = \"which_is_best\"\nmargin = 1.7\n\
         rounds = 10\nstages = [0, 1, 2, 5, 8, 10]\n",
    );
    for name in ["water", "agent F", "agent G", "agent H"] {
        text.push_str(&format!(
            "[[arms]]\nname = \"{name}\"\npieces = 12\nkeepers = 2\n"
        ));
    }
    text.push_str(
        "[[steps]]\nkind = \"wash\"\nloads = [\"wash 1\", \"wash 2\", \"wash 3\", \"wash 4\"]\n\
         witnesses = [\"multifibre\"]\n",
    );
    Plan::from_toml(&text).expect("the plan is sound")
}

fn main() {
    let plan = plan();
    let begun = Instant::now();
    let promise = plan.promise(RUNS).expect("the plan is small enough");
    let promised = begun.elapsed();
    let findings = critique(&plan);
    let order = plan.order();
    let all = begun.elapsed();
    println!(
        "4 arms x 12 pieces x 6 stages: {} comparisons by {RUNS} trials each in {:.2} s; with critique ({} \
         findings) and order ({} pieces) {:.2} s",
        promise.comparisons.len(),
        promised.as_secs_f64(),
        findings.len(),
        order.pieces.len(),
        all.as_secs_f64()
    );
}
