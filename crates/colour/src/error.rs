//! What can be wrong with a colour that someone hands in.

use thiserror::Error;

/// Why a spectrum or the name of a view was not accepted.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum ColourError {
    /// The step between wavelengths is not positive.
    #[error(
        "the wavelength step {step_nm} nm is not above zero; spectra usually go by 1, 5, 10 or 20 nm"
    )]
    Step {
        /// The step given, nm.
        step_nm: f64,
    },
    /// Too few values to make a spectrum.
    #[error("a spectrum needs at least 6 values, this one has {count}")]
    TooFewValues {
        /// How many values were given.
        count: usize,
    },
    /// The spectrum leaves out too much of the visible range.
    #[error("the spectrum runs from {first_nm} to {last_nm} nm; it has to cover 400 to 700 nm")]
    Range {
        /// First wavelength, nm.
        first_nm: f64,
        /// Last wavelength, nm.
        last_nm: f64,
    },
    /// A value isn't a reflectance.
    #[error(
        "the value {value} at {wavelength_nm} nm is no reflectance between 0 and 2 (write 0.45 for 45 %)"
    )]
    Reflectance {
        /// The value given.
        value: f64,
        /// Where it stands, nm.
        wavelength_nm: f64,
    },
    /// The view has no name that is known here.
    #[error(
        "\"{name}\" is no view that is known here; use D65/10, D65/2, D50/2, A/10, FL2/10 or FL11/10"
    )]
    View {
        /// The name given.
        name: String,
    },
    /// The grade is none of the grey scale's nine.
    #[error("\"{text}\" is no grade of a grey scale; write 5, 4-5, 4, 3-4, 3, 2-3, 2, 1-2 or 1")]
    Grade {
        /// The grade given.
        text: String,
    },
}
