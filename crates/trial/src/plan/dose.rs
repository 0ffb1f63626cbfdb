//! Where an arm departs from a product's own instruction, and by what factor.

use super::{Finding, FindingCode, Instruction, Mend, Plan, Step, check::list};
use serde::Serialize;

/// A dose or a time that is off by less than this share follows the instruction.
const CLOSE_SHARE: f64 = 0.1;
/// A temperature that is off by less follows the instruction, kelvins.
const CLOSE_K: f64 = 5.0;

/// How a step uses a product other than its instruction says.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct DoseDeparture {
    /// The step's place in the plan, from 0.
    pub step: usize,
    /// The product.
    pub agent: String,
    /// The arms, by name.
    pub arms: Vec<String>,
    /// The dose over the instruction's; none if either isn't given or they can't be
    /// compared (a weight against a volume).
    pub dose_factor: Option<f64>,
    /// The time over the instruction's.
    pub time_factor: Option<f64>,
    /// The temperature less the instruction's, kelvins.
    pub warmer_k: Option<f64>,
    /// Whether the trial asks about it.
    pub on_purpose: bool,
}

/// Every step that departs from the instruction of its product.
///
/// Amounts that can't be read count as not given; [`Plan::check`] names them.
pub fn departures(plan: &Plan) -> Vec<DoseDeparture> {
    let steps = plan.steps.iter().enumerate();
    steps
        .filter_map(|(place, step)| {
            let said = plan
                .instructions
                .iter()
                .find(|said| said.agent == step.agent)?;
            departure(plan, place, step, said)
        })
        .collect()
}
