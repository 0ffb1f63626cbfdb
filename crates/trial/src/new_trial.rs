//! A trial as a person enters it.

use crate::text;
use crate::{Role, TrialError};
use serde::{Deserialize, Serialize};
use std::collections::HashSet;

/// Arms a trial may have.
pub(crate) const MOST_ARMS: usize = 24;
/// Pieces an arm may have.
pub(crate) const MOST_PIECES: usize = 200;
/// Rounds a trial may plan.
pub(crate) const MOST_ROUNDS: u32 = 1000;
/// The largest margin that makes sense: about the difference of two hues.
pub(crate) const LARGEST_MARGIN_DE00: f64 = 50.0;
/// Characters of a name, title or code.
pub(crate) const LONGEST_NAME: usize = 200;
/// Characters of a question, treatment or method.
pub(crate) const LONGEST_TEXT: usize = 20_000;

/// A trial to be entered; the store gives it its number and address.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct NewTrial {
    /// Its title.
    pub title: String,
    /// What is asked, in words.
    pub question: String,
    /// The smallest difference that matters, CIEDE2000 units, above 0.
    pub margin_de00: f64,
    /// How many rounds are planned, 1 upward.
    pub rounds: u32,
    /// True for a demo: no such pieces were dyed.
    pub invented: bool,
    /// How pieces are dyed, washed and dried; may be empty.
    pub method: String,
    /// Its arms, one at least.
    pub arms: Vec<NewArm>,
}

/// An arm to be entered.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct NewArm {
    /// Its short name, unique in the trial.
    pub name: String,
    /// What is done to its pieces; may be empty.
    pub treatment: String,
    /// Its pieces, one test piece at least.
    pub pieces: Vec<NewPiece>,
}

/// A piece to be entered.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct NewPiece {
    /// What is written on its label, unique in the trial.
    pub code: String,
    /// What it is there for.
    pub role: Role,
    /// The load it shares with other pieces, if noted.
    pub load: Option<String>,
}

impl NewTrial {
    /// Whether this can be entered as a trial.
    ///
    /// # Errors
    /// The first field that can't be taken: empty or overlong text, a margin that
    /// is not above 0, no rounds, fewer than two arms, an arm without test pieces,
    /// a name or code given twice.
    pub fn validate(&self) -> Result<(), TrialError> {
        name("title", text::new_trial::the_title(), &self.title)?;
        text("question", text::new_trial::the_question(), &self.question)?;
        if self.question.trim().is_empty() {
            return wrong(
                "question",
                text::new_trial::write_down_the_question_the_trial(),
            );
        }
        text("method", text::new_trial::the_method(), &self.method)?;
        if !(self.margin_de00 > 0.0 && self.margin_de00 <= LARGEST_MARGIN_DE00) {
            return wrong(
                "margin_de00",
                text::new_trial::the_margin_must_lie_above_0(LARGEST_MARGIN_DE00),
            );
        }
        if !(1..=MOST_ROUNDS).contains(&self.rounds) {
            return wrong(
                "rounds",
                text::new_trial::plan_at_least_1_round(MOST_ROUNDS),
            );
        }
        if self.arms.len() < 2 {
            return wrong("arms", text::new_trial::a_trial_compares_give_it_two_arms());
        }
        if self.arms.len() > MOST_ARMS {
            return wrong(
                "arms",
                text::new_trial::a_trial_can_have_arms_at_most(MOST_ARMS),
            );
        }
        let mut names = HashSet::new();
        let mut codes = HashSet::new();
        for (i, arm) in self.arms.iter().enumerate() {
            arm.validate(i, &mut names, &mut codes)?;
        }
        Ok(())
    }
}

