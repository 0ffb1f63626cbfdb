//! The round at which a level is passed.

/// A number of rounds, as far as it can be told.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Round {
    /// Within the rounds that were looked at.
    Seen(f64),
    /// Beyond the last round looked at, up to twice as far: the curve, not the eye.
    Extrapolated(f64),
    /// Not within twice the rounds looked at, or never; no number is given.
    Later,
}

impl Round {
    pub(super) fn of(rounds: f64, last: f64) -> Self {
        if rounds <= last {
            Self::Seen(rounds)
        } else if rounds <= super::fit::FURTHEST * last {
            Self::Extrapolated(rounds)
        } else {
            Self::Later
        }
    }

    /// The number, where one is given.
    pub fn rounds(self) -> Option<f64> {
        match self {
            Self::Seen(rounds) | Self::Extrapolated(rounds) => Some(rounds),
            Self::Later => None,
        }
    }
}

/// The round at which a level is passed, with its interval.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Passing {
    /// Where the curve passes the level.
    pub estimate: Round,
    /// Lower and upper end of the interval; none where nothing measures chance.
    pub interval: Option<(Round, Round)>,
}
