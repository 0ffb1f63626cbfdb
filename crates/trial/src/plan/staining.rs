//! Whether the arms of a plan can be compared by what they stain.

use super::{
    Kind, Plan, Sharing, Step, StepKind,
    check::{joined, list},
};
use crate::text;
use serde::Serialize;
use std::collections::{BTreeMap, BTreeSet};

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
        /// Those that several steps name, and that therefore are one load of all of them.
        of_several_steps: Vec<String>,
    },
    /// Nothing of chance: these arms have fewer than two witness cloths of a kind from
    /// one of their washes.
    Few {
        /// The arms, by name.
        arms: Vec<String>,
        /// The cloths of which they have too few.
        cloths: Vec<Cloth>,
    },
    /// Which arm stains more: each has its own witness cloths.
    Told {
        /// How many the arm with the fewest has, of each cloth from each of its washes.
        witnesses: usize,
    },
}

/// A kind of witness cloth of one of the washes of a round.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize)]
pub struct Cloth {
    /// The cloth, such as `multifibre`.
    pub cloth: String,
    /// Which of an arm's washes, from 0.
    pub wash: usize,
}

/// What can be told of staining, and the washes that keep more from being told.
pub(super) struct Found {
    pub(super) staining: Staining,
    /// Which of an arm's washes, from 0; empty where staining can be told.
    pub(super) at_fault: BTreeSet<usize>,
}

impl Plan {
    /// What the plan's witness cloths can tell of staining. A cloth that was wet with
    /// pieces of several arms can't tell which of them stained it, and cloths of
    /// different kinds or washes say nothing of each other's chance.
    pub fn staining_told(&self) -> Staining {
        self.staining_with(&Sharing::of(self)).staining
    }

    pub(super) fn staining_with(&self, sharing: &Sharing) -> Found {
        let washed = washed_in(sharing);
        let mut shared: BTreeMap<&str, BTreeSet<usize>> = BTreeMap::new();
        let mut own: Vec<BTreeMap<Cloth, usize>> = Vec::new();
        for (place, arm) in self.arms.iter().enumerate() {
            let mut cloths = BTreeMap::new();
            for (wash, step) in self.washes_of(&arm.name) {
                let mut alone = if step.loads.is_empty() { arm.pieces } else { 0 };
                for load in step.loads.iter().filter(|_| !step.witnesses.is_empty()) {
                    match washed.get(load.as_str()) {
                        Some(arms) if arms.len() > 1 => {
                            shared.entry(load).or_default().insert(wash);
                        }
                        Some(arms) if arms.contains(&place) => alone += 1,
                        _ => {}
                    }
                }
                for cloth in step.witnesses.iter().cloned() {
                    cloths.insert(Cloth { cloth, wash }, alone);
                }
            }
            own.push(cloths);
        }
        if !shared.is_empty() {
            return Found {
                at_fault: shared.values().flatten().copied().collect(),
                staining: self.shared(shared.into_keys()),
            };
        }
        self.by_the_fewest(&own)
    }

