//! Instants and lengths of time as a run's pages write them.

use crate::text;
use jiff::{Timestamp, tz::TimeZone};

/// Now, s since 1970.
pub(crate) fn now_s() -> i64 {
    Timestamp::now().as_second()
}

/// The time of day here, with the day where it is another one than today.
pub(crate) fn of_day(at_s: i64, now_s: i64) -> String {
    let here = |at_s: i64| {
        let at = Timestamp::from_second(at_s).ok()?;
        Some(at.to_zoned_datetime(TimeZone::system()))
    };
    match (here(at_s), here(now_s)) {
        (Some(at), Some(now)) if at.date() == now.date() => clock(at.hour(), at.minute()),
        (Some(at), _) => format!(
            "{} {}",
            locale::day(&at.date().to_string()),
            clock(at.hour(), at.minute())
        ),
        (None, _) => text::run::at_a_time_that_no_calendar().to_owned(),
    }
}

fn clock(hour: i8, minute: i8) -> String {
    // A calendar's hours and minutes are none below 0.
    locale::time_of_day(hour.unsigned_abs(), minute.unsigned_abs())
}

/// The instant of a time of day typed for a note of about `near_s`: the nearest one that the clock
/// on the wall showed then.
pub(crate) fn read(typed: &str, near_s: i64) -> Option<i64> {
    let typed = typed.trim().to_lowercase();
    let half = ["am", "pm"].into_iter().find(|half| typed.ends_with(half));
    let digits = half.map_or(typed.as_str(), |half| typed.trim_end_matches(half));
    let (hour, minute) = digits.trim().split_once(':')?;
    let hour: i8 = hour.parse().ok()?;
    let hour = match half {
        None => hour,
        Some(_) if !(1..=12).contains(&hour) => return None,
        Some("pm") => hour % 12 + 12,
        Some(_) => hour % 12,
    };
    let near = Timestamp::from_second(near_s)
        .ok()?
        .to_zoned_datetime(TimeZone::system());
    let time = jiff::civil::Time::new(hour, minute.parse().ok()?, 0, 0).ok()?;
    [-1, 0, 1]
        .into_iter()
        .filter_map(|days| {
            let day = near.date().checked_add(jiff::Span::new().days(days)).ok()?;
            let at = day
                .to_datetime(time)
                .to_zoned_datetime(TimeZone::system())
                .ok()?;
            Some(at.timestamp().as_second())
        })
        .min_by_key(|at_s| (at_s - near_s).abs())
}

/// Minutes and seconds, with hours where there are any, as in `1:02:03`.
pub(crate) fn length(seconds: i64) -> String {
    let (all, seconds) = (seconds.abs() / 60, seconds.abs() % 60);
    match (all / 60, all % 60) {
        (0, minutes) => format!("{minutes}:{seconds:02}"),
        (hours, minutes) => format!("{hours}:{minutes:02}:{seconds:02}"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lengths_read_like_a_clock() {
        assert_eq!(length(0), "0:00");
        assert_eq!(length(65), "1:05");
        assert_eq!(length(-125), "2:05");
        assert_eq!(length(3 * 3600 + 7), "3:00:07");
    }

    #[test]
    fn a_typed_time_is_the_nearest_one() {
        let now = now_s() / 60 * 60;
        for back in [0, 60, 3 * 3600, 11 * 3600] {
            let typed = of_day(now - back, now - back);
            assert_eq!(read(&typed, now), Some(now - back), "{typed}");
        }
        let american = locale::Locale {
            clock: locale::Clock::Hours12,
            ..locale::Locale::DATA
        };
        for back in [0, 3 * 3600, 11 * 3600] {
            let typed = locale::within(american, || of_day(now - back, now - back));
            assert!(typed.ends_with('m'), "{typed}");
            assert_eq!(read(&typed, now), Some(now - back), "{typed}");
        }
        for nonsense in [
            "", "noon", "25:00", "12:60", "12", "-1:00", "0:30 am", "13:00 pm", "pm", ":pm",
        ] {
            assert_eq!(read(nonsense, now), None, "{nonsense}");
        }
    }
}
