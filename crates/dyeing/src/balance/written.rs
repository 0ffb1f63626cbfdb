//! Readings of waters as a person writes them, in a form or in a file.

use crate::text;
use serde::{Deserialize, Serialize};

use crate::error::DyeingError;

/// A reading of one water: how much of it, and how strong in dye, told in one of three ways.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct WrittenReading {
    /// How much water, as in `20 L` or `1 1/2 gallons`.
    pub volume: String,
    /// How far the volume may be off; 5 % if left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub volume_spread: Option<String>,
    /// The step of a dilution ladder of the dye bath that a jar of the water looks like: `1:50`,
    /// `1:40 to 1:60`, `weaker than 1:1000`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub looks_like: Option<String>,
    /// Absorbance of a sample, or of several samples.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub absorbance: Option<Absorbances>,
    /// Dye in the water, as in `38.9 mg/L`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub concentration: Option<String>,
    /// How far a sample was diluted before it was looked at, as in `1:5`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub dilution: Option<String>,
    /// How far the strength may be off, as in `20 %`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub spread: Option<String>,
}

/// One absorbance or several of one water.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(untagged)]
pub enum Absorbances {
    /// Of one sample.
    One(f64),
    /// Of several samples.
    Several(Vec<f64>),
}

/// Standards of known concentration, each as `2 mg/L = 0.083` or `1:100 = 0.21`.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct WrittenCalibration {
    /// The standards; three at least.
    pub standards: Vec<String>,
}

/// All readings of a dyeing.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct WrittenWaters {
    /// What absorbances are read by.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub calibration: Option<WrittenCalibration>,
    /// The spent bath.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bath: Option<WrittenReading>,
    /// Waters of rinsing and washing, in the order in which they came.
    #[serde(default)]
    pub rinse: Vec<WrittenReading>,
}

impl WrittenWaters {
    /// Reads the entries from TOML; `docs/rinses.md` describes the file.
    ///
    /// # Errors
    /// Names the line that isn't TOML, or the entry that is missing or unknown.
    pub fn from_toml(text: &str) -> Result<Self, DyeingError> {
        Ok(crate::entries::read(text, text::balance::the_readings())?)
    }
}

impl Absorbances {
    /// All of them.
    pub fn all(&self) -> &[f64] {
        match self {
            Self::One(one) => std::slice::from_ref(one),
            Self::Several(several) => several,
        }
    }
}
