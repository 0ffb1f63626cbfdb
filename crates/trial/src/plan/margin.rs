//! The smallest difference that matters, as a number or as a grade.

use crate::text;
use colour::grade::Grade;
use serde::{Deserialize, Serialize, de::IgnoredAny};
use std::fmt;

/// Differences of the grey scale's pairs for change in colour, CIELAB units, by
/// half-steps of the grade from 2 (grade 1) to 9 (grade 4-5).
///
/// # Source
/// ISO 105-A02:1993.
const STEPS_CIELAB: [f64; 8] = [13.6, 9.6, 6.8, 4.8, 3.4, 2.5, 1.7, 0.8];
const FIRST_HALF_STEP: u8 = 2;

/// A margin as a person gives it: `1.7` in CIEDE2000 units, or `"grade 4"`.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(try_from = "Written", into = "Written")]
pub enum Margin {
    /// CIEDE2000 units, above 0.
    De00(f64),
    /// A pair of the grey scale for change in colour, 4-5 downward.
    Grade(Grade),
}

impl Margin {
    /// In CIEDE2000 units. A grade stands for its pair on the grey scale: greys
    /// that differ in lightness alone, for which CIEDE2000 near the middle of the
    /// lightness scale and CIELAB agree.
    pub fn de00(self) -> f64 {
        match self {
            Self::De00(value) => value,
            Self::Grade(grade) => of_grade(grade),
        }
    }

    /// The grade whose pair on the grey scale is nearest.
    pub fn nearest_grade(self) -> Grade {
        let off = |grade| (of_grade(grade) - self.de00()).abs();
        (FIRST_HALF_STEP..=10)
            .map(Grade::from_half_steps)
            .min_by(|a, b| off(*a).total_cmp(&off(*b)))
            .unwrap_or(Grade::from_half_steps(10))
    }
}

fn of_grade(grade: Grade) -> f64 {
    let half_steps = (grade.value() * 2.0) as u8;
    let place = usize::from(half_steps.saturating_sub(FIRST_HALF_STEP));
    STEPS_CIELAB.get(place).copied().unwrap_or(0.0)
}

impl fmt::Display for Margin {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::De00(value) => {
                write!(
                    f,
                    "{}",
                    text::plan::ciede2000_about_grade(value, self.nearest_grade())
                )
            }
            Self::Grade(grade) => write!(f, "{}", text::plan::grade_ciede2000(grade, self.de00())),
        }
    }
}

/// A margin as it stands in a file.
#[derive(Serialize, Deserialize)]
#[serde(untagged)]
enum Written {
    Number(f64),
    Text(String),
    /// Read only to be told of.
    #[serde(skip_serializing)]
    Other(IgnoredAny),
}

impl From<Margin> for Written {
    fn from(margin: Margin) -> Self {
        match margin {
            Margin::De00(value) => Self::Number(value),
            Margin::Grade(grade) => Self::Text(text::plan::grade(grade)),
        }
    }
}

impl TryFrom<Written> for Margin {
    type Error = String;

    fn try_from(written: Written) -> Result<Self, String> {
        let text = match written {
            Written::Number(value) => return Ok(Self::De00(value)),
            Written::Text(text) => text,
            Written::Other(_) => return Err(text::plan::the_margin_is_something_else().to_owned()),
        };
        let said = text.trim();
        let said = said.strip_prefix("grade").unwrap_or(said).trim();
        let grade: Grade = said
            .parse()
            .map_err(|_| text::plan::the_margin_is_neither_a_number(&text))?;
        if of_grade(grade) > 0.0 {
            Ok(Self::Grade(grade))
        } else {
            Err(text::plan::grade_5_means_no_change().to_owned())
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn grades_stand_for_the_pairs_of_the_grey_scale() {
        // ISO 105-A02:1993: 4-5 0.8, 4 1.7, 3 3.4, 1 13.6.
        for (text, de00) in [("4-5", 0.8), ("grade 4", 1.7), ("3", 3.4), ("1", 13.6)] {
            let margin = Margin::try_from(Written::Text(text.into())).unwrap();
            assert_eq!(margin.de00(), de00, "{text}");
        }
        assert_eq!(Margin::De00(1.6).nearest_grade().to_string(), "4");
        assert_eq!(Margin::De00(0.1).nearest_grade().to_string(), "5");
    }

    #[test]
    fn what_is_no_margin_is_said() {
        for text in ["5", "grade five", "", "grade 7"] {
            assert!(
                Margin::try_from(Written::Text(text.into())).is_err(),
                "{text}"
            );
        }
    }

    #[test]
    fn a_margin_of_a_file_is_told_of_in_our_own_words() {
        #[derive(Debug, Deserialize)]
        #[allow(dead_code, reason = "only read")]
        struct File {
            margin: Margin,
        }
        for (value, why) in [
            ("\"grade 5\"", text::plan::grade_5_means_no_change()),
            ("true", text::plan::the_margin_is_something_else()),
            ("[1.7]", text::plan::the_margin_is_something_else()),
            (
                "\"some\"",
                &text::plan::the_margin_is_neither_a_number("some"),
            ),
        ] {
            let read = dyeing::entries::read::<File>(&format!("margin = {value}"), "the plan");
            let told = read.expect_err(value).to_string();
            assert!(told.contains(&format!(": {why}\n")), "{told}");
            assert!(!told.contains("parser") && !told.contains("untagged"));
        }
        for (value, margin) in [("2", Margin::De00(2.0)), ("1.7", Margin::De00(1.7))] {
            let read = dyeing::entries::read::<File>(&format!("margin = {value}"), "the plan");
            assert_eq!(read.map(|file| file.margin), Ok(margin));
        }
    }
}
