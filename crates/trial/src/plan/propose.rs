//! From a question and a budget to a design.

use super::{
    Asks, Circumstance, CircumstanceKind, Margin, Plan, PlanError, PlannedArm, Promise, Promised,
    RUNS, Scatter, Step, StepKind,
};
use crate::decide::TAIL_OF_FADE;
use crate::text;
use inference::simulate::{
    Contrasts, ScatterOf,
    smallest::{Alike, Answer, Limits, Sharing, Size, Strictness, Wish, smallest},
};
use serde::{Deserialize, Serialize};

/// How often what matters is to be shown.
const USUAL_POWER: f64 = 0.8;
/// Keepers of an arm: one shows the photo's shift, two also how much keepers differ.
const USUAL_KEEPERS: usize = 2;
/// What a wash costs beside a piece, in pieces.
const LOAD_AS_PIECES: f64 = 2.0;
/// Pieces a home machine or basin takes at once, as swatches go.
const USUAL_PER_LOAD: usize = 24;
/// Washes of its own that each arm gets, where they can be spared, if staining is asked
/// about: by three witness cloths each and three people, arms that lie two grades apart
/// are told apart, and more cloths add little.
const STAINING_LOADS: usize = 3;
/// Loads in which a step is done where loads are what varies.
const USUAL_LOADS: usize = 2;

/// What a person asks and has.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Enquiry {
    /// What is asked, in words.
    pub question: String,
    /// What kind of question it is.
    #[serde(default)]
    pub asks: Asks,
    /// Whether it is asked, too, which arm stains other cloth more. Each arm then has
    /// washes of its own, so that a stain is its own.
    #[serde(default)]
    pub staining: bool,
    /// The fibre, in words; may be empty.
    #[serde(default)]
    pub fibre: String,
    /// The class of dye, in words; may be empty.
    #[serde(default)]
    pub dye_class: String,
    /// The smallest difference that matters.
    pub margin: Margin,
    /// Rounds of wash and dry, 1 upward.
    pub rounds: u32,
    /// What is compared, the control first.
    pub arms: Vec<EnquiredArm>,
    /// What there is to be used.
    pub budget: Budget,
    /// How much equal pieces differ, where it is known.
    #[serde(default)]
    pub scatter: Option<Scatter>,
    /// Where the random order starts from.
    #[serde(default)]
    pub seed: u32,
}

/// An arm as asked about.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct EnquiredArm {
    /// Its short name.
    pub name: String,
    /// The product of its after-treatment; empty: none.
    #[serde(default)]
    pub agent: String,
    /// How much of the product, such as `2 tbsp`; may be empty.
    #[serde(default)]
    pub amount: String,
    /// To how much water, such as `1 gal`; may be empty.
    #[serde(default)]
    pub water: String,
    /// How long, minutes.
    #[serde(default)]
    pub minutes: Option<f64>,
    /// How warm, degrees Celsius.
    #[serde(default)]
    pub temperature_c: Option<f64>,
    /// Dye, percent on weight of fibre, if known.
    #[serde(default)]
    pub depth_percent_owf: Option<f64>,
}

/// What there is to be used.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Budget {
    /// Pieces in all, keepers among them.
    pub pieces: usize,
    /// Washes in each round, of all arms together.
    pub washes: usize,
    /// Days over which the work may be spread.
    pub days: usize,
}

/// A design for an enquiry.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Proposal {
    /// The plan.
    pub plan: Plan,
    /// What the plan can show, by [`RUNS`] trials; no part of the data.
    #[serde(skip)]
    pub promise: Promise,
    /// Whether it shows the margin four times in five.
    pub reached: bool,
    /// How often it shows a difference as large as the margin.
    pub shows_margin: f64,
    /// How often it shows two arms alike that are; none if that wasn't within reach.
    pub shows_alike: Option<f64>,
    /// What was found, for the person.
    pub sentence: String,
}

