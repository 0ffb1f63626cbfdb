//! How a time of day is written.

use crate::text;
use crate::{Locale, current};
use serde::{Deserialize, Serialize};

/// A way to count hours.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Clock {
    /// `18:05`.
    #[default]
    Hours24,
    /// `6:05 pm`.
    Hours12,
}

impl Clock {
    /// Both, as they are offered.
    pub const ALL: [Self; 2] = [Self::Hours24, Self::Hours12];

    /// Its short name, as forms send it.
    pub const fn key(self) -> &'static str {
        match self {
            Self::Hours24 => "hours24",
            Self::Hours12 => "hours12",
        }
    }
}

/// A time of day; `hour` from 0 to 23, `minute` from 0 to 59. Midnight is 12:00 am, noon 12:00 pm.
///
/// ```
/// use locale::{Clock, Locale, time_of_day_in};
/// let american = Locale { clock: Clock::Hours12, ..Locale::DATA };
/// assert_eq!(time_of_day_in(&Locale::DATA, 9, 5), "09:05");
/// assert_eq!(time_of_day_in(&american, 9, 5), "9:05 am");
/// assert_eq!(time_of_day_in(&american, 0, 30), "12:30 am");
/// ```
pub fn time_of_day_in(locale: &Locale, hour: u8, minute: u8) -> String {
    match locale.clock {
        Clock::Hours24 => format!("{hour:02}:{minute:02}"),
        Clock::Hours12 => {
            let half = if hour < 12 {
                text::clock::am()
            } else {
                text::clock::pm()
            };
            let hour = match hour % 12 {
                0 => 12,
                hour => hour,
            };
            format!("{hour}:{minute:02} {half}")
        }
    }
}

/// The same by the locale that holds now.
pub fn time_of_day(hour: u8, minute: u8) -> String {
    time_of_day_in(&current(), hour, minute)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn noon_and_midnight_are_told_apart() {
        let american = Locale {
            clock: Clock::Hours12,
            ..Locale::DATA
        };
        let twelve = [(0, 0), (11, 59), (12, 0), (12, 1), (23, 59)];
        let written = twelve.map(|(hour, minute)| time_of_day_in(&american, hour, minute));
        assert_eq!(
            written,
            ["12:00 am", "11:59 am", "12:00 pm", "12:01 pm", "11:59 pm"]
        );
    }
}
