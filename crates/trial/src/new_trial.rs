//! A trial as a person enters it.

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
        name("title", "the title", &self.title)?;
        text("question", "the question", &self.question)?;
        if self.question.trim().is_empty() {
            return wrong(
                "question",
                "Write down the question the trial is to answer.",
            );
        }
        text("method", "the method", &self.method)?;
        if !(self.margin_de00 > 0.0 && self.margin_de00 <= LARGEST_MARGIN_DE00) {
            return wrong(
                "margin_de00",
                format!(
                    "The margin must lie above 0 and at most at {LARGEST_MARGIN_DE00}; \
                     1 is a difference that can just be seen side by side."
                ),
            );
        }
        if !(1..=MOST_ROUNDS).contains(&self.rounds) {
            return wrong(
                "rounds",
                format!("Plan at least 1 round and at most {MOST_ROUNDS}."),
            );
        }
        if self.arms.len() < 2 {
            return wrong(
                "arms",
                "A trial compares: give it two arms at least, one of them without the extra step.",
            );
        }
        if self.arms.len() > MOST_ARMS {
            return wrong(
                "arms",
                format!("A trial can have {MOST_ARMS} arms at most."),
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
            &format!("the name of arm {}", i + 1),
            &self.name,
        )?;
        text(&format!("{at}.treatment"), "the treatment", &self.treatment)?;
        if !names.insert(self.name.trim()) {
            return wrong(
                format!("{at}.name"),
                format!(
                    "Two arms are called \"{}\": give each its own name.",
                    self.name.trim()
                ),
            );
        }
        if !self.pieces.iter().any(|piece| piece.role == Role::Test) {
            return wrong(
                format!("{at}.pieces"),
                format!(
                    "The arm \"{}\" has no test piece: add one at least.",
                    self.name.trim()
                ),
            );
        }
        if self.pieces.len() > MOST_PIECES {
            return wrong(
                format!("{at}.pieces"),
                format!("An arm can have {MOST_PIECES} pieces at most."),
            );
        }
        for (j, piece) in self.pieces.iter().enumerate() {
            let field = format!("{at}.pieces[{j}].code");
            name(&field, "the code of a piece", &piece.code)?;
            if !codes.insert(piece.code.trim()) {
                return wrong(
                    field,
                    format!(
                        "Two pieces carry the code \"{}\": give each its own.",
                        piece.code.trim()
                    ),
                );
            }
            if let Some(load) = &piece.load {
                text(&format!("{at}.pieces[{j}].load"), "the load", load)?;
            }
        }
        Ok(())
    }
}

fn name(field: &str, what: &str, value: &str) -> Result<(), TrialError> {
    if value.trim().is_empty() {
        return wrong(field, format!("Fill in {what}."));
    }
    if value.chars().count() > LONGEST_NAME || value.chars().any(char::is_control) {
        return wrong(
            field,
            format!("Keep {what} to one line of {LONGEST_NAME} characters at most."),
        );
    }
    Ok(())
}

fn text(field: &str, what: &str, value: &str) -> Result<(), TrialError> {
    if value.chars().count() > LONGEST_TEXT {
        return wrong(
            field,
            format!("Keep {what} to {LONGEST_TEXT} characters at most."),
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
