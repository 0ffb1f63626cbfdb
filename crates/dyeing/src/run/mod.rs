//! What happened while a run sheet was followed: clocks, temperatures, departures.
//!
//! A run is its sheet as it stood at the start and events, each with the instant at which it
//! happened. Events are added, never changed: a correction is one more event that takes an
//! earlier one's place. Clocks follow from the instants, so that they go on while nobody looks.
//! Instants are seconds since 1970-01-01 00:00 UTC and come from outside.

mod clock;
mod depart;
mod event;
mod rules;
mod sheet;

pub use clock::Clock;
pub use depart::{Departure, usual_departures};
pub use event::{Event, Noted, What};
pub use sheet::RunSheet;

use crate::run_sheet::Step;

/// A run: a sheet and what happened.
///
/// ```
/// use dyeing::run::{Event, Run, RunSheet, What};
/// let recipe = std::fs::read_to_string("../../docs/recipes/napkins.toml")?;
/// let plan = dyeing::Plan::of(&dyeing::Recipe::read(&recipe)?)?;
/// let begun = Event { number: 1, step: Some(1), at_s: 1_000, noted_s: 1_000, what: What::Started, of: None };
/// let run = Run::new(RunSheet::of(&plan), vec![begun]);
/// let soak = run.clock(1);
/// assert_eq!((soak.is_running(), soak.elapsed_s(1_000 + 600)), (true, 600));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Run {
    /// The sheet as it stood when the run began.
    pub sheet: RunSheet,
    events: Vec<Event>,
    noted: Vec<Noted>,
}

impl Run {
    /// Of a sheet and its events, in the order in which they were added.
    pub fn new(sheet: RunSheet, events: Vec<Event>) -> Self {
        let noted = event::standing(&events);
        Self {
            sheet,
            events,
            noted,
        }
    }

    /// Every event, corrected and withdrawn ones too, in the order in which they were added.
    pub fn events(&self) -> &[Event] {
        &self.events
    }

    /// What counts now, in the order in which it happened.
    pub fn noted(&self) -> &[Noted] {
        &self.noted
    }

    /// What counts of one step.
    pub fn noted_of(&self, step: u32) -> impl Iterator<Item = &Noted> {
        self.noted.iter().filter(move |n| n.step == Some(step))
    }

    /// The step of that number.
    pub fn step(&self, number: u32) -> Option<&Step> {
        self.sheet.steps.iter().find(|s| s.number == number)
    }

    /// The clock of a step; one that never ran for a step that there is not.
    pub fn clock(&self, step: u32) -> Clock {
        Clock::of(self.noted_of(step))
    }

    /// Whether the run was said to be over.
    pub fn is_finished(&self) -> bool {
        self.noted.iter().any(|n| n.what == What::Finished)
    }

    /// Steps whose clock runs.
    pub fn running(&self) -> Vec<&Step> {
        let steps = self.sheet.steps.iter();
        steps
            .filter(|s| self.clock(s.number).is_running())
            .collect()
    }

    /// The step that comes next: the first after all that began.
    pub fn next(&self) -> Option<&Step> {
        let began = |s: &&Step| self.clock(s.number).began_s.is_some();
        let last = self.sheet.steps.iter().rfind(began).map_or(0, |s| s.number);
        self.sheet.steps.iter().find(|s| s.number > last)
    }
}
