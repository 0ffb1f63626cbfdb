//! Dye in a bath or a rinse by how much light it takes away.

use crate::text;
use serde::{Deserialize, Serialize};
use statrs::distribution::{ContinuousCDF, StudentsT};

use crate::error::DyeingError;

/// Concentration of one dye, mg/L, by Beer and Lambert: A / (epsilon l) times the molar mass.
///
/// Absorptivity in L/(mol cm), path in cm, molar mass in g/mol.
///
/// # Errors
/// Refuses an absorbance below 0 and an absorptivity, path or mass that is not above 0.
pub fn milligrams_per_litre(
    absorbance: f64,
    absorptivity: f64,
    path_cm: f64,
    molar_mass: f64,
) -> Result<f64, DyeingError> {
    DyeingError::unless(
        absorbance >= 0.0,
        text::absorbance::absorbance(),
        absorbance,
        "",
        text::absorbance::n_0_or_more(),
    )?;
    DyeingError::unless(
        absorptivity > 0.0,
        text::absorbance::absorptivity(),
        absorptivity,
        text::absorbance::l_mol_cm(),
        text::absorbance::above_0(),
    )?;
    DyeingError::unless(
        path_cm > 0.0,
        text::absorbance::lights_path(),
        path_cm,
        "cm",
        text::absorbance::above_0(),
    )?;
    DyeingError::unless(
        molar_mass > 0.0,
        text::absorbance::molar_mass(),
        molar_mass,
        "g/mol",
        text::absorbance::above_0(),
    )?;
    Ok(absorbance / (absorptivity * path_cm) * molar_mass * 1000.0)
}

/// Concentrations of two dyes, mol/L, from absorbances at two wavelengths for 1 cm.
///
/// `absorptivity[w][d]` is that of dye `d` at wavelength `w`, L/(mol cm).
///
/// # Errors
/// Refuses dyes that absorb so alike that the wavelengths don't tell them apart.
pub fn two_dyes(
    absorptivity: [[f64; 2]; 2],
    absorbance: [f64; 2],
) -> Result<[f64; 2], DyeingError> {
    let [[a, b], [c, d]] = absorptivity;
    let determinant = a * d - b * c;
    let scale = libm::fabs(a * d) + libm::fabs(b * c);
    let apart = libm::fabs(determinant) > 1e-6 * scale;
    if !apart {
        return Err(DyeingError::Recipe(
            text::absorbance::the_two_dyes_absorb_alike_at_both().into(),
        ));
    }
    let [first, second] = absorbance;
    Ok([
        (first * d - second * b) / determinant,
        (second * a - first * c) / determinant,
    ])
}

/// A straight line through standards of known concentration.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Calibration {
    /// Absorbance for each mg/L.
    pub slope: f64,
    /// Absorbance at 0 mg/L.
    pub intercept: f64,
    /// Standard deviation of the standards about the line, as absorbance.
    pub scatter: f64,
    standards: f64,
    mean_mg_per_l: f64,
    mean_absorbance: f64,
    spread: f64,
}

/// A concentration read from a calibration.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Concentration {
    /// The concentration.
    pub mg_per_l: f64,
    /// Its standard error.
    pub se_mg_per_l: f64,
    /// Lower end of the 95 % interval.
    pub low_mg_per_l: f64,
    /// Upper end of the 95 % interval.
    pub high_mg_per_l: f64,
}

impl Calibration {
    /// Least squares through pairs of concentration (mg/L) and absorbance.
    ///
    /// # Errors
    /// Refuses fewer than three standards, standards that are all alike, and a line that doesn't rise.
    pub fn fit(standards: &[(f64, f64)]) -> Result<Self, DyeingError> {
        let n = standards.len() as f64;
        DyeingError::unless(
            n >= 3.0,
            text::absorbance::number_of_standards(),
            n,
            "",
            text::absorbance::n_3_or_more(),
        )?;
        let mean_mg_per_l = standards.iter().map(|s| s.0).sum::<f64>() / n;
        let mean_absorbance = standards.iter().map(|s| s.1).sum::<f64>() / n;
        let (mut spread, mut joint) = (0.0, 0.0);
        for (x, y) in standards {
            spread += (x - mean_mg_per_l) * (x - mean_mg_per_l);
            joint += (x - mean_mg_per_l) * (y - mean_absorbance);
        }
        DyeingError::unless(
            spread > 0.0,
            text::absorbance::spread_of_the_standards(),
            spread,
            "(mg/L)²",
            text::absorbance::above_0(),
        )?;
        let slope = joint / spread;
        DyeingError::unless(
            slope > 0.0,
            text::absorbance::slope(),
            slope,
            "L/mg",
            text::absorbance::above_0(),
        )?;
        let intercept = mean_absorbance - slope * mean_mg_per_l;
        let squares = standards.iter().map(|(x, y)| {
            let off = y - intercept - slope * x;
            off * off
        });
        let scatter = libm::sqrt(squares.sum::<f64>() / (n - 2.0));
        Ok(Self {
            slope,
            intercept,
            scatter,
            standards: n,
            mean_mg_per_l,
            mean_absorbance,
            spread,
        })
    }

    /// The concentration for the mean absorbance of several readings of one water.
    ///
    /// # Errors
    /// Refuses no readings at all.
    pub fn concentration(
        &self,
        mean_absorbance: f64,
        readings: u32,
    ) -> Result<Concentration, DyeingError> {
        let m = f64::from(readings);
        DyeingError::unless(
            m >= 1.0,
            text::absorbance::number_of_readings(),
            m,
            "",
            text::absorbance::n_1_or_more(),
        )?;
        let mg_per_l = (mean_absorbance - self.intercept) / self.slope;
        let off = mean_absorbance - self.mean_absorbance;
        let inner =
            1.0 / m + 1.0 / self.standards + off * off / (self.slope * self.slope * self.spread);
        let se_mg_per_l = self.scatter / self.slope * libm::sqrt(inner);
        let t = StudentsT::new(0.0, 1.0, self.standards - 2.0)
            .map_err(|_| {
                DyeingError::Recipe(text::absorbance::three_standards_at_least_are_needed().into())
            })?
            .inverse_cdf(0.975);
        Ok(Concentration {
            mg_per_l,
            se_mg_per_l,
            low_mg_per_l: mg_per_l - t * se_mg_per_l,
            high_mg_per_l: mg_per_l + t * se_mg_per_l,
        })
    }

    /// The least that is told from nothing: 3.3 times scatter / slope, mg/L.
    pub fn detection_limit_mg_per_l(&self) -> f64 {
        3.3 * self.scatter / self.slope
    }

    /// The least that is told by number: 10 times scatter / slope, mg/L.
    pub fn quantification_limit_mg_per_l(&self) -> f64 {
        10.0 * self.scatter / self.slope
    }
}