impl Enquiry {
    /// The smallest design within the budget that shows the margin four times in
    /// five, and arms alike as often if that is within reach, too; where none does,
    /// the one that comes closest.
    ///
    /// # Errors
    /// A budget that leaves no room for two pieces of each arm, or a field that
    /// can't be taken.
    pub fn propose(&self) -> Result<Proposal, PlanError> {
        self.check()?;
        self.check_budget()?;
        let both = self.sized(true)?;
        let (answer, with_alike) = match both {
            Some(Answer::Reached(size)) => (Answer::Reached(size), true),
            _ => match self.sized(false)? {
                Some(answer) => (answer, false),
                None => return Err(self.no_room()),
            },
        };
        let (size, reached) = match answer {
            Answer::Reached(size) => (size, true),
            Answer::OutOfReach(size) => (size, false),
        };
        let plan = self.plan(&size);
        plan.check()?;
        let promise = plan.promise(RUNS)?;
        let weakest =
            |share: fn(&Promised) -> f64| promise.comparisons.iter().map(share).fold(1.0, f64::min);
        let shows_margin = weakest(|promised| promised.shows_margin_together);
        let shows_alike = with_alike.then(|| weakest(|promised| promised.shows_alike));
        Ok(Proposal {
            sentence: sentence(
                (&size, &plan),
                reached,
                shows_margin,
                shows_alike,
                self.margin,
            ),
            plan,
            promise,
            reached,
            shows_margin,
            shows_alike,
        })
    }

    fn check_budget(&self) -> Result<(), PlanError> {
        if self.arms.len() < 2 {
            return Err(PlanError::new(
                "arms",
                text::plan::a_trial_compares_name_two_arms(),
            ));
        }
        for (field, what, value) in [
            ("budget.pieces", "pieces", self.budget.pieces),
            ("budget.washes", "washes", self.budget.washes),
            ("budget.days", "days", self.budget.days),
        ] {
            if value == 0 {
                return Err(PlanError::new(
                    field,
                    text::plan::with_no_there_is_no_trial_give(what),
                ));
            }
        }
        let least = 3 * self.arms.len();
        if self.budget.pieces < least {
            return Err(PlanError::new(
                "budget.pieces",
                text::plan::pieces_are_too_few_for_arms(self.budget.pieces, self.arms.len(), least),
            ));
        }
        let least = USUAL_LOADS * self.arms.len();
        if !self.may_share() && self.budget.washes < least {
            let sentence = if self.hues_agree() {
                text::plan::staining_is_told_by_washes_of_one_arm(self.arms.len(), least)
            } else {
                text::plan::deep_and_pale_colours_cant_be_washed(self.arms.len(), least)
            };
            return Err(PlanError::new("budget.washes", sentence));
        }
        Ok(())
    }

    fn no_room(&self) -> PlanError {
        PlanError::new(
            "budget",
            text::plan::no_design_fits_into_pieces_and_washes(
                self.budget.pieces,
                self.budget.washes,
                self.arms.len(),
            ),
        )
    }

    /// The size that shows the margin (and arms alike); none if there is no room.
    fn sized(&self, alike: bool) -> Result<Option<Answer>, PlanError> {
        let scatter = self.scatter.clone().unwrap_or_default();
        let margin = self.margin.de00();
        let contrasts = self.contrasts();
        let wish = Wish {
            arms: self.arms.len(),
            contrasts,
            strictness: match contrasts {
                _ if self.arms.len() == 2 => Strictness::Each,
                Contrasts::Against(_) => Strictness::Dunnett,
                Contrasts::AllPairs => Strictness::Holm,
            },
            scatter: ScatterOf::EachPair,
            sharing: if self.may_share() {
                Sharing::AllArms
            } else {
                Sharing::OneArm
            },
            piece_sd: scatter.piece_sd_de00,
            load_sd: if self.hues_agree() {
                scatter.load_sd_de00
            } else {
                // Pot and wash both differ from lot to lot.
                scatter.load_sd_de00 * std::f64::consts::SQRT_2
            },
            reading_sd: scatter.reading_sd_de00,
            photos: 1,
            keepers: self.keepers() as u32,
            power: USUAL_POWER,
            difference: Some(margin),
            alike: alike.then_some(Alike {
                margin,
                truly: 0.0,
                parts: 3,
            }),
            tail: TAIL_OF_FADE,
            equivalence_tail: 0.05,
        };
        let limits = Limits {
            pieces: self.budget.pieces,
            loads: self.budget.washes,
            pieces_per_load: USUAL_PER_LOAD,
            load_as_pieces: LOAD_AS_PIECES,
        };
        match smallest(&wish, &limits, u64::from(self.seed)) {
            Ok(answer) => Ok(Some(answer)),
            Err(inference::InferenceError::NoRoom { .. }) => Ok(None),
            Err(error) => Err(PlanError::new(
                "",
                text::plan::no_design_can_be_worked_out(error),
            )),
        }
    }

