//! What a plan can't answer, found before a drop of dye is used.

mod alias;
mod carry;
mod count;
mod finding;
mod order;
mod soak;
mod witness;

pub(super) use carry::may_share;
pub use carry::{Carried, carried};
pub use finding::{Finding, FindingCode};

use super::{Plan, Sharing};

/// Everything that would limit the verdict of the plan's trial, the worst first.
///
/// The plan is taken as checked; findings come in a set order and each once. A
/// plan with findings can be run all the same: they become limits of its verdict.
pub fn critique(plan: &Plan) -> Vec<Finding> {
    let sharing = Sharing::of(plan);
    let mut found = Vec::new();
    found.extend(count::few_pieces(plan));
    found.extend(count::no_keepers(plan));
    found.extend(count::no_start(plan));
    found.extend(soak::missing(plan));
    found.extend(alias::aliased(plan, &sharing));
    found.extend(order::of_use(plan, &sharing));
    found.extend(carry::onto_others(plan, &sharing));
    found.extend(witness::missing(plan));
    found.extend(witness::untold(plan, &sharing));
    let departures = super::dose::departures(plan);
    found.extend(
        departures
            .iter()
            .filter_map(|departure| departure.finding()),
    );
    found
}