    fn shared<'a>(&self, loads: impl Iterator<Item = &'a str>) -> Staining {
        let loads: Vec<String> = loads.map(str::to_owned).collect();
        let naming = |load: &String| {
            let washes = self.steps.iter().filter(|step| step.kind == StepKind::Wash);
            washes.filter(|step| step.loads.contains(load)).count()
        };
        Staining::Shared {
            of_several_steps: loads
                .iter()
                .filter(|load| naming(load) > 1)
                .cloned()
                .collect(),
            loads,
        }
    }

    /// What can be told by the cloths that each arm has to itself.
    fn by_the_fewest(&self, own: &[BTreeMap<Cloth, usize>]) -> Found {
        let all: BTreeSet<&Cloth> = own.iter().flat_map(BTreeMap::keys).collect();
        let of = |arm: &BTreeMap<Cloth, usize>, cloth: &Cloth| arm.get(cloth).copied().unwrap_or(0);
        let few = |cloth: &&&Cloth| own.iter().any(|arm| of(arm, cloth) < LEAST_WITNESSES);
        let cloths: Vec<Cloth> = all
            .iter()
            .filter(few)
            .map(|cloth| (*cloth).clone())
            .collect();
        let of_few = |arm: &&BTreeMap<Cloth, usize>| {
            cloths.iter().any(|cloth| of(arm, cloth) < LEAST_WITNESSES)
        };
        let each = all
            .iter()
            .flat_map(|cloth| own.iter().map(|arm| of(arm, cloth)));
        Found {
            at_fault: cloths.iter().map(|cloth| cloth.wash).collect(),
            staining: match each.min() {
                None => Staining::NoWitness,
                Some(witnesses) if cloths.is_empty() => Staining::Told { witnesses },
                Some(_) => {
                    let arms = self.arms.iter().zip(own);
                    let arms = arms.filter(|(_, own)| of_few(own));
                    Staining::Few {
                        arms: arms.map(|(arm, _)| arm.name.clone()).collect(),
                        cloths,
                    }
                }
            },
        }
    }

    /// The washes of an arm, each with its number among them from 0.
    pub(super) fn washes_of<'a>(
        &'a self,
        arm: &'a str,
    ) -> impl Iterator<Item = (usize, &'a Step)> + 'a {
        let washes = self.steps.iter().filter(|step| step.kind == StepKind::Wash);
        washes.filter(move |step| step.is_of(arm)).enumerate()
    }
}

/// The arms of which test pieces are washed in each load. Loads of one name are one load,
/// whichever steps name them.
fn washed_in(sharing: &Sharing) -> BTreeMap<&str, BTreeSet<usize>> {
    let mut washed: BTreeMap<&str, BTreeSet<usize>> = BTreeMap::new();
    let washes = sharing
        .columns
        .iter()
        .filter(|column| matches!(column.kind, Kind::Load(StepKind::Wash, _)));
    for column in washes {
        for piece in sharing.test_pieces() {
            if let Some(load) = column.name_of(piece) {
                let arm = sharing.pieces[piece].arm;
                washed.entry(load).or_default().insert(arm);
            }
        }
    }
    washed
}

impl Cloth {
    /// The cloth in words, with its wash where there are several.
    fn words(&self, several: bool) -> String {
        match several {
            false => format!("\"{}\"", self.cloth),
            true => text::plan::cloth_of_wash(&self.cloth, self.wash + 1),
        }
    }
}

impl Staining {
    /// What can be told, as a sentence; `asked`: whether it is what the trial asks.
    pub fn sentence(&self, asked: bool) -> String {
        match self {
            Self::NoWitness => text::plan::no_wash_has_a_witness_cloth().to_owned(),
            Self::Shared {
                loads,
                of_several_steps,
            } => {
                let loads = list(loads.iter().map(String::as_str));
                let mut told = text::plan::witness_cloths_lie_with_pieces_of_several(&loads);
                if !of_several_steps.is_empty() {
                    let loads = list(of_several_steps.iter().map(String::as_str));
                    told = text::plan::loads_of_one_name_are_one_load(&told, loads);
                }
                match asked {
                    true => told,
                    false => text::plan::ask_for_staining_to_compare(&told),
                }
            }
            Self::Few { arms, cloths } => {
                let several = cloths.iter().any(|cloth| cloth.wash > 0);
                let cloths = cloths.iter().map(|cloth| cloth.words(several));
                text::plan::fewer_than_two_witness_cloths(
                    list(arms.iter().map(String::as_str)),
                    joined(&cloths.collect::<Vec<_>>()),
                )
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
        let of_several_steps = Vec::new();
        assert_eq!(
            plan.staining_told(),
            Staining::Shared {
                loads,
                of_several_steps
            }
        );
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
        let cloths = ["multifibre", "plain"].map(|cloth| Cloth {
            cloth: cloth.into(),
            wash: 0,
        });
        let cloths = cloths.to_vec();
        assert_eq!(plan.staining_told(), Staining::Few { arms, cloths });
        for arm in ["agent F", "plain soak"] {
            own(&mut plan, arm, |step| step.witnesses.clear());
        }
        assert_eq!(plan.staining_told(), Staining::NoWitness);
    }
}
