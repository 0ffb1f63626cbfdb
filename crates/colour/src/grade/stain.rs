//! Staining of white cloth: the instrumental grade of ISO 105-A04.

use super::Grade;
use crate::{Lab, difference::cie76};

/// The grade of staining with the terms on the way.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stain {
    /// CIELAB difference dE*ab of the cloth before and after.
    pub d_e: f64,
    /// Lightness difference, stained minus unstained.
    pub d_l: f64,
    /// The grey-scale difference dE_GS.
    pub d_e_gs: f64,
    /// The grade as a decimal, 5 downward, for statistics; below 1 (and even
    /// below 0) for stains beyond the end of the scale.
    pub value: f64,
    /// The reported half-step.
    pub grade: Grade,
}

/// The grey-scale grade of staining of a white witness cloth.
///
/// Both colours for D65 and the 10 degree observer; `unstained` is the same
/// cloth washed without the dyed piece, or raw if the wash leaves it as it is.
///
/// # Source
/// ISO 105-A04:1989 (natural logarithm; bands on the grade to two decimals).
///
/// ```
/// use colour::{Lab, grade::stain};
/// let s = stain(Lab::new(92.8, -0.35, 2.6), Lab::new(92.31, -0.52, 2.02));
/// assert_eq!(format!("{:.4} {}", s.value, s.grade), "4.8766 5");
/// ```
pub fn stain(unstained: Lab, stained: Lab) -> Stain {
    let d_e = cie76(unstained, stained);
    let d_l = stained.l - unstained.l;
    let d_e_gs = d_e - 0.4 * (d_e * d_e - d_l * d_l).max(0.0).sqrt();
    let value = stain_value_of(d_e_gs);
    Stain {
        d_e,
        d_l,
        d_e_gs,
        value,
        grade: nearest(value),
    }
}

/// The decimal grade of staining of a grey-scale difference dE_GS (0 upward), not held at the end of
/// the scale.
///
/// # Source
/// ISO 105-A04:1989.
///
/// ```
/// assert_eq!(format!("{:.2}", colour::grade::stain_value_of(16.9)), "2.00");
/// ```
pub fn stain_value_of(d_e_gs: f64) -> f64 {
    if d_e_gs <= 0.0 {
        return 5.0;
    }
    let by_logarithm = 6.1 - 1.45 * libm::log(d_e_gs);
    if by_logarithm > 4.0 {
        5.0 - 0.23 * d_e_gs
    } else {
        by_logarithm
    }
}

/// The grey-scale difference dE_GS that has this decimal grade of staining, 0 where the grade is 5 or
/// better: [`stain_value_of`] turned round. The two lines of the formula miss each other by 0.02 of a
/// grade at grade 4; what lies between belongs to where they meet.
///
/// # Source
/// ISO 105-A04:1989.
///
/// ```
/// assert_eq!(format!("{:.1}", colour::grade::stain_difference_of(3.0)), "8.5");
/// ```
pub fn stain_difference_of(value: f64) -> f64 {
    let meet = libm::exp((6.1 - 4.0) / 1.45);
    if value >= 5.0 {
        0.0
    } else if value > 4.0 {
        ((5.0 - value) / 0.23).min(meet)
    } else {
        libm::exp((6.1 - value) / 1.45)
    }
}

/// The half-step reported for a decimal grade of staining, held to the scale.
///
/// # Source
/// ISO 105-A04:1989, its bands of the grade to two decimals.
///
/// ```
/// assert_eq!(colour::grade::nearest(4.3).to_string(), "4-5");
/// ```
pub fn nearest(value: f64) -> Grade {
    // The bands 4.75-5.00, 4.25-4.74 ... of the value rounded to two decimals.
    let hundredths = (value.clamp(1.0, 5.0) * 100.0).round() as u32;
    Grade::from_half_steps(((hundredths + 25) / 50) as u8)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// Grades with their nominal dE*ab and its tolerance, ISO 105-A03 (from memory; `docs/SOURCES.md`).
    const STEPS: [(f64, f64, f64); 9] = [
        (5.0, 0.0, 0.2),
        (4.5, 2.2, 0.3),
        (4.0, 4.3, 0.3),
        (3.5, 6.0, 0.4),
        (3.0, 8.5, 0.5),
        (2.5, 12.0, 0.7),
        (2.0, 16.9, 1.0),
        (1.5, 24.0, 1.5),
        (1.0, 34.1, 2.0),
    ];

    #[test]
    fn the_steps_of_the_grey_scale_come_out() {
        for (grade, d_e, tolerance) in STEPS {
            let found = stain_difference_of(grade);
            assert!((found - d_e).abs() <= tolerance, "{grade}: {found}");
            assert_eq!(nearest(stain_value_of(d_e)).value(), grade);
        }
    }

    proptest! {
        #[test]
        fn a_difference_is_found_again_by_its_grade(d_e in 0.0..60.0f64) {
            let again = stain_difference_of(stain_value_of(d_e));
            prop_assert!((again - d_e).abs() < 1e-9, "{again}");
        }

        #[test]
        fn grades_stay_on_the_scale(l in 0.0..100.0, a in -90.0..90.0, b in -90.0..90.0) {
            let s = stain(Lab::new(93.0, -0.3, 2.0), Lab::new(l, a, b));
            prop_assert!(s.value <= 5.0);
            prop_assert!((s.value.max(1.0) - s.grade.value()).abs() <= 0.2551);
        }
    }
}
