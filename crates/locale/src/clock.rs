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

/// The time of day of an RFC 3339 time, to the minute, by the locale that holds now; nothing where
/// there is none.
///
/// ```
/// assert_eq!(locale::time_at("2026-11-26T18:05:00Z").as_deref(), Some("18:05"));
/// assert_eq!(locale::time_at("2026-11-26"), None);
/// ```
pub fn time_at(time: &str) -> Option<String> {
    let (hour, rest) = time.split_once('T')?.1.split_once(':')?;
    let (hour, minute) = (hour.parse().ok()?, rest.get(..2)?.parse().ok()?);
    (hour < 24 && minute < 60).then(|| time_of_day(hour, minute))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_no_time_of_day_is_none() {
        for time in [
            "",
            "T",
            "2026-11-26T25:00:00Z",
            "2026-11-26T12:é",
            "T12",
            "T1:7",
        ] {
            assert_eq!(time_at(time), None, "{time}");
        }
    }

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
