//! A margin of colour difference as steps of the grey scale.

use colour::grade::{difference_of, stain_difference_of, stain_value_of, value_of};

/// How many grades a difference of `margin_de00` makes between two changes that are
/// graded `middle` on average (5 to 1).
///
/// One unit of CIEDE2000 is taken as one unit of the scale's own difference dE_F,
/// which the two formulas come near to for greys and rather pale or dull colours; for
/// strong colours it is rough. On the scale a unit is 0.59 of a grade from 5 to 3 and
/// less below, since steps grow as changes do.
///
/// # Source
/// ISO 105-A05:1996 for the scale; that the units are alike is our own assumption.
///
/// ```
/// assert_eq!(format!("{:.2}", trial::eyes::in_grades(1.0, 4.0)), "0.59");
/// assert_eq!(format!("{:.2}", trial::eyes::in_grades(1.0, 2.0)), "0.21");
/// ```
pub fn in_grades(margin_de00: f64, middle: f64) -> f64 {
    let nearer = (difference_of(middle) - margin_de00 / 2.0).max(0.0);
    value_of(nearer) - value_of(nearer + margin_de00)
}

/// The same on the grey scale for staining, between two stains that are graded `middle` on average.
///
/// One unit of CIEDE2000 is taken as one unit of that scale's own difference dE_GS: near for grey and
/// pale stains, rough for strong ones, whose CIELAB difference is the greater. On the scale a unit is
/// 0.23 of a grade from 5 to 4 and less from 3 down, since steps grow as stains do.
///
/// # Source
/// ISO 105-A04:1989 for the scale; that the units are alike is our own assumption.
///
/// ```
/// assert_eq!(format!("{:.2}", trial::eyes::in_grades_of_staining(2.0, 4.5)), "0.46");
/// assert_eq!(format!("{:.2}", trial::eyes::in_grades_of_staining(2.0, 2.0)), "0.17");
/// ```
pub fn in_grades_of_staining(margin_de00: f64, middle: f64) -> f64 {
    let nearer = (stain_difference_of(middle) - margin_de00 / 2.0).max(0.0);
    stain_value_of(nearer) - stain_value_of(nearer + margin_de00)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn next_to_no_change_the_whole_margin_lies_on_one_side() {
        assert!((in_grades(1.0, 5.0) - 1.0 / 1.7).abs() < 1e-12);
        assert!((in_grades(3.4, 5.0) - 2.0).abs() < 1e-12);
        assert!(in_grades(2.0, 3.0) < in_grades(2.0, 3.5));
    }

    /// Two neighbouring steps of ISO 105-A03 (dE*ab 6.0 and 8.5) are a half-step apart.
    #[test]
    fn a_margin_from_step_to_step_of_staining_is_a_half_step() {
        for (d_e, next, middle) in [(6.0, 8.5, 3.25), (12.0, 16.9, 2.25), (24.0, 34.1, 1.25)] {
            let found = in_grades_of_staining(next - d_e, middle);
            assert!((found - 0.5).abs() < 0.03, "{middle}: {found}");
        }
        assert!((in_grades_of_staining(1.0, 5.0) - 0.23).abs() < 1e-12);
    }
}
