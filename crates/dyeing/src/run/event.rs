//! What happened, and what of it still counts.

use serde::{Deserialize, Serialize};

use crate::Celsius;

/// What happened.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum What {
    /// A step's clock was started.
    Started,
    /// A step's clock was stopped.
    Stopped,
    /// The bath was so warm.
    Temperature(Celsius),
    /// Something was done otherwise than the sheet says.
    Departed(String),
    /// Something else worth keeping.
    Remarked(String),
    /// The run is over.
    Finished,
    /// An earlier event doesn't count, with the reason.
    Withdrawn(String),
}

/// One event of a run.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Event {
    /// Its number in the run, from 1.
    pub number: u32,
    /// The step it belongs to; nothing for the run as a whole.
    pub step: Option<u32>,
    /// When it happened, s since 1970.
    pub at_s: i64,
    /// When it was noted, s since 1970.
    pub noted_s: i64,
    /// What happened.
    pub what: What,
    /// Number of the earlier event that it takes the place of, or that it withdraws.
    pub of: Option<u32>,
}

/// An event as it counts now.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Noted {
    /// Number of the event that was first noted.
    pub number: u32,
    /// The step it belongs to.
    pub step: Option<u32>,
    /// When it happened, s since 1970.
    pub at_s: i64,
    /// What happened.
    pub what: What,
    /// Whether a later event corrected it.
    pub corrected: bool,
}

impl What {
    /// Whether both are of one kind, so that one may take the other's place.
    pub fn is_like(&self, other: &Self) -> bool {
        std::mem::discriminant(self) == std::mem::discriminant(other)
    }
}

/// What counts, in the order in which it happened; what happened at one instant stays in the order
/// in which it was noted.
pub(super) fn standing(events: &[Event]) -> Vec<Noted> {
    let mut noted: Vec<Noted> = Vec::new();
    for event in events {
        let place = event
            .of
            .and_then(|of| noted.iter().position(|n| n.number == of));
        match (&event.what, place) {
            (What::Withdrawn(_), Some(place)) => {
                noted.remove(place);
            }
            (What::Withdrawn(_), None) => {}
            (what, Some(place)) => {
                noted[place].at_s = event.at_s;
                noted[place].what = what.clone();
                noted[place].corrected = true;
            }
            (what, None) if event.of.is_none() => noted.push(Noted {
                number: event.number,
                step: event.step,
                at_s: event.at_s,
                what: what.clone(),
                corrected: false,
            }),
            // A correction of what was withdrawn before corrects nothing.
            (_, None) => {}
        }
    }
    noted.sort_by_key(|n| (n.at_s, n.number));
    noted
}
