//! How often each verdict came about over trials drawn at random.

use trial::decide::Verdict;

/// How often each thing came about.
#[derive(Default)]
pub struct Count {
    pub trials: usize,
    pub visible: usize,
    pub small: usize,
    pub alike: usize,
    pub open: usize,
    /// A difference was shown, however large.
    pub shown: usize,
    /// The interval held the truth.
    pub covered: usize,
}

impl Count {
    /// A count as a share of all trials.
    pub fn share(&self, count: usize) -> f64 {
        count as f64 / self.trials as f64
    }

    /// Adds a trial: its verdict, the interval of its difference, and the true one.
    pub fn add(&mut self, verdict: Verdict, [low, high]: [f64; 2], truth: f64) {
        self.trials += 1;
        match verdict {
            Verdict::Visible => self.visible += 1,
            Verdict::Small => self.small += 1,
            Verdict::Alike => self.alike += 1,
            Verdict::Open => self.open += 1,
        }
        self.shown += usize::from(low > 0.0 || high < 0.0);
        let rounding = 1e-6;
        self.covered += usize::from(low <= truth + rounding && truth <= high + rounding);
    }
}
