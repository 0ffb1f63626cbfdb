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
    let value = decimal(d_e_gs);
    Stain {
        d_e,
        d_l,
        d_e_gs,
        value,
        grade: nearest(value),
    }
}

fn decimal(d_e_gs: f64) -> f64 {
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

    proptest! {
        #[test]
        fn grades_stay_on_the_scale(l in 0.0..100.0, a in -90.0..90.0, b in -90.0..90.0) {
            let s = stain(Lab::new(93.0, -0.3, 2.0), Lab::new(l, a, b));
            prop_assert!(s.value <= 5.0);
            prop_assert!((s.value.max(1.0) - s.grade.value()).abs() <= 0.2551);
        }
    }
}
