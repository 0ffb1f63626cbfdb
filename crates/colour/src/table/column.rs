//! What a column's name means.

use super::light::{Seen, seen};

/// What a column holds.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Meaning {
    /// A name of the sample; the lower number is the better name.
    Name(u8),
    /// Reflectance at a wavelength, nm.
    Wavelength(f64),
    /// L*, a* or b* (0, 1, 2), and what its name says of the light.
    Lab(usize, Seen),
    /// X, Y or Z (0, 1, 2), likewise.
    Xyz(usize, Seen),
    /// Light, observer or both of the row's colour.
    View,
    /// Row of a chart.
    Row,
    /// Column of a chart.
    Column,
    /// Anything else.
    Other,
}

/// Names of columns with samples' names, best first.
const NAMES: [&str; 12] = [
    "samplename",
    "name",
    "piece",
    "code",
    "sample",
    "patch",
    "sampleid",
    "id",
    "samplelocation",
    "sampleloc",
    "label",
    "number",
];
/// What may stand before a wavelength.
const BEFORE_WAVELENGTH: [&str; 14] = [
    "",
    "nm",
    "spectral",
    "spectralnm",
    "spec",
    "spectrum",
    "r",
    "refl",
    "reflectance",
    "wl",
    "wavelength",
    "lambda",
    "λ",
    "sci",
];
/// The wavelengths that are taken, nm.
pub(super) const WAVELENGTHS_NM: std::ops::RangeInclusive<f64> = 300.0..=830.0;

/// What the column of that name holds.
pub(super) fn meaning(name: &str) -> Meaning {
    let words: Vec<&str> = name
        .split(|c: char| !c.is_alphanumeric())
        .filter(|w| !w.is_empty())
        .collect();
    let plain = words.concat().to_lowercase();
    if let Some(rank) = NAMES.iter().position(|n| *n == plain) {
        // The list has twelve names.
        return Meaning::Name(rank as u8);
    }
    match plain.as_str() {
        "view" | "light" | "illuminant" | "illumination" | "observer" | "observerangle"
        | "illuminationname" => return Meaning::View,
        "row" => return Meaning::Row,
        "column" | "col" => return Meaning::Column,
        _ => {}
    }
    if let Some(nm) = wavelength_nm(name) {
        return Meaning::Wavelength(nm);
    }
    coordinate(&words).unwrap_or(Meaning::Other)
}

/// The wavelength in a name such as `400`, `nm400`, `SPECTRAL_NM_400` or `R 400 nm`.
pub(super) fn wavelength_nm(name: &str) -> Option<f64> {
    let name = name.to_lowercase();
    let name = name.trim_matches(|c: char| !c.is_alphanumeric());
    let name = name.strip_suffix("nm").unwrap_or(name);
    let digits = name.find(|c: char| c.is_ascii_digit())?;
    let (before, number) = name.split_at(digits);
    let before: String = before.chars().filter(|c| c.is_alphabetic()).collect();
    if !BEFORE_WAVELENGTH.contains(&before.as_str()) {
        return None;
    }
    let number = number
        .trim_matches(|c: char| !c.is_alphanumeric())
        .replace(',', ".");
    // From deep ultraviolet to infrared, so that what lies out of use can be passed over.
    number
        .parse::<f64>()
        .ok()
        .filter(|nm| (180.0..=2600.0).contains(nm))
}

fn coordinate(words: &[&str]) -> Option<Meaning> {
    let (of_xyz, words) = match words {
        [first, rest @ ..] if !rest.is_empty() => match first.to_lowercase().as_str() {
            "lab" | "cie" | "cielab" => (false, rest),
            "xyz" => (true, rest),
            _ => (false, words),
        },
        _ => (false, words),
    };
    let (first, rest) = words.split_first()?;
    // Whatever stands behind a coordinate has to tell its light; else it is another thing.
    let mut said = Seen::default();
    for word in rest {
        let found = seen(word).ok()?;
        if found == Seen::default() {
            return None;
        }
        said = said.or(found);
    }
    let lower = first.to_lowercase();
    if let Some(k) = ["l", "a", "b"].iter().position(|c| *c == lower)
        && !of_xyz
    {
        return Some(Meaning::Lab(k, said));
    }
    // A lone small x or y is a chromaticity.
    let k = ["X", "Y", "Z"].iter().position(|c| {
        if of_xyz {
            c.eq_ignore_ascii_case(first)
        } else {
            c == first
        }
    })?;
    Some(Meaning::Xyz(k, said))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Illuminant, Observer};

    #[test]
    fn wavelengths_are_known_in_every_spelling() {
        for name in [
            "400",
            "nm400",
            "SPECTRAL_NM_400",
            "SPECTRAL_NM400",
            "SPECTRAL_400",
            "400 nm",
            "R400",
            "R 400,0 nm",
            "400[nm]",
            "400.0",
        ] {
            assert_eq!(meaning(name), Meaning::Wavelength(400.0), "{name}");
        }
        for name in ["D400", "patch 400", "1", "RGB_R", "CMYK_400", "n400"] {
            assert_eq!(meaning(name), Meaning::Other, "{name}");
        }
    }

    #[test]
    fn coordinates_may_carry_their_light() {
        let d65_10 = Seen {
            illuminant: Some(Illuminant::D65),
            observer: Some(Observer::Deg10),
        };
        assert_eq!(meaning("L*(10°/D65)"), Meaning::Lab(0, d65_10));
        assert_eq!(meaning("a* D65/10"), Meaning::Lab(1, d65_10));
        assert_eq!(meaning("LAB_B"), Meaning::Lab(2, Seen::default()));
        assert_eq!(
            meaning("b*(10°/A)"),
            Meaning::Lab(
                2,
                Seen {
                    illuminant: Some(Illuminant::A),
                    observer: Some(Observer::Deg10)
                }
            )
        );
        assert_eq!(meaning("XYZ_Y"), Meaning::Xyz(1, Seen::default()));
        for name in ["x", "y", "Y_0_1", "dL*", "LAB_C", "LAB_H", "RGB_B", "DE00"] {
            assert_eq!(meaning(name), Meaning::Other, "{name}");
        }
    }
}
