//! Which events a run takes.

use super::{Run, What};
use crate::error::DyeingError;

/// Longer than this is no note, characters.
const MOST_TEXT: usize = 500;
/// A clock that runs ahead by less is only a clock that runs ahead, s.
const AHEAD_S: i64 = 60;
/// Further back nobody remembers to the minute, s.
const BACK_S: i64 = 7 * 24 * 3600;

fn refuse<T>(sentence: impl Into<String>) -> Result<T, DyeingError> {
    Err(DyeingError::Recipe(sentence.into()))
}

impl Run {
    /// Whether an event may be added: yes, or that it says nothing new (a button pressed twice).
    ///
    /// # Errors
    /// Says what speaks against it: a step that there is not, a time to come or before the clock's
    /// start, a run that is over, a clock that still runs, an empty or endless text.
    pub fn takes(
        &self,
        step: Option<u32>,
        what: &What,
        of: Option<u32>,
        at_s: i64,
        now_s: i64,
    ) -> Result<bool, DyeingError> {
        if let Some(number) = step
            && self.step(number).is_none()
        {
            return refuse(format!(
                "The sheet has no step {number}; its steps go to {}.",
                self.sheet.steps.len()
            ));
        }
        if at_s > now_s + AHEAD_S {
            return refuse("This would happen in the time to come. Note it when it has happened.");
        }
        if at_s < now_s - BACK_S {
            return refuse(
                "That is more than a week ago. Write it as a note with its date instead.",
            );
        }
        text(what)?;
        if let Some(of) = of {
            return self.corrects(step, what, of, at_s);
        }
        if self.is_finished() && matches!(what, What::Started | What::Stopped) {
            return refuse("This run is over. Take back \"run finished\" first if it is to go on.");
        }
        match (step, what) {
            (Some(number), What::Started) => Ok(!self.clock(number).is_running()),
            (Some(number), What::Stopped) => self.stops(number, at_s),
            (Some(_), What::Temperature(_)) | (_, What::Departed(_) | What::Remarked(_)) => {
                Ok(true)
            }
            (None, What::Finished) => match self.running().first() {
                Some(step) => refuse(format!(
                    "The clock of step {}, {}, still runs. Stop it first.",
                    step.number, step.title
                )),
                None => Ok(!self.is_finished()),
            },
            (_, What::Withdrawn(_)) => refuse("Say which note is to be taken back."),
            (None, _) => refuse("Say which step this belongs to."),
            (Some(_), What::Finished) => refuse("A run is finished as a whole."),
        }
    }

    fn stops(&self, number: u32, at_s: i64) -> Result<bool, DyeingError> {
        let clock = self.clock(number);
        match (clock.running_since_s, clock.began_s) {
            (Some(since_s), _) if at_s < since_s => refuse(format!(
                "Step {number} would stop before it began. Give a later time, or correct when it began."
            )),
            (Some(_), _) => Ok(true),
            (None, Some(_)) => Ok(false),
            (None, None) => refuse(format!(
                "The clock of step {number} was never started. Start it, with how many minutes ago it began."
            )),
        }
    }

    fn corrects(
        &self,
        step: Option<u32>,
        what: &What,
        of: u32,
        at_s: i64,
    ) -> Result<bool, DyeingError> {
        let Some(place) = self.noted.iter().position(|n| n.number == of) else {
            return refuse(format!(
                "There is no note {of} that still counts, so it can't be corrected."
            ));
        };
        let earlier = &self.noted[place];
        if earlier.step != step {
            return refuse("That note belongs to another step.");
        }
        if matches!(what, What::Withdrawn(_)) {
            return Ok(true);
        }
        if !what.is_like(&earlier.what) {
            return refuse(
                "A note can only be corrected by one of its kind. Take it back and note the other.",
            );
        }
        if *what == earlier.what && at_s == earlier.at_s {
            return Ok(false);
        }
        // A start after its stop would leave a clock that makes no sense.
        let mut noted = self.noted.clone();
        noted[place].at_s = at_s;
        noted.sort_by_key(|n| (n.at_s, n.number));
        let order = |all: &[super::Noted]| -> Vec<u32> {
            let clock = all
                .iter()
                .filter(|n| n.step == step && matches!(n.what, What::Started | What::Stopped));
            clock.map(|n| n.number).collect()
        };
        if order(&noted) != order(&self.noted) {
            return refuse(
                "With that time the step's starts and stops would be out of order. Give another time.",
            );
        }
        Ok(true)
    }
}

/// Refuses texts that say nothing or too much.
fn text(what: &What) -> Result<(), DyeingError> {
    let (What::Departed(text) | What::Remarked(text)) = what else {
        return Ok(());
    };
    if text.trim().is_empty() {
        return refuse("The note is empty. Write a few words, or tap one that is offered.");
    }
    let length = text.chars().count();
    if length > MOST_TEXT {
        return refuse(format!(
            "The note has {length} characters; {MOST_TEXT} is the most. Make it two."
        ));
    }
    Ok(())
}
