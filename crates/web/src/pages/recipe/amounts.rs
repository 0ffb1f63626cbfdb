//! What a plan's amounts, checks and cautions look like on a page.

use crate::text;
use dyeing::{
    Plan,
    caution::Caution,
    check::{Check, Level},
    plan::Line,
    run_sheet::Step,
};
use locale::Measures;

/// One thing that goes into a bath.
pub(crate) struct AmountRow {
    pub(crate) name: String,
    pub(crate) take: String,
    pub(crate) kitchen: String,
    pub(crate) off: String,
    pub(crate) each: String,
    pub(crate) rule: String,
    pub(crate) note: String,
}

/// Something that is wrong or unusual.
pub(crate) struct CheckCard {
    pub(crate) level: &'static str,
    /// Whether it is merely to be known.
    pub(crate) is_mild: bool,
    pub(crate) sentence: String,
}

impl AmountRow {
    pub(crate) fn of(line: &Line) -> Self {
        let take = match &line.pounds {
            Some(pounds) if locale::current().measures == Measures::Metric => {
                format!("{} ({pounds})", line.metric)
            }
            _ => line.shown(),
        };
        Self {
            name: line.name.clone(),
            take,
            kitchen: line.kitchen.clone().unwrap_or_default(),
            off: line.off.clone().unwrap_or_default(),
            each: line.each_bath.clone().unwrap_or_default(),
            rule: line.rule.clone(),
            note: line.note.clone().unwrap_or_default(),
        }
    }

    /// Everything in the dye bath, the water that fills it up last.
    pub(crate) fn all(plan: &Plan) -> Vec<Self> {
        plan.lines.iter().map(Self::of).collect()
    }
}

impl CheckCard {
    pub(crate) fn all(checks: &[Check]) -> Vec<Self> {
        checks
            .iter()
            .map(|check| Self {
                level: match check.level {
                    Level::Wrong => text::recipe::wrong(),
                    Level::Doubtful => text::recipe::look_again(),
                    Level::Note => text::recipe::to_know(),
                },
                is_mild: check.level == Level::Note,
                sentence: check.sentence.clone(),
            })
            .collect()
    }
}

/// A step with its cautions.
pub(crate) struct StepRow<'a> {
    pub(crate) step: &'a Step,
    /// In full where they come first, by name after that: a sentence that is said again and again
    /// is read no more.
    pub(crate) beware: Vec<(bool, &'static str)>,
}

impl<'a> StepRow<'a> {
    pub(crate) fn all(plan: &'a Plan) -> Vec<Self> {
        let mut said = Vec::new();
        let mut rows = Vec::new();
        for step in &plan.steps {
            let mut beware = Vec::new();
            for hazard in step.cautions.iter().map(|caution| caution.hazard) {
                if said.contains(&hazard) {
                    beware.push((false, hazard.name()));
                } else {
                    said.push(hazard);
                    beware.push((true, hazard.sentence()));
                }
            }
            rows.push(Self { step, beware });
        }
        rows
    }
}

/// Cautions in words, with what makes each needed.
pub(crate) fn cautions(all: &[Caution]) -> Vec<String> {
    all.iter()
        .map(|caution| match caution.because.as_slice() {
            [] => caution.sentence.clone(),
            because => text::recipe::here(&caution.sentence, because.join(", ")),
        })
        .collect()
}
