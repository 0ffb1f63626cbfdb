//! Changes that take a weakness out of a plan.

use super::{Circumstance, Column, Kind, Plan, Sharing, Step, StepKind};
use crate::text;
use serde::{Deserialize, Serialize};

/// Loads that pieces are spread over where nothing else is known.
const USUAL_LOADS: usize = 2;
/// The witness cloth that shows staining of all common fibres.
const USUAL_WITNESS: &str = "multifibre";

/// A change of a plan, applied by [`Mend::apply`].
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(tag = "mend", rename_all = "snake_case")]
pub enum Mend {
    /// More test pieces for an arm.
    AddPieces {
        /// The arm's name.
        arm: String,
        /// How many it then has.
        to: usize,
    },
    /// One more keeper for an arm.
    AddKeeper {
        /// The arm's name.
        arm: String,
    },
    /// A look before the first round.
    AddStart,
    /// A plain soak for arms, as long and as warm as another arm's treatment.
    AddSoak {
        /// The arms' names.
        arms: Vec<String>,
        /// The treatment's place among the plan's steps, from 0.
        like_step: usize,
    },
    /// Every load (day, person, place) takes pieces of every arm.
    SplitInBlocks {
        /// What is spread.
        kind: Kind,
    },
    /// Two loads for each arm and none shared between arms.
    AddLoads {
        /// In which step.
        kind: Kind,
    },
    /// Each piece in a vessel of its own, such as a jar.
    EachByItself {
        /// In which step.
        kind: Kind,
    },
    /// A witness cloth in every load of some steps.
    AddWitness {
        /// The steps' places in the plan, from 0.
        steps: Vec<usize>,
    },
    /// A vessel is cleaned between its loads.
    Clean {
        /// The vessel's name.
        vessel: String,
    },
    /// A vessel takes its arms' loads in alternating order.
    Alternate {
        /// The vessel's name.
        vessel: String,
    },
    /// A step uses its product as the product's instruction says.
    FollowInstruction {
        /// The step's place in the plan, from 0.
        step: usize,
    },
    /// A departure from an instruction is what the trial asks about.
    OnPurpose {
        /// The step's place in the plan, from 0.
        step: usize,
    },
}

impl Mend {
    /// The change as an instruction, for a button.
    pub fn label(&self) -> String {
        match self {
            Self::AddPieces { arm, to } => text::plan::give_pieces(arm, to),
            Self::AddKeeper { arm } => text::plan::give_a_keeper(arm),
            Self::AddStart => text::plan::look_at_all_pieces_before_the_first().into(),
            Self::AddSoak { .. } => text::plan::add_a_plain_soak_as_long().into(),
            Self::SplitInBlocks {
                kind: kind @ Kind::Load(..),
            } => text::plan::split_each_over_all_arms(kind),
            Self::SplitInBlocks { kind } => text::plan::give_every_pieces_of_every_arm(kind),
            Self::AddLoads { kind } => text::plan::two_loads_for_each_arm(kind),
            Self::EachByItself { kind } => text::plan::a_jar_of_its_own(kind),
            Self::AddWitness { .. } => text::plan::put_a_multifibre_strip_into_every_wash().into(),
            Self::Clean { vessel } => text::plan::clean_between_loads(vessel),
            Self::Alternate { vessel } => text::plan::alternate_the_arms(vessel),
            Self::FollowInstruction { .. } => {
                text::plan::use_the_product_as_its_instruction_says().into()
            }
            Self::OnPurpose { .. } => text::plan::this_departure_is_what_the_trial_asks().into(),
        }
    }

    /// The plan with the change. What no longer fits the plan is left as it is.
    pub fn apply(&self, plan: &Plan) -> Plan {
        let mut plan = plan.clone();
        match self {
            Self::AddPieces { arm, to } => {
                if let Some(arm) = plan.arms.iter_mut().find(|other| other.name == *arm) {
                    arm.pieces = arm.pieces.max(*to);
                    arm.codes.clear();
                }
            }
            Self::AddKeeper { arm } => {
                if let Some(arm) = plan.arms.iter_mut().find(|other| other.name == *arm) {
                    arm.keepers += 1;
                    arm.codes.clear();
                }
            }
            Self::AddStart => plan.stages.push(0),
            Self::AddSoak { arms, like_step } => add_soak(&mut plan, arms, *like_step),
            Self::SplitInBlocks { kind } => split_in_blocks(&mut plan, *kind),
            Self::AddLoads { kind } => add_loads(&mut plan, *kind),
            Self::EachByItself { kind } => {
                if let Kind::Load(step, nth) = kind {
                    for place in places_of(&plan, *step, *nth) {
                        plan.steps[place].loads.clear();
                    }
                    forget_lost_loads(&mut plan);
                }
            }
            Self::AddWitness { steps } => {
                for step in steps {
                    if let Some(step) = plan.steps.get_mut(*step) {
                        step.witnesses.push(USUAL_WITNESS.into());
                    }
                }
            }
            Self::Clean { vessel } => {
                for vessel in plan.vessels.iter_mut().filter(|v| v.name == *vessel) {
                    vessel.cleaned = true;
                }
            }
            Self::Alternate { vessel } => alternate(&mut plan, vessel),
            Self::FollowInstruction { step } => follow_instruction(&mut plan, *step),
            Self::OnPurpose { step } => {
                if let Some(step) = plan.steps.get_mut(*step) {
                    step.on_purpose = true;
                }
            }
        }
        plan
    }
}

