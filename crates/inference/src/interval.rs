//! A range of values that the data leave possible.

/// A closed range.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Interval {
    /// Its lower end.
    pub low: f64,
    /// Its upper end.
    pub high: f64,
}

impl Interval {
    /// Whether the value lies in it, ends included.
    pub fn contains(self, value: f64) -> bool {
        self.low <= value && value <= self.high
    }
}
