//! CIE94 with the textile parameters.

use super::hue_difference_squared;
use crate::Lab;

/// The CIE94 difference of a test colour from its reference, textile parameters.
///
/// kL = 2, K1 = 0.048, K2 = 0.014. Not symmetric.
///
/// # Source
/// CIE 116:1995; checked against colour-science 0.4.7.
///
/// ```
/// use colour::{Lab, difference::cie94_textile};
/// let d = cie94_textile(Lab::new(52.31, -28.42, -24.77), Lab::new(55.1, -26.03, -22.91));
/// assert_eq!(format!("{d:.6}"), "1.765560");
/// ```
pub fn cie94_textile(reference: Lab, test: Lab) -> f64 {
    let chroma = reference.chroma();
    let lightness = (test.l - reference.l) / 2.0;
    let saturation = (test.chroma() - chroma) / (1.0 + 0.048 * chroma);
    let hue_weight = 1.0 + 0.014 * chroma;
    let hue_squared = hue_difference_squared(reference, test) / (hue_weight * hue_weight);
    (lightness * lightness + saturation * saturation + hue_squared).sqrt()
}
