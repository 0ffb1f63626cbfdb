//! Lights and observers in the many ways instruments write them.

use crate::{Illuminant, Observer, View};

/// What a text says of light and observer.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub(super) struct Seen {
    pub illuminant: Option<Illuminant>,
    pub observer: Option<Observer>,
}

impl Seen {
    /// What this says, and where it is silent, what another says.
    pub fn or(self, other: Self) -> Self {
        Self {
            illuminant: self.illuminant.or(other.illuminant),
            observer: self.observer.or(other.observer),
        }
    }

    /// The view, where silent that of `unsaid`; and whether anything was silent.
    pub fn view(self, unsaid: View) -> (View, bool) {
        let whole = self.illuminant.is_some() && self.observer.is_some();
        let view = View::new(
            self.illuminant.unwrap_or(unsaid.illuminant),
            self.observer.unwrap_or(unsaid.observer),
        );
        (view, !whole)
    }
}

/// Reads words such as `D50`, `10`, `D65/10°`, `Illumination=D50 ObserverAngle=2`.
///
/// # Errors
/// The word that names a light or observer which is not known here.
pub(super) fn seen(text: &str) -> Result<Seen, String> {
    let mut seen = Seen::default();
    for word in text.split(|c: char| !c.is_alphanumeric()) {
        seen = seen.or(of_word(word)?);
    }
    Ok(seen)
}

fn of_word(word: &str) -> Result<Seen, String> {
    let light = |illuminant| Seen {
        illuminant: Some(illuminant),
        observer: None,
    };
    let eye = |observer| Seen {
        illuminant: None,
        observer: Some(observer),
    };
    let upper = word.to_ascii_uppercase();
    let bare = upper
        .trim_end_matches("DEGREES")
        .trim_end_matches("DEGREE")
        .trim_end_matches("DEG");
    Ok(match bare {
        // A lone "a" is an article, or a coordinate.
        "A" if word == "A" => light(Illuminant::A),
        "D50" => light(Illuminant::D50),
        "D65" => light(Illuminant::D65),
        "F2" | "FL2" => light(Illuminant::Fl2),
        "F11" | "FL11" => light(Illuminant::Fl11),
        "2" | "1931" => eye(Observer::Deg2),
        "10" | "1964" => eye(Observer::Deg10),
        _ if other_light(bare) || (word == "C") => return Err(word.to_owned()),
        _ => Seen::default(),
    })
}

/// Whether a word names one of the CIE's further daylights or lamps.
fn other_light(word: &str) -> bool {
    let digits = word
        .strip_prefix("FL")
        .or_else(|| word.strip_prefix('F'))
        .or_else(|| word.strip_prefix('D'));
    digits.is_some_and(|d| (1..=2).contains(&d.len()) && d.bytes().all(|c| c.is_ascii_digit()))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lights_are_found_as_instruments_write_them() {
        for (text, view) in [
            ("D65/10", View::D65_10),
            ("10°/D65", View::D65_10),
            ("Illumination=D50  ObserverAngle=2", View::D50_2),
            ("D50, 2 degree", View::D50_2),
            ("A/10", View::A_10),
            ("F11 10deg", View::FL11_10),
            ("CIE 1964, d65", View::D65_10),
        ] {
            let (found, silent) = seen(text).unwrap().view(View::D65_2);
            assert_eq!((found, silent), (view, false), "{text}");
        }
        assert_eq!(seen("a piece under a lamp").unwrap(), Seen::default());
        assert_eq!(seen("D75/10").unwrap_err(), "D75");
        assert_eq!(seen("C/2").unwrap_err(), "C");
    }
}
