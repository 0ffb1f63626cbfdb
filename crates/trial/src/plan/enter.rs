//! A plan as a trial to be entered.

use super::{Allotted, Kind, Order, Plan, Step, StepKind, check::list};
use crate::text;
use crate::{NewArm, NewPiece, NewTrial, Role};

impl Plan {
    /// The trial that this plan makes, its pieces in the loads that chance gave them
    /// and a witness piece for each witness cloth of each wash.
    ///
    /// A piece that is washed by itself has witnesses of its own. One whose load holds
    /// several arms hangs with the first of them, for the trial knows no pieces without
    /// an arm; it tells of none, as [`Plan::staining_told`] says.
    pub fn new_trial(&self, order: &Order) -> NewTrial {
        let witnesses = self.witnesses(order);
        let arms = self.arms.iter().enumerate().map(|(place, arm)| {
            let mut own: Vec<&Allotted> = order
                .pieces
                .iter()
                .filter(|piece| piece.piece.arm == place)
                .collect();
            // A2 before A10.
            own.sort_by_key(|own| {
                let code = &own.piece.code;
                (own.piece.role != Role::Test, code.len(), code.clone())
            });
            let mut pieces: Vec<NewPiece> = own
                .iter()
                .map(|piece| NewPiece {
                    code: piece.piece.code.clone(),
                    role: piece.piece.role,
                    load: wash_of(piece).map(str::to_owned),
                })
                .collect();
            let with = witnesses.iter().filter(|(arm, _)| *arm == place);
            pieces.extend(with.map(|(_, witness)| witness.clone()));
            NewArm {
                name: arm.name.trim().to_owned(),
                treatment: arm.treatment.clone(),
                pieces,
            }
        });
        NewTrial {
            title: if self.title.trim().is_empty() {
                self.question.chars().take(80).collect()
            } else {
                self.title.clone()
            },
            question: self.question.clone(),
            margin_de00: self.margin.de00(),
            rounds: self.rounds,
            invented: false,
            method: self.method(),
            arms: arms.collect(),
        }
    }

    /// The witness cloths of all washes, each with the place of its arm.
    ///
    /// One that was washed with several arms in a load that the trial doesn't tell of
    /// (it knows one load of each piece) stays out, for it would pass there as one arm's.
    fn witnesses(&self, order: &Order) -> Vec<(usize, NewPiece)> {
        let mut cloths: Vec<WitnessCloth> = Vec::new();
        for (arm, planned) in self.arms.iter().enumerate() {
            for (wash, step) in self.washes_of(&planned.name) {
                let own = step.loads.iter().filter(|load| tells_of(order, load, arm));
                let own = own.map(|load| (load.as_str(), true));
                let alone = codes_of_tests(order, arm).into_iter();
                let alone = alone.filter(|_| step.loads.is_empty());
                for (place, is_load) in own.chain(alone.map(|code| (code, false))) {
                    let with = step.witnesses.iter().map(|cloth| WitnessCloth {
                        arm,
                        place,
                        is_load,
                        wash,
                        step,
                        cloth,
                    });
                    for cloth in with {
                        if !cloths.iter().any(|other| other.is(&cloth)) {
                            cloths.push(cloth);
                        }
                    }
                }
            }
        }
        let code = |own: &WitnessCloth| {
            let alike =
                |other: &&WitnessCloth| own.place == other.place && own.cloth == other.cloth;
            match cloths.iter().filter(alike).count() {
                1 => format!("{}, {}", own.place, own.cloth),
                _ => text::plan::witness_of_wash(own.place, own.wash + 1, own.cloth),
            }
        };
        let piece = |own: &WitnessCloth| NewPiece {
            code: code(own),
            role: Role::Witness,
            load: own.is_load.then(|| own.place.to_owned()),
        };
        cloths.iter().map(|own| (own.arm, piece(own))).collect()
    }

    /// The steps in words, one a line.
    fn method(&self) -> String {
        let lines: Vec<String> = self.steps.iter().map(said).collect();
        lines.join("\n")
    }
}

/// A witness cloth, with the load or the piece that it was washed with.
struct WitnessCloth<'a> {
    arm: usize,
    /// The load's name, or the code of the piece that is washed by itself.
    place: &'a str,
    is_load: bool,
    /// Which of the arm's washes, from 0.
    wash: usize,
    step: &'a Step,
    cloth: &'a str,
}

impl WitnessCloth<'_> {
    /// Whether it is one and the same: in a load of several arms, which steps of each may name.
    fn is(&self, other: &Self) -> bool {
        let one_load = self.is_load && other.is_load && self.place == other.place;
        let one_wash = self.wash == other.wash || std::ptr::eq(self.step, other.step);
        one_load && one_wash && self.cloth == other.cloth
    }
}