    fn contrasts(&self) -> Contrasts {
        match self.asks {
            Asks::StepMatters => Contrasts::Against(0),
            Asks::Lasts | Asks::WhichIsBest | Asks::ShadeLadder => Contrasts::AllPairs,
        }
    }

    fn keepers(&self) -> usize {
        // With few pieces one keeper has to do.
        let spare = self.budget.pieces / self.arms.len();
        if spare >= 2 * USUAL_KEEPERS + 2 {
            USUAL_KEEPERS
        } else {
            1
        }
    }

    /// Whether arms may be washed together: none's dye shows on another, and no stain
    /// has to be laid to one.
    fn may_share(&self) -> bool {
        !self.staining && self.hues_agree()
    }

    /// Whether no arm's dye would show on another arm.
    fn hues_agree(&self) -> bool {
        super::critique::may_share(&self.planned_arms(2))
    }

    pub(super) fn planned_arms(&self, pieces: usize) -> Vec<PlannedArm> {
        self.arms
            .iter()
            .enumerate()
            .map(|(i, arm)| PlannedArm {
                name: arm.name.trim().to_owned(),
                treatment: arm.agent.clone(),
                control: i == 0 && self.asks == Asks::StepMatters,
                pieces,
                keepers: self.keepers(),
                dye: String::new(),
                depth_percent_owf: arm.depth_percent_owf,
                pale_areas: false,
                codes: Vec::new(),
            })
            .collect()
    }

    fn plan(&self, size: &Size) -> Plan {
        let arms = self.planned_arms(size.per_arm);
        let mut plan = Plan {
            title: String::new(),
            question: self.question.clone(),
            asks: self.asks,
            staining: self.staining,
            fibre: self.fibre.clone(),
            dye_class: self.dye_class.clone(),
            margin: self.margin,
            rounds: self.rounds,
            stages: stages(self.rounds),
            seed: self.seed,
            scatter: self.scatter.clone(),
            arms,
            steps: Vec::new(),
            circumstances: Vec::new(),
            vessels: Vec::new(),
            instructions: Vec::new(),
        };
        if self.hues_agree() {
            plan.steps.push(Step {
                loads: vec![text::plan::dye_pot().into()],
                ..Step::of(StepKind::Dye)
            });
        } else {
            plan.steps.extend(own_loads(
                &plan.arms,
                StepKind::Dye,
                USUAL_LOADS,
                text::plan::pot(),
            ));
        }
        self.after_treat(&mut plan);
        if self.may_share() {
            let loads = (1..=size.loads).map(text::plan::wash);
            plan.steps.push(Step {
                loads: loads.collect(),
                ..Step::of(StepKind::Wash)
            });
        } else {
            let each = size.loads / plan.arms.len();
            // More witnesses sharpen the verdict on staining, and loads that on change.
            let spare = size.per_arm.min(self.budget.washes / plan.arms.len());
            let each = match self.staining {
                true => each.max(spare.min(STAINING_LOADS)),
                false => each,
            };
            plan.steps.extend(own_loads(
                &plan.arms,
                StepKind::Wash,
                each,
                text::plan::wash_2(),
            ));
        }
        for step in plan
            .steps
            .iter_mut()
            .filter(|step| step.kind == StepKind::Wash)
        {
            step.witnesses.push("multifibre".into());
        }
        // Days only where every arm's pieces go evenly over them.
        let days = self.budget.days.min(size.per_arm);
        if days > 1 {
            plan.circumstances.push(Circumstance {
                kind: CircumstanceKind::Day,
                arms: Vec::new(),
                values: (1..=days).map(text::plan::day).collect(),
            });
        }
        plan
    }

