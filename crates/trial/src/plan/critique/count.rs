//! Too few of something: pieces, keepers, a look at the start.

use super::{Finding, FindingCode};
use crate::plan::{Mend, Plan, PlannedArm, check::list};

/// Pieces that a mend proposes for an arm with one.
const MENDED_PIECES: usize = 4;

pub(super) fn few_pieces(plan: &Plan) -> Option<Finding> {
    let alone = named(plan, |arm| arm.pieces < 2)?;
    let (has, arms) = alone.say("has one test piece", "have one test piece each");
    Some(Finding {
        code: FindingCode::OnePiece,
        sentence: format!("{arms} {has}, so nothing shows how much equal pieces differ."),
        consequence: "The verdict will be \"not enough evidence\", however large the difference \
                      looks: it may be this one piece."
            .to_owned(),
        mends: alone
            .names
            .iter()
            .map(|arm| Mend::AddPieces {
                arm: arm.clone(),
                to: MENDED_PIECES,
            })
            .collect(),
        arms: alone.names,
    })
}

pub(super) fn no_keepers(plan: &Plan) -> Option<Finding> {
    let without = named(plan, |arm| arm.keepers == 0)?;
    let (has, arms) = without.say("has no keeper", "have no keeper");
    Some(Finding {
        code: FindingCode::KeeperMissing,
        sentence: format!(
            "{arms} {has}: no piece is kept unwashed in the dark to lie beside the washed ones on \
             every photo."
        ),
        consequence: "What the light and the camera change from one photo to the next counts as \
                      change of the cloth, so intervals get several times as wide."
            .to_owned(),
        mends: without
            .names
            .iter()
            .map(|arm| Mend::AddKeeper { arm: arm.clone() })
            .collect(),
        arms: without.names,
    })
}

pub(super) fn no_start(plan: &Plan) -> Option<Finding> {
    if plan.looked_at().first() == Some(&0) {
        return None;
    }
    Some(Finding {
        code: FindingCode::StartMissing,
        sentence: "No piece is looked at before its first round.".to_owned(),
        consequence: "How far a piece has changed can then only be told from its keeper, not from \
                      its own start; what differed from the beginning looks like fading."
            .to_owned(),
        arms: Vec::new(),
        mends: vec![Mend::AddStart],
    })
}

/// Arms of which something holds.
struct Named {
    names: Vec<String>,
    all: bool,
}

fn named(plan: &Plan, holds: impl Fn(&PlannedArm) -> bool) -> Option<Named> {
    let names: Vec<String> = plan
        .arms
        .iter()
        .filter(|arm| holds(arm))
        .map(|arm| arm.name.clone())
        .collect();
    let all = names.len() == plan.arms.len();
    (!names.is_empty()).then_some(Named { names, all })
}

impl Named {
    /// The verb for one arm or several, and the arms as the sentence's subject.
    fn say<'a>(&self, one: &'a str, several: &'a str) -> (&'a str, String) {
        let verb = if self.names.len() == 1 { one } else { several };
        let subject = if self.all {
            "All arms".to_owned()
        } else {
            list(self.names.iter().map(String::as_str))
        };
        (verb, subject)
    }
}
