//! What has to lie ready before the first piece is wet.

use super::{Kind, Order, Plan, Step};
use serde::Serialize;

/// All that a plan's trial needs.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Packing {
    /// Pieces of each arm, in the order of the plan.
    pub arms: Vec<PackedArm>,
    /// Witness cloths, by kind of cloth.
    pub cloths: Vec<PackedCloth>,
    /// The steps with their baths, in the order of the plan.
    pub baths: Vec<PackedBath>,
    /// The windows of each board to print.
    pub boards: Vec<usize>,
}

/// Pieces of an arm.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct PackedArm {
    /// The arm's name.
    pub name: String,
    /// Codes of its test pieces.
    pub tests: Vec<String>,
    /// Codes of its keepers.
    pub keepers: Vec<String>,
}

/// Witness cloths of one kind.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct PackedCloth {
    /// The cloth, such as `multifibre`.
    pub cloth: String,
    /// How many, one for each load that holds it, or for each piece that is by itself.
    pub count: usize,
}

/// The baths of one step.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct PackedBath {
    /// The step, such as `after-treatment`.
    pub what: &'static str,
    /// The arms, by name; empty: all.
    pub arms: Vec<String>,
    /// Names of its loads in the turn in which they are run; empty where each piece
    /// has it by itself.
    pub loads: Vec<String>,
    /// How many baths it takes, in each round where it is done every round.
    pub count: usize,
    /// Whether it is done again each round.
    pub every_round: bool,
    /// The product; empty: none.
    pub agent: String,
    /// How much of it, for one bath or piece; may be empty.
    pub amount: String,
    /// To how much water; may be empty.
    pub water: String,
}

impl Plan {
    /// The packing list of the plan in the order that was drawn.
    pub fn packing(&self, order: &Order) -> Packing {
        Packing {
            arms: self.packed_arms(order),
            cloths: self.cloths(),
            baths: self
                .steps
                .iter()
                .map(|step| self.bath(step, order))
                .collect(),
            boards: order.boards.clone(),
        }
    }

    fn packed_arms(&self, order: &Order) -> Vec<PackedArm> {
        let codes = |arm: usize, test: bool| {
            let own = order.pieces.iter().filter(|allotted| {
                allotted.piece.arm == arm && (allotted.piece.role == crate::Role::Test) == test
            });
            let mut codes: Vec<String> = own.map(|own| own.piece.code.clone()).collect();
            codes.sort_by_key(|code| (code.len(), code.clone()));
            codes
        };
        let arms = self.arms.iter().enumerate();
        arms.map(|(place, arm)| PackedArm {
            name: arm.name.clone(),
            tests: codes(place, true),
            keepers: codes(place, false),
        })
        .collect()
    }

    fn cloths(&self) -> Vec<PackedCloth> {
        let mut cloths: Vec<PackedCloth> = Vec::new();
        for step in &self.steps {
            for cloth in &step.witnesses {
                let alone = self.arms.iter().filter(|arm| step.is_of(&arm.name));
                let count = match step.loads.len() {
                    0 => alone.map(|arm| arm.pieces).sum(),
                    loads => loads,
                };
                match cloths.iter_mut().find(|known| known.cloth == *cloth) {
                    Some(known) => known.count += count,
                    None => cloths.push(PackedCloth {
                        cloth: cloth.clone(),
                        count,
                    }),
                }
            }
        }
        cloths.retain(|cloth| cloth.count > 0);
        cloths
    }

    fn bath(&self, step: &Step, order: &Order) -> PackedBath {
        let pieces = self.arms.iter().filter(|arm| step.is_of(&arm.name));
        let alone = pieces.map(|arm| {
            // Keepers go through what is done once, and are never washed.
            let keepers = if step.kind.every_round() {
                0
            } else {
                arm.keepers
            };
            arm.pieces + keepers
        });
        let mut loads = step.loads.clone();
        let turn = |load: &String| {
            let of_step = order
                .loads
                .iter()
                .filter(|turns| matches!(turns.kind, Kind::Load(kind, _) if kind == step.kind));
            of_step
                .filter_map(|turns| turns.loads.iter().position(|other| other == load))
                .min()
        };
        loads.sort_by_key(turn);
        PackedBath {
            what: step.kind.words(),
            arms: step.arms.clone(),
            count: if loads.is_empty() {
                alone.sum()
            } else {
                loads.len()
            },
            loads,
            every_round: step.kind.every_round(),
            agent: step.agent.clone(),
            amount: step.amount.clone(),
            water: step.water.clone(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn nothing_that_the_plan_needs_is_left_at_home() {
        let plan = Plan::from_toml(include_str!("../../../../docs/plans/two-arms.toml")).unwrap();
        let order = plan.order();
        let packing = plan.packing(&order);
        assert_eq!(packing.arms[1].tests.len(), 6);
        assert_eq!(packing.arms[1].keepers.len(), 2);
        let cloths: Vec<_> = packing
            .cloths
            .iter()
            .map(|cloth| (cloth.cloth.as_str(), cloth.count))
            .collect();
        assert_eq!(cloths, [("plain", 2), ("multifibre", 2)]);
        let treatment = packing.baths.iter().find(|bath| !bath.agent.is_empty());
        // A jar for each of six pieces and two keepers.
        assert_eq!(treatment.map(|bath| bath.count), Some(8));
        assert!(packing.boards.iter().sum::<usize>() >= 16);
    }
}