fn add_soak(plan: &mut Plan, arms: &[String], like: usize) {
    let Some(treatment) = plan.steps.get(like).cloned() else {
        return;
    };
    let plain = plan
        .steps
        .iter_mut()
        .find(|step| step.kind == StepKind::Soak && step.agent.is_empty() && step.arms == arms);
    if let Some(plain) = plain {
        plain.minutes = treatment.minutes;
        plain.temperature_c = treatment.temperature_c;
        return;
    }
    // As many vessels as the treatment has, so that both arms are wet alike.
    let loads = (1..=treatment.loads.len()).map(text::plan::plain_soak);
    let soak = Step {
        arms: arms.to_vec(),
        loads: loads.collect(),
        minutes: treatment.minutes,
        temperature_c: treatment.temperature_c,
        water: treatment.water.clone(),
        ..Step::of(StepKind::Soak)
    };
    plan.steps.insert(like + 1, soak);
}

/// All loads that any arm has in that step, for all arms.
fn split_in_blocks(plan: &mut Plan, kind: Kind) {
    let sharing = Sharing::of(plan);
    let Some(column) = sharing.columns.iter().find(|column| column.kind == kind) else {
        return;
    };
    let mut names = column.names.clone();
    if names.len() < USUAL_LOADS && matches!(kind, Kind::Load(..)) {
        names.push(format!("{kind} {USUAL_LOADS}"));
    }
    match kind {
        Kind::Load(step, nth) => {
            for place in places_of(plan, step, nth) {
                plan.steps[place].loads.clone_from(&names);
            }
        }
        Kind::Circumstance(of) => {
            plan.circumstances.retain(|other| other.kind != of);
            plan.circumstances.push(Circumstance {
                kind: of,
                arms: Vec::new(),
                values: names,
            });
        }
    }
}

/// Splits the step into one for each arm, with two loads of its own.
fn add_loads(plan: &mut Plan, kind: Kind) {
    let Kind::Load(step, nth) = kind else {
        return;
    };
    let mut steps = Vec::new();
    let places = places_of(plan, step, nth);
    for (place, whole) in plan.steps.iter().enumerate() {
        if !places.contains(&place) {
            steps.push(whole.clone());
            continue;
        }
        for arm in plan.arms.iter().filter(|arm| whole.is_of(&arm.name)) {
            let loads = (1..=USUAL_LOADS).map(|n| format!("{} {kind} {n}", arm.name));
            steps.push(Step {
                arms: vec![arm.name.clone()],
                loads: loads.collect(),
                ..whole.clone()
            });
        }
    }
    plan.steps = steps;
    forget_lost_loads(plan);
}

/// The places of the steps that are an arm's step of that kind and number.
fn places_of(plan: &Plan, kind: StepKind, nth: usize) -> Vec<usize> {
    let mut places: Vec<usize> = plan
        .arms
        .iter()
        .filter_map(|arm| {
            let own = plan.steps.iter().enumerate();
            own.filter(|(_, step)| step.kind == kind && step.is_of(&arm.name))
                .nth(nth)
                .map(|(place, _)| place)
        })
        .collect();
    places.sort_unstable();
    places.dedup();
    places
}

/// Vessels hold only loads that there are.
fn forget_lost_loads(plan: &mut Plan) {
    let steps = &plan.steps;
    for vessel in &mut plan.vessels {
        vessel
            .order
            .retain(|load| steps.iter().any(|step| step.loads.contains(load)));
    }
    plan.vessels.retain(|vessel| !vessel.order.is_empty());
}

/// Takes the first load of each arm, then the second, in turning order.
fn alternate(plan: &mut Plan, name: &str) {
    let sharing = Sharing::of(plan);
    let arm_of = |load: &str| {
        let column: Option<&Column> = sharing
            .columns
            .iter()
            .find(|column| column.names.iter().any(|other| other == load));
        let piece =
            column.and_then(|c| sharing.test_pieces().find(|i| c.name_of(*i) == Some(load)));
        piece.map_or(0, |piece| sharing.pieces[piece].arm)
    };
    for vessel in plan.vessels.iter_mut().filter(|vessel| vessel.name == name) {
        let mut seen = vec![0_usize; plan.arms.len()];
        let mut ranked: Vec<(usize, usize, String)> = Vec::new();
        for load in &vessel.order {
            let arm = arm_of(load);
            let turn = seen[arm];
            seen[arm] += 1;
            // Each second time through, the arms come the other way round.
            let rank = if turn.is_multiple_of(2) {
                arm
            } else {
                seen.len() - arm
            };
            ranked.push((turn, rank, load.clone()));
        }
        ranked.sort();
        vessel.order = ranked.into_iter().map(|(_, _, load)| load).collect();
    }
}

fn follow_instruction(plan: &mut Plan, place: usize) {
    let Some(step) = plan.steps.get_mut(place) else {
        return;
    };
    let Some(said) = plan
        .instructions
        .iter()
        .find(|said| said.agent == step.agent)
    else {
        return;
    };
    if !said.amount.is_empty() {
        step.amount.clone_from(&said.amount);
        step.water.clone_from(&said.water);
    }
    step.minutes = said.minutes.or(step.minutes);
    step.temperature_c = said.temperature_c.or(step.temperature_c);
}
