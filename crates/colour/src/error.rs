//! What can be wrong with a colour that someone hands in.

use thiserror::Error;

/// Why a spectrum or the name of a view was not accepted.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum ColourError {
    /// The step between wavelengths is not positive.
    #[error("{}", crate::text::error::the_wavelength_step_nm_is_not_above(step_nm))]
    Step {
        /// The step given, nm.
        step_nm: f64,
    },
    /// Too few values to make a spectrum.
    #[error("{}", crate::text::error::a_spectrum_needs_at_least_6_values(count))]
    TooFewValues {
        /// How many values were given.
        count: usize,
    },
    /// The spectrum leaves out too much of the visible range.
    #[error(
        "{}",
        crate::text::error::the_spectrum_runs_from_to_nm(first_nm, last_nm)
    )]
    Range {
        /// First wavelength, nm.
        first_nm: f64,
        /// Last wavelength, nm.
        last_nm: f64,
    },
    /// A value isn't a reflectance.
    #[error(
        "{}",
        crate::text::error::the_value_at_nm_is_no_reflectance(value, wavelength_nm)
    )]
    Reflectance {
        /// The value given.
        value: f64,
        /// Where it stands, nm.
        wavelength_nm: f64,
    },
    /// The view has no name that is known here.
    #[error("{}", crate::text::error::is_no_view_that_is_known_here(name))]
    View {
        /// The name given.
        name: String,
    },
    /// The grade is none of the grey scale's nine.
    #[error("{}", crate::text::error::is_no_grade_of_a_grey_scale(text))]
    Grade {
        /// The grade given.
        text: String,
    },
}
