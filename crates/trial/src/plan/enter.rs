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
            pieces.extend(self.witnesses(order, place));
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

    fn witnesses(&self, order: &Order, arm: usize) -> Vec<NewPiece> {
        let washes = self.steps.iter().filter(|step| step.kind == StepKind::Wash);
        let mut witnesses = Vec::new();
        for step in washes {
            let with = |place: &str, load: Option<&String>| {
                let cloths = step.witnesses.iter();
                let witness = |cloth: &String| NewPiece {
                    code: format!("{place}, {cloth}"),
                    role: Role::Witness,
                    load: load.cloned(),
                };
                cloths.map(witness).collect::<Vec<_>>()
            };
            for load in &step.loads {
                let here = order
                    .pieces
                    .iter()
                    .filter(|piece| wash_of(piece) == Some(load));
                if here.map(|piece| piece.piece.arm).min() == Some(arm) {
                    witnesses.extend(with(load, Some(load)));
                }
            }
            if step.loads.is_empty() && step.is_of(&self.arms[arm].name) {
                let own = order.pieces.iter().map(|piece| &piece.piece);
                let mut own: Vec<&str> = own
                    .filter(|piece| piece.arm == arm && piece.role == Role::Test)
                    .map(|piece| piece.code.as_str())
                    .collect();
                own.sort_by_key(|code| (code.len(), *code));
                witnesses.extend(own.into_iter().flat_map(|piece| with(piece, None)));
            }
        }
        witnesses
    }

    /// The steps in words, one a line.
    fn method(&self) -> String {
        let lines: Vec<String> = self.steps.iter().map(said).collect();
        lines.join("\n")
    }
}

fn wash_of(piece: &Allotted) -> Option<&str> {
    let wash = Kind::Load(StepKind::Wash, 0);
    let found = piece.shares.iter().find(|(kind, _)| *kind == wash);
    found.map(|(_, load)| load.as_str())
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
