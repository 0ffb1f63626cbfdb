//! Where an arm departs from a product's own instruction, and by what factor.

use super::{Finding, FindingCode, Instruction, Mend, Plan, Step, check::list};
use crate::text;
use dyeing::{Amount, Celsius, Kitchen};
use serde::Serialize;

/// A dose or a time that is off by less than this share follows the instruction.
const CLOSE_SHARE: f64 = 0.05;
/// A temperature that is off by less follows the instruction, kelvins.
const CLOSE_K: f64 = 5.0;

/// How a step uses a product other than its instruction says.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct DoseDeparture {
    /// The step's place in the plan, from 0.
    pub step: usize,
    /// The product.
    pub agent: String,
    /// The arms, by name; empty: all.
    pub arms: Vec<String>,
    /// The dose (amount for the water) over the instruction's; none if either isn't
    /// given or they can't be compared, as a weight and a volume can't.
    pub dose_factor: Option<f64>,
    /// The time over the instruction's.
    pub time_factor: Option<f64>,
    /// The temperature less the instruction's, kelvins.
    pub warmer_k: Option<f64>,
    /// Whether the trial asks about it.
    pub on_purpose: bool,
}

/// Every step that departs from the instruction of its product.
pub fn departures(plan: &Plan) -> Vec<DoseDeparture> {
    let steps = plan.steps.iter().enumerate();
    steps
        .filter_map(|(place, step)| {
            let mut said = plan.instructions.iter();
            let said = said.find(|said| said.agent == step.agent)?;
            let departure = DoseDeparture {
                step: place,
                agent: step.agent.clone(),
                arms: step.arms.clone(),
                dose_factor: dose_factor(step, said),
                time_factor: ratio(step.minutes, said.minutes),
                warmer_k: step
                    .temperature_c
                    .zip(said.temperature_c)
                    .map(|(own, said)| own - said),
                on_purpose: step.on_purpose,
            };
            (!departure.words().is_empty()).then_some(departure)
        })
        .collect()
}

/// A temperature in words, on the locale's scale where a bath can have it.
pub(super) fn heat(celsius: f64) -> String {
    Celsius::new(celsius).map_or_else(|_| format!("{celsius} \u{b0}C"), Celsius::shown)
}

/// Reads an amount as people write it, such as `2 tbsp`; US measures, metric ones.
///
/// # Errors
/// A sentence that points at the character at fault.
pub(super) fn amount(text: &str) -> Result<Amount, String> {
    Amount::read(text, Kitchen::Us).map_err(|error| error.to_string())
}

fn dose_factor(step: &Step, said: &Instruction) -> Option<f64> {
    let ratio = |own: &str, said: &str| amount(own).ok()?.over(amount(said).ok()?);
    let factor = ratio(&step.amount, &said.amount)? / ratio(&step.water, &said.water)?;
    (factor.is_finite() && factor > 0.0).then_some(factor)
}

fn ratio(own: Option<f64>, said: Option<f64>) -> Option<f64> {
    own.zip(said).map(|(own, said)| own / said)
}

impl DoseDeparture {
    /// What departs, such as `1.5 times the dose`.
    fn words(&self) -> Vec<String> {
        let off = |factor: &f64| (factor - 1.0).abs() > CLOSE_SHARE;
        let mut words = Vec::new();
        if let Some(factor) = self.dose_factor.filter(off) {
            words.push(text::plan::times_the_dose(short(factor)));
        }
        if let Some(factor) = self.time_factor.filter(off) {
            words.push(text::plan::times_as_long(short(factor)));
        }
        if let Some(kelvins) = self.warmer_k.filter(|k| k.abs() >= CLOSE_K) {
            let way = if kelvins > 0.0 {
                text::plan::warmer()
            } else {
                text::plan::cooler()
            };
            words.push(format!(
                "{} {way}",
                Celsius::difference_shown(kelvins.abs())
            ));
        }
        words
    }

    /// The departure as a sentence.
    pub fn sentence(&self) -> String {
        let arms = if self.arms.is_empty() {
            text::plan::all_arms().to_owned()
        } else {
            list(self.arms.iter().map(String::as_str))
        };
        let verb = if self.arms.len() == 1 {
            text::plan::uses()
        } else {
            text::plan::use_what()
        };
        text::plan::other_than_its_instruction_says(
            &arms,
            verb,
            &self.agent,
            self.words().join(", "),
        )
    }

    /// The finding, unless the trial asks about the departure.
    pub(super) fn finding(&self) -> Option<Finding> {
        if self.on_purpose {
            return None;
        }
        Some(Finding {
            code: FindingCode::DoseDeparture,
            sentence: self.sentence(),
            consequence: text::plan::the_verdict_holds_for_this_use_only().to_owned(),
            arms: self.arms.clone(),
            mends: vec![
                Mend::FollowInstruction { step: self.step },
                Mend::OnPurpose { step: self.step },
            ],
        })
    }
}

/// Two digits behind the point at most.
fn short(value: f64) -> String {
    let text = format!("{value:.2}");
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}
