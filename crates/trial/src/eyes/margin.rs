//! A margin of colour difference as steps of the grey scale.

use colour::grade::{difference_of, value_of};

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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn next_to_no_change_the_whole_margin_lies_on_one_side() {
        assert!((in_grades(1.0, 5.0) - 1.0 / 1.7).abs() < 1e-12);
        assert!((in_grades(3.4, 5.0) - 2.0).abs() < 1e-12);
        assert!(in_grades(2.0, 3.0) < in_grades(2.0, 3.5));
    }
}
