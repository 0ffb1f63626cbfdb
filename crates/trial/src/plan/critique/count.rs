//! Too few of something: pieces, keepers, a look at the start.

use super::{Finding, FindingCode};
use crate::plan::{Mend, Plan, PlannedArm, check::list};
use crate::text;

/// Pieces that a mend proposes for an arm with one.
const MENDED_PIECES: usize = 4;

pub(super) fn few_pieces(plan: &Plan) -> Option<Finding> {
    let alone = named(plan, |arm| arm.pieces < 2)?;
    let (has, arms) = alone.say(
        text::plan::has_one_test_piece(),
        text::plan::have_one_test_piece(),
    );
    Some(Finding {
        code: FindingCode::OnePiece,
        sentence: text::plan::so_nothing_shows_how_much_equal_pieces(&arms, has),
        consequence: text::plan::the_verdict_will_be_not_enough_evidence().to_owned(),
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
    let (has, arms) = without.say(text::plan::has_no_keeper(), text::plan::have_no_keeper());
    Some(Finding {
        code: FindingCode::KeeperMissing,
        sentence: text::plan::no_piece_is_kept_unwashed(&arms, has),
        consequence: text::plan::what_the_light_and_the_camera_change().to_owned(),
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
        sentence: text::plan::no_piece_is_looked_at_before().to_owned(),
        consequence: text::plan::how_far_a_piece_has_changed().to_owned(),
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
            text::plan::all_arms().to_owned()
        } else {
            list(self.names.iter().map(String::as_str))
        };
        (verb, subject)
    }
}
