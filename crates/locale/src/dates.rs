//! How a day is written.

use crate::text;
use crate::{Locale, current};
use serde::{Deserialize, Serialize};

/// An order and a dress of day, month and year.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum DateFormat {
    /// `2026-11-26`, as ISO 8601 has it.
    #[default]
    Iso,
    /// `26.11.2026`.
    Dotted,
    /// `26/11/2026`.
    DayFirst,
    /// `11/26/2026`.
    MonthFirst,
    /// `26 Nov 2026`.
    DayNamed,
    /// `Nov 26, 2026`.
    MonthNamed,
}

impl DateFormat {
    /// Every format, in the order in which they are offered.
    pub const ALL: [Self; 6] = [
        Self::Iso,
        Self::Dotted,
        Self::DayFirst,
        Self::MonthFirst,
        Self::DayNamed,
        Self::MonthNamed,
    ];

    /// Its short name, as forms send it.
    pub const fn key(self) -> &'static str {
        match self {
            Self::Iso => "iso",
            Self::Dotted => "dotted",
            Self::DayFirst => "day_first",
            Self::MonthFirst => "month_first",
            Self::DayNamed => "day_named",
            Self::MonthNamed => "month_named",
        }
    }

    /// Which figure is what, where a reader could take the day for the month.
    pub fn order(self) -> Option<&'static str> {
        match self {
            Self::DayFirst | Self::Dotted => Some(text::dates::day_month_year()),
            Self::MonthFirst => Some(text::dates::month_day_year()),
            Self::Iso | Self::DayNamed | Self::MonthNamed => None,
        }
    }

    /// A day by this format; `month` from 1 to 12, `date` from 1 to 31.
    fn write(self, year: u16, month: u8, date: u8) -> String {
        let name = month_named(month);
        match self {
            Self::Iso => format!("{year:04}-{month:02}-{date:02}"),
            Self::Dotted => format!("{date:02}.{month:02}.{year:04}"),
            Self::DayFirst => format!("{date:02}/{month:02}/{year:04}"),
            Self::MonthFirst => format!("{month:02}/{date:02}/{year:04}"),
            Self::DayNamed => format!("{date} {name} {year:04}"),
            Self::MonthNamed => format!("{name} {date}, {year:04}"),
        }
    }
}

/// A month's short name; `month` from 1 to 12.
fn month_named(month: u8) -> &'static str {
    use crate::text::dates;
    match month {
        1 => dates::jan(),
        2 => dates::feb(),
        3 => dates::mar(),
        4 => dates::apr(),
        5 => dates::may(),
        6 => dates::jun(),
        7 => dates::jul(),
        8 => dates::aug(),
        9 => dates::sep(),
        10 => dates::oct(),
        11 => dates::nov(),
        _ => dates::dec(),
    }
}

/// The day of a date or a time by ISO 8601 (`2026-11-26`, `2026-11-26T18:05:00Z`); whatever else
/// stands there comes back as it is.
///
/// ```
/// use locale::{DateFormat, Locale, day_in};
/// let british = Locale { dates: DateFormat::DayFirst, ..Locale::DATA };
/// assert_eq!(day_in(&british, "2026-11-26T18:05:00Z"), "26/11/2026");
/// assert_eq!(day_in(&british, "in spring"), "in spring");
/// ```
///
/// # Source
/// ISO 8601-1: the calendar date in its extended format.
pub fn day_in(locale: &Locale, time: &str) -> String {
    match calendar_date(time) {
        Some((year, month, date)) => locale.dates.write(year, month, date),
        None => time.to_owned(),
    }
}

/// The same by the locale that holds now.
pub fn day(time: &str) -> String {
    day_in(&current(), time)
}

fn calendar_date(time: &str) -> Option<(u16, u8, u8)> {
    let date = time.split_once('T').map_or(time, |(date, _)| date);
    let plain = date
        .bytes()
        .all(|byte| byte.is_ascii_digit() || byte == b'-');
    let [year, month, date] = date.split('-').collect::<Vec<_>>().try_into().ok()?;
    let sized = [year, month, date].map(str::len) == [4, 2, 2];
    let (year, month, date) = (year.parse().ok()?, month.parse().ok()?, date.parse().ok()?);
    let fits = (1..=12).contains(&month) && (1..=31).contains(&date);
    (plain && sized && fits).then_some((year, month, date))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_format_writes_the_same_day() {
        let written = DateFormat::ALL.map(|dates| {
            let locale = Locale {
                dates,
                ..Locale::DATA
            };
            day_in(&locale, "2026-03-05T00:30:00Z")
        });
        assert_eq!(
            written,
            [
                "2026-03-05",
                "05.03.2026",
                "05/03/2026",
                "03/05/2026",
                "5 Mar 2026",
                "Mar 5, 2026"
            ]
        );
    }

    #[test]
    fn what_is_no_day_is_left_as_it_is() {
        let locale = Locale {
            dates: DateFormat::MonthNamed,
            ..Locale::DATA
        };
        for text in [
            "",
            "T",
            "2026",
            "2026-13-01",
            "2026-00-10",
            "2026-01-32",
            "2026-1-2",
            "+026-01-02",
            "26-11-2026",
            "2026-11-26-27",
            "тест",
        ] {
            assert_eq!(day_in(&locale, text), text);
        }
    }

    #[test]
    fn whatever_can_be_misread_says_its_order() {
        for dates in DateFormat::ALL {
            let locale = Locale {
                dates,
                ..Locale::DATA
            };
            // A day and a month that could be swapped.
            let [a, b] = ["2026-03-05", "2026-05-03"].map(|time| day_in(&locale, time));
            let figures = !a.contains("Mar") && !a.starts_with("2026") && a != b;
            assert_eq!(dates.order().is_some(), figures, "{a}");
        }
    }
}
