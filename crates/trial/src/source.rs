//! Where a colour comes from.

use crate::text;
use colour::Spectrum;
use serde::{Deserialize, Serialize};
use std::{fmt, str::FromStr};

/// What a reading's colour was got from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Source {
    /// A photo with a chart on it.
    Photo,
    /// A reflectance spectrum that an instrument measured.
    Spectrum,
    /// Lab values that an instrument or a person gave.
    Lab,
}

impl Source {
    /// The source as written in files.
    pub const fn as_str(self) -> &'static str {
        match self {
            Self::Photo => "photo",
            Self::Spectrum => "spectrum",
            Self::Lab => "lab",
        }
    }

    /// Readings of this kind, in words.
    pub fn in_words(self) -> &'static str {
        match self {
            Self::Photo => text::source::photos(),
            Self::Spectrum => text::source::spectra_from_elsewhere(),
            Self::Lab => text::source::lab_values_from_elsewhere(),
        }
    }
}

impl fmt::Display for Source {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.as_str())
    }
}

impl FromStr for Source {
    type Err = String;

    /// Reads `photo`, `spectrum` or `lab`.
    fn from_str(text: &str) -> Result<Self, String> {
        [Self::Photo, Self::Spectrum, Self::Lab]
            .into_iter()
            .find(|source| source.as_str() == text)
            .ok_or_else(|| text::source::is_no_source_of_readings_use_photo(text))
    }
}

/// Who measured a reading from elsewhere, when and with what.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Origin {
    /// Who measured; may be empty.
    pub by: String,
    /// When, as the person wrote it; may be empty.
    pub on: String,
    /// Instrument and its settings, in words; may be empty.
    pub instrument: String,
    /// Name of the file it came in; empty where it was typed.
    pub file: String,
    /// The spectrum itself, so that the colour in any view can be had later.
    pub spectrum: Option<Reflectance>,
}

/// A reflectance spectrum as it is kept.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Reflectance {
    /// First wavelength, nm.
    pub start_nm: f64,
    /// Step between wavelengths, nm.
    pub step_nm: f64,
    /// Share of the light that comes back, 0 to 2, by wavelength.
    pub values: Vec<f64>,
}

impl From<&Spectrum> for Reflectance {
    fn from(spectrum: &Spectrum) -> Self {
        Self {
            start_nm: spectrum.start_nm(),
            step_nm: spectrum.step_nm(),
            values: spectrum.values().to_vec(),
        }
    }
}
