//! What a plan can show, by computation: how often a difference that matters is
//! found, and how often arms that don't differ are shown alike.

use super::{Allotted, Asks, Column, Kind, Margin, Plan, PlanError, Scatter, Sharing, StepKind};
use crate::text;
use crate::{
    Role,
    decide::{TAIL_AROUND_FADE, TAIL_OF_FADE},
};
use colour::grade::Grade;
use inference::{
    InferenceError,
    simulate::{Analysis, Case, Contrasts, Design, Layout, Outcome, Piece, Runs, ScatterOf, Truth},
};
use serde::{Deserialize, Serialize};
use std::panic::resume_unwind;
use std::sync::{Mutex, PoisonError};

/// By which rules promises are worked out: to be raised with every change of their figures, so that
/// none that was kept under other rules is shown.
pub const PROMISE_EDITION: u32 = 1;
/// Seeded trials behind each figure.
pub const RUNS: u32 = 2000;
/// Pieces per arm for which the power is shown beside the plan's own.
const OTHER_SIZES: [usize; 7] = [2, 3, 4, 6, 8, 12, 16];

/// What a plan can show.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Promise {
    /// How much equal pieces differ, as it was reckoned with.
    pub scatter: Scatter,
    /// The difference that matters, CIEDE2000.
    pub margin_de00: f64,
    /// Each comparison of two arms.
    pub comparisons: Vec<Promised>,
    /// How often the weakest comparison shows the margin, for other numbers of pieces.
    pub by_pieces: Vec<BySize>,
}

/// What one comparison can show.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Promised {
    /// The arm that is compared with.
    pub first: String,
    /// The other arm.
    pub second: String,
    /// What it goes by.
    pub basis: Basis,
    /// Pieces, or loads where these are the units, in the smaller arm.
    pub units: usize,
    /// How often a difference as large as the margin is shown, 0 to 1.
    pub shows_margin: f64,
    /// The same where all comparisons of the trial are held to account together.
    pub shows_margin_together: f64,
    /// How often a difference as large as a fade of grade 4 is shown.
    pub shows_grade_4: f64,
    /// How often two arms that truly don't differ are shown alike.
    pub shows_alike: f64,
    /// How often a difference is shown though there is none, along the fade or in any
    /// other direction.
    pub errs: f64,
}

/// What a comparison goes by.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Basis {
    /// Pieces against pieces.
    Pieces,
    /// Pieces within loads that hold both arms.
    WithinLoads,
    /// Means of loads, since each arm has loads of its own.
    Loads,
    /// Nothing: each arm has one load, its own.
    Confounded,
    /// Nothing: an arm has no two units that show what chance does.
    NoScatter,
}

/// Power by pieces per arm.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct BySize {
    /// Test pieces in each arm.
    pub pieces: usize,
    /// How often the margin is shown by the weakest comparison.
    pub shows_margin: f64,
}

impl Plan {
    /// What the plan can show at its last stage, by so many seeded trials
    /// ([`RUNS`] as a rule), each judged as the verdict judges: for a difference
    /// along the direction in which the colour fades, with the part of the 5 in 100
    /// that the verdict spends on it; for arms that are alike in all directions.
    ///
    /// # Errors
    /// A plan that is too large to be tried so often.
    pub fn promise(&self, runs: u32) -> Result<Promise, PlanError> {
        self.promise_from(runs, u64::from(self.seed))
    }

    /// The same from another seed of chance; the order stays that of the plan.
    ///
    /// # Errors
    /// A plan that is too large to be tried so often.
    pub fn promise_from(&self, runs: u32, seed: u64) -> Result<Promise, PlanError> {
        let runs = Runs {
            tail: TAIL_OF_FADE,
            ..Runs::new(runs, seed)
        };
        self.promised(&runs)
            .map_err(|error| PlanError::new("", text::plan::what_this_plan_can_show_cant(error)))
    }

    fn promised(&self, runs: &Runs) -> Result<Promise, InferenceError> {
        let scatter = self.scatter.clone().unwrap_or_default();
        let sizes = Mutex::new(OTHER_SIZES.iter().rev());
        // Each size has its trials drawn from the same seed, whichever thread does it.
        let of_sizes = || -> Result<Vec<BySize>, InferenceError> {
            let mut found = Vec::new();
            loop {
                let next = sizes.lock().unwrap_or_else(PoisonError::into_inner).next();
                match next {
                    Some(pieces) => found.push(self.with_pieces(*pieces, &scatter, runs)?),
                    None => return Ok(found),
                }
            }
        };
        let (comparisons, by_pieces, more) = std::thread::scope(|scope| {
            let helper = scope.spawn(of_sizes);
            let comparisons = self.comparisons(&scatter, runs);
            let own = of_sizes();
            let helped = helper.join().unwrap_or_else(|panic| resume_unwind(panic));
            (comparisons, own, helped)
        });
        let (comparisons, mut by_pieces) = (comparisons?, by_pieces?);
        by_pieces.extend(more?);
        by_pieces.sort_unstable_by_key(|size| size.pieces);
        Ok(Promise {
            margin_de00: self.margin.de00(),
            comparisons,
            by_pieces,
            scatter,
        })
    }

