//! Whether the arms of a plan can be compared by what they stain.

use super::{Kind, Plan, Sharing, Step, StepKind, check::list};
use crate::text;
use serde::Serialize;
use std::collections::BTreeSet;

/// Witness cloths of an arm below which chance can't be told from the arm.
pub(super) const LEAST_WITNESSES: usize = 2;

/// What a plan's witness cloths can tell of staining.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case", tag = "staining")]
pub enum Staining {
    /// Nothing: no wash has a witness cloth.
    NoWitness,
    /// That dye came off, not whose: these loads hold witness cloths and pieces of
    /// several arms.
    Shared {
        /// The loads, by name.
        loads: Vec<String>,
    },
    /// Nothing of chance: these arms have fewer than two witness cloths.
    Few {
        /// The arms, by name.
        arms: Vec<String>,
    },
    /// Which arm stains more: each has its own witness cloths.
    Told {
        /// How many the arm with the fewest has, of each cloth.
        witnesses: usize,
    },
}

impl Plan {
    /// What the plan's witness cloths can tell of staining. A cloth that was wet with
    /// pieces of several arms can't tell which of them stained it.
    pub fn staining_told(&self) -> Staining {
        self.staining_with(&Sharing::of(self))
    }

    pub(super) fn staining_with(&self, sharing: &Sharing) -> Staining {
        if !self.witnessed_washes().any(|_| true) {
            return Staining::NoWitness;
        }
        let mut shared: BTreeSet<&str> = BTreeSet::new();
        let mut few: Vec<String> = Vec::new();
        let mut fewest = usize::MAX;
        for (place, arm) in self.arms.iter().enumerate() {
            let mut own = 0;
            for step in self.witnessed_washes().filter(|step| step.is_of(&arm.name)) {
                if step.loads.is_empty() {
                    own += arm.pieces;
                }
                for load in &step.loads {
                    let arms = washed_in(sharing, load);
                    if arms.len() > 1 {
                        shared.insert(load);
                    } else if arms.contains(&place) {
                        own += 1;
                    }
                }
            }
            fewest = fewest.min(own);
            if own < LEAST_WITNESSES {
                few.push(arm.name.clone());
            }
        }
        if !shared.is_empty() {
            let loads = shared.into_iter().map(str::to_owned).collect();
            return Staining::Shared { loads };
        }
        if !few.is_empty() {
            return Staining::Few { arms: few };
        }
        Staining::Told { witnesses: fewest }
    }

    fn witnessed_washes(&self) -> impl Iterator<Item = &Step> {
        let washes = self.steps.iter().filter(|step| step.kind == StepKind::Wash);
        washes.filter(|step| !step.witnesses.is_empty())
    }
}

/// The arms of which test pieces are washed in a load.
fn washed_in(sharing: &Sharing, load: &str) -> BTreeSet<usize> {
    let washes = sharing
        .columns
        .iter()
        .filter(|column| matches!(column.kind, Kind::Load(StepKind::Wash, _)));
    washes
        .flat_map(|column| {
            let here = move |piece: &usize| column.name_of(*piece) == Some(load);
            sharing.test_pieces().filter(here)
        })
        .map(|piece| sharing.pieces[piece].arm)
        .collect()
}

impl Staining {
    /// What can be told, as a sentence; `asked`: whether it is what the trial asks.
    pub fn sentence(&self, asked: bool) -> String {
        match self {
            Self::NoWitness => text::plan::no_wash_has_a_witness_cloth().to_owned(),
            Self::Shared { loads } => {
                let loads = list(loads.iter().map(String::as_str));
                let told = text::plan::witness_cloths_lie_with_pieces_of_several(&loads);
                match asked {
                    true => told,
                    false => text::plan::ask_for_staining_to_compare(&told),
                }
            }
            Self::Few { arms } => {
                text::plan::fewer_than_two_witness_cloths(list(arms.iter().map(String::as_str)))
            }
            Self::Told { witnesses } => text::plan::staining_can_be_compared(witnesses),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::Mend;

    fn two_arms() -> Plan {
        Plan::from_toml(include_str!("../../../../docs/plans/two-arms.toml")).unwrap()
    }

    #[test]
    fn a_cloth_that_was_washed_with_both_arms_tells_of_neither() {
        let plan = two_arms();
        let loads = vec!["wash 1".to_owned(), "wash 2".to_owned()];
        assert_eq!(plan.staining_told(), Staining::Shared { loads });
        let wash = Kind::Load(StepKind::Wash, 0);
        let apart = Mend::AddLoads { kind: wash }.apply(&plan);
        assert_eq!(apart.staining_told(), Staining::Told { witnesses: 2 });
        let jars = Mend::EachByItself { kind: wash }.apply(&plan);
        assert_eq!(jars.staining_told(), Staining::Told { witnesses: 6 });
    }

    #[test]
    fn one_cloth_or_none_tells_nothing() {
        let wash = Kind::Load(StepKind::Wash, 0);
        let mut plan = Mend::AddLoads { kind: wash }.apply(&two_arms());
        let own = |plan: &mut Plan, arm: &str, change: fn(&mut Step)| {
            let washes = plan.steps.iter_mut();
            washes
                .filter(|step| step.kind == StepKind::Wash && step.is_of(arm))
                .for_each(change);
        };
        own(&mut plan, "agent F", |step| step.loads.truncate(1));
        let arms = vec!["agent F".to_owned()];
        assert_eq!(plan.staining_told(), Staining::Few { arms });
        for arm in ["agent F", "plain soak"] {
            own(&mut plan, arm, |step| step.witnesses.clear());
        }
        assert_eq!(plan.staining_told(), Staining::NoWitness);
    }
}