    /// Each arm's product, and plain soaks for arms without one that match the
    /// longest and warmest; each piece in a jar of its own, so that no bath counts
    /// for all pieces of an arm.
    fn after_treat(&self, plan: &mut Plan) {
        let treats = |arm: &&EnquiredArm| !arm.agent.trim().is_empty();
        let treated: Vec<&EnquiredArm> = self.arms.iter().filter(treats).collect();
        if treated.is_empty() {
            return;
        }
        for arm in &treated {
            plan.steps.push(Step {
                arms: vec![arm.name.trim().to_owned()],
                agent: arm.agent.clone(),
                amount: arm.amount.clone(),
                water: arm.water.clone(),
                minutes: arm.minutes,
                temperature_c: arm.temperature_c,
                ..Step::of(StepKind::AfterTreat)
            });
        }
        let plain = self.arms.iter().filter(|arm| !treats(arm));
        for arm in plain {
            plan.steps.push(Step {
                arms: vec![arm.name.trim().to_owned()],
                minutes: greatest(treated.iter().filter_map(|arm| arm.minutes)),
                temperature_c: greatest(treated.iter().filter_map(|arm| arm.temperature_c)),
                ..Step::of(StepKind::Soak)
            });
        }
    }
}

fn greatest(values: impl Iterator<Item = f64>) -> Option<f64> {
    values.max_by(f64::total_cmp)
}

fn own_loads(arms: &[PlannedArm], kind: StepKind, each: usize, word: &str) -> Vec<Step> {
    arms.iter()
        .map(|arm| Step {
            arms: vec![arm.name.clone()],
            loads: (1..=each)
                .map(|n| format!("{} {word} {n}", arm.name))
                .collect(),
            ..Step::of(kind)
        })
        .collect()
}

/// Before the first round, after it, half way and at the end.
fn stages(rounds: u32) -> Vec<u32> {
    let mut stages = vec![0, 1, rounds.div_ceil(2), rounds];
    stages.dedup();
    stages
}

/// Washes of a round, which may be more than the size asks for: see [`STAINING_LOADS`].
fn washes(plan: &Plan) -> usize {
    let washes = plan.steps.iter().filter(|step| step.kind == StepKind::Wash);
    washes.map(|step| step.loads.len()).sum()
}

fn sentence(
    (size, plan): (&Size, &Plan),
    reached: bool,
    shows_margin: f64,
    shows_alike: Option<f64>,
    margin: Margin,
) -> String {
    let tenths = |share: f64| text::plan::times_in_100(format_args!("{:.0}", 100.0 * share));
    let design = text::plan::test_pieces_in_each_arm_pieces(
        size.per_arm,
        size.pieces,
        match washes(plan) {
            1 => text::plan::n_1_wash().to_owned(),
            loads => text::plan::washes(loads),
        },
    );
    let shows = text::plan::a_difference_of_is_shown(margin, tenths(shows_margin));
    match (reached, shows_alike) {
        (true, Some(alike)) => {
            text::plan::and_arms_that_dont_differ_are_shown(&design, &shows, tenths(alike))
        }
        (true, None) => text::plan::to_show_as_often_that_arms(&design, &shows),
        (false, _) => text::plan::nothing_within_the_budget_shows_the(&design, &shows),
    }
}