impl NewArm {
    fn validate<'a>(
        &'a self,
        i: usize,
        names: &mut HashSet<&'a str>,
        codes: &mut HashSet<&'a str>,
    ) -> Result<(), TrialError> {
        let at = format!("arms[{i}]");
        name(
            &format!("{at}.name"),
            &text::new_trial::the_name_of_arm(i + 1),
            &self.name,
        )?;
        text(
            &format!("{at}.treatment"),
            text::new_trial::the_treatment(),
            &self.treatment,
        )?;
        if !names.insert(self.name.trim()) {
            return wrong(
                format!("{at}.name"),
                text::new_trial::two_arms_are_called_give(self.name.trim()),
            );
        }
        if !self.pieces.iter().any(|piece| piece.role == Role::Test) {
            return wrong(
                format!("{at}.pieces"),
                text::new_trial::the_arm_has_no_test_piece_add(self.name.trim()),
            );
        }
        if self.pieces.len() > MOST_PIECES {
            return wrong(
                format!("{at}.pieces"),
                text::new_trial::an_arm_can_have_pieces_at_most(MOST_PIECES),
            );
        }
        for (j, piece) in self.pieces.iter().enumerate() {
            let field = format!("{at}.pieces[{j}].code");
            name(&field, text::new_trial::the_code_of_a_piece(), &piece.code)?;
            if !codes.insert(piece.code.trim()) {
                return wrong(
                    field,
                    text::new_trial::two_pieces_carry_the_code_give(piece.code.trim()),
                );
            }
            if let Some(load) = &piece.load {
                text(
                    &format!("{at}.pieces[{j}].load"),
                    text::new_trial::the_load(),
                    load,
                )?;
            }
        }
        Ok(())
    }
}

fn name(field: &str, what: &str, value: &str) -> Result<(), TrialError> {
    if value.trim().is_empty() {
        return wrong(field, text::new_trial::fill_in(what));
    }
    if value.chars().count() > LONGEST_NAME || value.chars().any(char::is_control) {
        return wrong(
            field,
            text::new_trial::keep_to_one_line_of_characters(what, LONGEST_NAME),
        );
    }
    Ok(())
}

fn text(field: &str, what: &str, value: &str) -> Result<(), TrialError> {
    if value.chars().count() > LONGEST_TEXT {
        return wrong(
            field,
            text::new_trial::keep_to_characters_at_most(what, LONGEST_TEXT),
        );
    }
    Ok(())
}

fn wrong<T>(field: impl Into<String>, message: impl Into<String>) -> Result<T, TrialError> {
    Err(TrialError {
        field: field.into(),
        message: message.into(),
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn piece(code: &str, role: Role) -> NewPiece {
        NewPiece {
            code: code.into(),
            role,
            load: None,
        }
    }

    fn arm(name: &str, codes: &[&str]) -> NewArm {
        NewArm {
            name: name.into(),
            treatment: String::new(),
            pieces: codes.iter().map(|code| piece(code, Role::Test)).collect(),
        }
    }

    fn good() -> NewTrial {
        NewTrial {
            title: "Rinse or not".into(),
            question: "Does a second rinse keep the red?".into(),
            margin_de00: 1.0,
            rounds: 5,
            invented: false,
            method: String::new(),
            arms: vec![
                arm("one rinse", &["A1", "A2"]),
                arm("two rinses", &["B1", "B2"]),
            ],
        }
    }

    #[test]
    fn a_sound_trial_passes() {
        assert_eq!(good().validate(), Ok(()));
    }

    type Fault = (&'static str, fn(&mut NewTrial));

    #[test]
    fn each_fault_names_its_field() {
        let faults: [Fault; 9] = [
            ("title", |t| t.title = "  ".into()),
            ("question", |t| t.question.clear()),
            ("margin_de00", |t| t.margin_de00 = 0.0),
            ("margin_de00", |t| t.margin_de00 = f64::NAN),
            ("rounds", |t| t.rounds = 0),
            ("arms", |t| t.arms.truncate(1)),
            ("arms[1].name", |t| t.arms[1].name = "one rinse ".into()),
            ("arms[0].pieces", |t| t.arms[0].pieces.clear()),
            ("arms[1].pieces[1].code", |t| {
                t.arms[1].pieces[1].code = "A2".into()
            }),
        ];
        for (field, spoil) in faults {
            let mut trial = good();
            spoil(&mut trial);
            assert_eq!(trial.validate().unwrap_err().field, field);
        }
    }
}
