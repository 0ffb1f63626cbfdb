//! Which events a run takes.

use super::{Run, What};
use crate::error::DyeingError;
use crate::text;

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
            return refuse(text::run::the_sheet_has_no_step_its_steps(
                number,
                self.sheet.steps.len(),
            ));
        }
        if at_s > now_s + AHEAD_S {
            return refuse(text::run::this_would_happen_in_the_time());
        }
        if at_s < now_s - BACK_S {
            return refuse(text::run::that_is_more_than_a_week_ago());
        }
        text(what)?;
        if let Some(of) = of {
            return self.corrects(step, what, of, at_s);
        }
        if self.is_finished() && matches!(what, What::Started | What::Stopped) {
            return refuse(text::run::this_run_is_over_take_back_run());
        }
        match (step, what) {
            (Some(number), What::Started) => Ok(!self.clock(number).is_running()),
            (Some(number), What::Stopped) => self.stops(number, at_s),
            (Some(_), What::Temperature(_)) | (_, What::Departed(_) | What::Remarked(_)) => {
                Ok(true)
            }
            (None, What::Finished) => match self.running().first() {
                Some(step) => refuse(text::run::the_clock_of_step_still_runs_stop(
                    step.number,
                    &step.title,
                )),
                None => Ok(!self.is_finished()),
            },
            (_, What::Withdrawn(_)) => refuse(text::run::say_which_note_is_to_be_taken()),
            (None, _) => refuse(text::run::say_which_step_this_belongs()),
            (Some(_), What::Finished) => refuse(text::run::a_run_is_finished_as_a_whole()),
        }
    }

    fn stops(&self, number: u32, at_s: i64) -> Result<bool, DyeingError> {
        let clock = self.clock(number);
        match (clock.running_since_s, clock.began_s) {
            (Some(since_s), _) if at_s < since_s => {
                refuse(text::run::step_would_stop_before_it_began_give(number))
            }
            (Some(_), _) => Ok(true),
            (None, Some(_)) => Ok(false),
            (None, None) => refuse(text::run::the_clock_of_step_was_never_started(number)),
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
            return refuse(text::run::there_is_no_note_that_still_counts(of));
        };
        let earlier = &self.noted[place];
        if earlier.step != step {
            return refuse(text::run::that_note_belongs_to_another_step());
        }
        if matches!(what, What::Withdrawn(_)) {
            return Ok(true);
        }
        if !what.is_like(&earlier.what) {
            return refuse(text::run::a_note_can_only_be_corrected());
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
            return refuse(text::run::with_that_time_the_steps_starts());
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
        return refuse(text::run::the_note_is_empty_write_a_few());
    }
    let length = text.chars().count();
    if length > MOST_TEXT {
        return refuse(text::run::the_note_has_characters_is_the_most(
            length, MOST_TEXT,
        ));
    }
    Ok(())
}
