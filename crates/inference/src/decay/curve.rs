//! The curve itself.

/// First-order decay from 1 to a floor.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Curve {
    /// The share that stays for good, S_inf: 0 to 1, 1 for no decay at all.
    pub floor: f64,
    /// How fast the rest leaves, k per round: 0 upward.
    pub rate: f64,
}

impl Curve {
    /// No decay.
    pub const FLAT: Self = Self {
        floor: 1.0,
        rate: 0.0,
    };

    /// The share left after so many rounds (0 upward).
    ///
    /// ```
    /// let curve = inference::decay::Curve { floor: 0.6, rate: 0.5 };
    /// assert_eq!(format!("{:.4}", curve.left(2.0)), "0.7472");
    /// ```
    pub fn left(&self, rounds: f64) -> f64 {
        self.floor + (1.0 - self.floor) * libm::exp(-self.rate * rounds)
    }

    /// After how many rounds no more than `level` is left; none where the curve stays
    /// above it for good. 0 for a level of 1 or more.
    ///
    /// ```
    /// let curve = inference::decay::Curve { floor: 0.6, rate: 0.5 };
    /// assert_eq!(format!("{:.2}", curve.rounds_to(0.7).unwrap()), "2.77");
    /// assert_eq!(curve.rounds_to(0.6), None);
    /// ```
    pub fn rounds_to(&self, level: f64) -> Option<f64> {
        if level >= 1.0 {
            return Some(0.0);
        }
        if level <= self.floor || self.rate <= 0.0 {
            return None;
        }
        Some(libm::log((1.0 - self.floor) / (level - self.floor)) / self.rate)
    }
}