    fn comparisons(&self, scatter: &Scatter, runs: &Runs) -> Result<Vec<Promised>, InferenceError> {
        let margin_de00 = self.margin.de00();
        let trials = Trials::of(self, scatter, runs)?;
        let grade_4_de00 = Margin::Grade(Grade::from_half_steps(8)).de00();
        let mut cases = trials.each_pair(margin_de00, true);
        cases.extend(trials.each_pair(grade_4_de00, false));
        cases.push(trials.case(|_| 0.0, Some(margin_de00), false));
        let mut outcomes = trials.run(&cases)?;
        let null = outcomes.pop().unwrap_or_default();
        let grade_4 = outcomes.split_off(outcomes.len() / 2);
        let (margin, grade_4) = (differing(&outcomes), differing(&grade_4));
        let of_three = null.iter().zip(margin.iter().zip(&grade_4));
        Ok(of_three
            .map(|(null, (margin, grade_4))| self.compared(null, margin, grade_4))
            .collect())
    }

    fn compared(&self, null: &Outcome, margin: &Outcome, grade_4: &Outcome) -> Promised {
        let arms = [null.contrast.first, null.contrast.second].map(|arm| &self.arms[arm]);
        // On one piece nothing is decided, even where keepers show some scatter.
        let alone = arms.iter().any(|arm| arm.pieces < 2);
        let share = |share: f64| if alone { 0.0 } else { share };
        let together = margin.difference_dunnett.or(margin.difference_holm);
        Promised {
            first: arms[0].name.clone(),
            second: arms[1].name.clone(),
            basis: if alone {
                Basis::NoScatter
            } else {
                null.contrast.analysis.into()
            },
            units: null.contrast.units,
            shows_margin: share(margin.difference.share),
            shows_margin_together: share(together.map_or(0.0, |rate| rate.share)),
            shows_grade_4: share(grade_4.difference.share),
            shows_alike: share(null.equivalence.map_or(0.0, |rate| rate.share)),
            errs: share(null.difference.share + TAIL_AROUND_FADE),
        }
    }

    /// What the weakest comparison shows with another number of pieces in each arm.
    fn with_pieces(
        &self,
        pieces: usize,
        scatter: &Scatter,
        runs: &Runs,
    ) -> Result<BySize, InferenceError> {
        let mut other = self.clone();
        for arm in &mut other.arms {
            arm.pieces = pieces;
            arm.codes.clear();
        }
        let trials = Trials::of(&other, scatter, runs)?;
        let outcomes = trials.run(&trials.each_pair(self.margin.de00(), false))?;
        let shown = differing(&outcomes);
        let weakest = shown.iter().map(|outcome| outcome.difference.share);
        Ok(BySize {
            pieces,
            shows_margin: weakest.fold(1.0, f64::min),
        })
    }
}

/// A plan laid out to be tried many times.
struct Trials {
    design: Design,
    arms: usize,
    truth: Truth,
    runs: Runs,
}

impl Trials {
    fn of(plan: &Plan, scatter: &Scatter, runs: &Runs) -> Result<Self, InferenceError> {
        let layout = layout(plan);
        let truth = Truth {
            effects: vec![0.0; plan.arms.len()],
            piece_sd: scatter.piece_sd_de00,
            load_sds: vec![scatter.load_sd_de00; layout.kinds],
            reading_sd: scatter.reading_sd_de00,
            photos: 1,
            margin: None,
            parts: 3,
        };
        Ok(Self {
            design: Design::of(&layout)?,
            arms: plan.arms.len(),
            truth,
            runs: *runs,
        })
    }

    /// `margin`: what arms have to lie within to be shown alike, if that is asked.
    fn case(&self, effect: impl Fn(usize) -> f64, margin: Option<f64>, together: bool) -> Case {
        Case {
            effects: (0..self.arms).map(effect).collect(),
            margin,
            together,
        }
    }

    /// Cases in which between them the two arms of every comparison differ by `size`:
    /// arms are told apart by the bits of their numbers. Whether arms that differ are
    /// shown alike is not asked.
    fn each_pair(&self, size: f64, together: bool) -> Vec<Case> {
        (0..usize::BITS - (self.arms - 1).leading_zeros())
            .map(|bit| self.case(|arm| size * ((arm >> bit) & 1) as f64, None, together))
            .collect()
    }

    fn run(&self, cases: &[Case]) -> Result<Vec<Vec<Outcome>>, InferenceError> {
        self.design.simulate_each(&self.truth, cases, &self.runs)
    }
}

