//! A step's clock.

use super::{Noted, What};

/// How long a step took or has been going on; it may have been stopped and started again.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Clock {
    /// When it first began, s since 1970.
    pub began_s: Option<i64>,
    /// Since when it runs now, s since 1970.
    pub running_since_s: Option<i64>,
    /// When it last stopped, s since 1970.
    pub stopped_s: Option<i64>,
    /// How long it had run when it last stopped, s.
    pub ran_s: i64,
}

impl Clock {
    /// From starts and stops in the order of time; a start while it runs and a stop while it
    /// doesn't change nothing.
    pub(super) fn of<'a>(noted: impl Iterator<Item = &'a Noted>) -> Self {
        let mut clock = Self::default();
        for one in noted {
            match (&one.what, clock.running_since_s) {
                (What::Started, None) => {
                    clock.began_s = clock.began_s.or(Some(one.at_s));
                    clock.running_since_s = Some(one.at_s);
                }
                (What::Stopped, Some(since_s)) => {
                    clock.ran_s += one.at_s - since_s;
                    clock.running_since_s = None;
                    clock.stopped_s = Some(one.at_s);
                }
                _ => {}
            }
        }
        clock
    }

    /// Whether it runs.
    pub fn is_running(&self) -> bool {
        self.running_since_s.is_some()
    }

    /// How long it has run, s.
    pub fn elapsed_s(&self, now_s: i64) -> i64 {
        let going = self
            .running_since_s
            .map_or(0, |since_s| (now_s - since_s).max(0));
        self.ran_s + going
    }

    /// How long is left of a planned time, s; below 0 when it is over.
    pub fn left_s(&self, planned_min: f64, now_s: i64) -> i64 {
        // Planned times are hours at most.
        libm::round(planned_min * 60.0) as i64 - self.elapsed_s(now_s)
    }
}
