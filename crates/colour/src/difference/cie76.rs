//! The plain distance in CIELAB.

use crate::Lab;

/// The CIELAB difference dE*ab: the straight distance of two colours.
///
/// # Source
/// CIE 015:2018; the metric of the ISO 105-A02 and A03 grey scales.
///
/// ```
/// use colour::{Lab, difference::cie76};
/// assert_eq!(cie76(Lab::new(50.0, 3.0, 0.0), Lab::new(50.0, 0.0, 4.0)), 5.0);
/// ```
pub fn cie76(a: Lab, b: Lab) -> f64 {
    let (dl, da, db) = (b.l - a.l, b.a - a.a, b.b - a.b);
    (dl * dl + da * da + db * db).sqrt()
}