/// The loads in which a piece is washed, first to last.
fn washes_of(piece: &Allotted) -> impl Iterator<Item = &str> {
    let washes = piece.shares.iter();
    let washes = washes.filter(|(kind, _)| matches!(kind, Kind::Load(StepKind::Wash, _)));
    washes.map(|(_, load)| load.as_str())
}

/// The load of which the trial tells: a piece's first.
fn wash_of(piece: &Allotted) -> Option<&str> {
    washes_of(piece).next()
}

/// Whether a load holds pieces of the arm, and its witnesses tell no more in the trial
/// than they can.
fn tells_of(order: &Order, load: &str, arm: usize) -> bool {
    let mut own = order.pieces.iter();
    let held = own.any(|piece| piece.piece.arm == arm && washes_of(piece).any(|own| own == load));
    let mut others = order.pieces.iter().filter(|piece| piece.piece.arm != arm);
    let shared = others
        .clone()
        .any(|piece| washes_of(piece).any(|own| own == load));
    held && (!shared || others.any(|piece| wash_of(piece) == Some(load)))
}

/// Codes of an arm's test pieces, A2 before A10.
fn codes_of_tests(order: &Order, arm: usize) -> Vec<&str> {
    let own = order.pieces.iter().map(|piece| &piece.piece);
    let own = own.filter(|piece| piece.arm == arm && piece.role == Role::Test);
    let mut own: Vec<&str> = own.map(|piece| piece.code.as_str()).collect();
    own.sort_by_key(|code| (code.len(), *code));
    own
}

impl Step {
    /// The step as a line of the trial's method, without its loads.
    pub fn in_words(&self) -> String {
        said(self)
    }
}

/// A step as a line: `After-treatment of "agent F": fixing agent F, 2 tbsp to 1 gal, 20 min, 40 °C`.
fn said(step: &Step) -> String {
    let mut text = step.kind.words().to_owned();
    if let Some(first) = text.get_mut(..1) {
        first.make_ascii_uppercase();
    }
    if !step.arms.is_empty() {
        text.push_str(&format!(
            " {}",
            text::plan::of(list(step.arms.iter().map(String::as_str)))
        ));
    }
    let mut how = Vec::new();
    if !step.agent.is_empty() {
        how.push(step.agent.clone());
    }
    match (step.amount.is_empty(), step.water.is_empty()) {
        (false, false) => how.push(text::plan::to(&step.amount, &step.water)),
        (false, true) => how.push(step.amount.clone()),
        (true, false) => how.push(step.water.clone()),
        (true, true) => {}
    }
    how.extend(step.minutes.map(text::plan::min));
    how.extend(
        step.temperature_c
            .map(|celsius| format!("{celsius} \u{b0}C")),
    );
    if step.loads.is_empty() && !step.kind.every_round() {
        how.push(text::plan::each_piece_by_itself().to_owned());
    }
    if how.is_empty() {
        text
    } else {
        format!("{text}: {}", how.join(", "))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_plan_becomes_a_trial_that_can_be_entered() {
        for text in [
            include_str!("../../../../docs/plans/two-arms.toml"),
            include_str!("../../../../docs/plans/after-treatments-by-temperature.toml"),
            include_str!("../../../../docs/plans/shade-ladder.toml"),
        ] {
            let plan = Plan::from_toml(text).unwrap();
            let trial = plan.new_trial(&plan.order());
            trial.validate().unwrap();
            let count = |role| {
                let pieces = trial.arms.iter().flat_map(|arm| &arm.pieces);
                pieces.filter(|piece| piece.role == role).count()
            };
            assert_eq!(count(Role::Test), plan.test_pieces());
            let cloths: usize = plan
                .steps
                .iter()
                .map(|step| step.loads.len() * step.witnesses.len())
                .sum();
            assert_eq!(count(Role::Witness), cloths);
        }
    }

    #[test]
    fn steps_are_said_in_words() {
        let step = Step {
            arms: vec!["agent F".into()],
            agent: "fixing agent F".into(),
            amount: "2 tbsp".into(),
            water: "1 gal".into(),
            minutes: Some(20.0),
            ..Step::of(StepKind::AfterTreat)
        };
        assert_eq!(
            said(&step),
            "After-treatment of \"agent F\": fixing agent F, 2 tbsp to 1 gal, 20 min, each piece by itself"
        );
        assert_eq!(said(&Step::of(StepKind::Dry)), "Drying");
    }
}