/// Of cases that follow the bits of the arms' numbers, for every comparison the first
/// in which its arms differ.
fn differing(cases: &[Vec<Outcome>]) -> Vec<Outcome> {
    let comparisons = cases.first().into_iter().flatten().enumerate();
    comparisons
        .filter_map(|(at, outcome)| {
            let (a, b) = (outcome.contrast.first, outcome.contrast.second);
            let bit = (a ^ b).trailing_zeros() as usize;
            cases.get(bit).map(|outcomes| outcomes[at])
        })
        .collect()
}

/// The plan as chance deals it out.
fn layout(plan: &Plan) -> Layout {
    let order = plan.order();
    let tested: Vec<&Allotted> = order
        .pieces
        .iter()
        .filter(|piece| piece.piece.role == Role::Test)
        .collect();
    // Washes, treatments (a control's plain soak stands for the one it matches) and
    // loads that arms have to themselves, where all test pieces have one. What pots
    // or rinses that hold all arms alike do lies in the scatter of pieces.
    let sharing = Sharing::of(plan);
    let counts = |column: &&Column| {
        let kind = matched(column.kind);
        matches!(kind, Kind::Load(StepKind::Wash | StepKind::Soak, _))
            || matches!(kind, Kind::Load(..)) && column.of_one_arm_each(&sharing)
    };
    let columns = sharing.columns.iter().filter(counts);
    let mut kinds: Vec<Kind> = columns.map(|column| matched(column.kind)).collect();
    kinds.sort_unstable();
    kinds.dedup();
    kinds.retain(|kind| tested.iter().all(|piece| load(piece, *kind).is_some()));
    let mut loads: Vec<Vec<&str>> = vec![Vec::new(); kinds.len()];
    Layout {
        arms: plan.arms.len(),
        pieces: tested
            .iter()
            .map(|piece| Piece {
                arm: piece.piece.arm,
                loads: kinds
                    .iter()
                    .zip(&mut loads)
                    .map(|(kind, known)| Some(number(known, load(piece, *kind)?)))
                    .collect(),
            })
            .collect(),
        keepers: plan.arms.iter().map(|arm| arm.keepers as u32).collect(),
        kinds: kinds.len(),
        contrasts: match plan.asks {
            Asks::StepMatters => Contrasts::Against(plan.control()),
            Asks::Lasts | Asks::WhichIsBest | Asks::ShadeLadder => Contrasts::AllPairs,
        },
        scatter: ScatterOf::EachPair,
    }
}

/// Soaks and after-treatments are one kind of load.
fn matched(kind: Kind) -> Kind {
    match kind {
        Kind::Load(StepKind::AfterTreat, nth) => Kind::Load(StepKind::Soak, nth),
        other => other,
    }
}

fn load(piece: &Allotted, kind: Kind) -> Option<&str> {
    let mut own = piece.shares.iter();
    let found = own.find(|(other, _)| matched(*other) == kind);
    found.map(|(_, name)| name.as_str())
}

/// The number of a load, which is added if it is new.
fn number<'a>(known: &mut Vec<&'a str>, load: &'a str) -> usize {
    let found = known.iter().position(|other| *other == load);
    found.unwrap_or_else(|| {
        known.push(load);
        known.len() - 1
    })
}

impl From<Analysis> for Basis {
    fn from(analysis: Analysis) -> Self {
        match analysis {
            Analysis::Pieces => Self::Pieces,
            Analysis::WithinLoads => Self::WithinLoads,
            Analysis::LoadMeans => Self::Loads,
            Analysis::Confounded => Self::Confounded,
            Analysis::NoScatter => Self::NoScatter,
        }
    }
}

impl Basis {
    /// As said beside a comparison.
    pub fn words(self) -> &'static str {
        match self {
            Self::Pieces => text::plan::by_pieces(),
            Self::WithinLoads => text::plan::by_pieces_within_loads(),
            Self::Loads => text::plan::by_means_of_loads(),
            Self::Confounded => text::plan::never_each_arm_has_one_load(),
            Self::NoScatter => text::plan::never_too_few_pieces_to_tell(),
        }
    }
}

impl Promised {
    /// How often a fade of grade 4 would be missed, as a sentence.
    pub fn sentence(&self, pieces: usize) -> String {
        let pair = text::plan::against(&self.second, &self.first);
        match self.basis {
            Basis::Confounded | Basis::NoScatter => format!("{pair}: {}.", self.basis.words()),
            Basis::Pieces | Basis::WithinLoads | Basis::Loads => {
                let missed = (10.0 * (1.0 - self.shows_grade_4)).round();
                let often = match missed as u32 {
                    0 => text::plan::less_than_once().to_owned(),
                    1 => "once".to_owned(),
                    times => text::plan::times(times),
                };
                text::plan::with_pieces_per_arm_youd_miss(&pair, pieces, &often)
            }
        }
    }
}
