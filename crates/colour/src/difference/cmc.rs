//! CMC(l:c), the dyehouse's formula.

use super::hue_difference_squared;
use crate::Lab;

/// The CMC(l:c) difference of a test colour from its reference.
///
/// `l` and `c` weigh lightness and chroma: 2:1 is usual for accepting dyed
/// goods, 1:1 for what can just be seen. Not symmetric.
///
/// # Source
/// ISO 105-J03; checked against colour-science 0.4.7.
///
/// ```
/// use colour::{Lab, difference::cmc};
/// let d = cmc(Lab::new(52.31, -28.42, -24.77), Lab::new(55.1, -26.03, -22.91), 2.0, 1.0);
/// assert_eq!(format!("{d:.6}"), "1.840330");
/// ```
pub fn cmc(reference: Lab, test: Lab, l: f64, c: f64) -> f64 {
    let (chroma, hue) = (reference.chroma(), reference.hue_deg());
    let s_l = if reference.l < 16.0 {
        0.511
    } else {
        0.040975 * reference.l / (1.0 + 0.01765 * reference.l)
    };
    let s_c = 0.0638 * chroma / (1.0 + 0.0131 * chroma) + 0.638;
    let fourth = chroma * chroma * chroma * chroma;
    let f = (fourth / (fourth + 1900.0)).sqrt();
    let t = if (164.0..=345.0).contains(&hue) {
        0.56 + (0.2 * libm::cos((hue + 168.0).to_radians())).abs()
    } else {
        0.36 + (0.4 * libm::cos((hue + 35.0).to_radians())).abs()
    };
    let s_h = s_c * (f * t + 1.0 - f);
    let lightness = (test.l - reference.l) / (l * s_l);
    let saturation = (test.chroma() - chroma) / (c * s_c);
    let hue_squared = hue_difference_squared(reference, test) / (s_h * s_h);
    (lightness * lightness + saturation * saturation + hue_squared).sqrt()
}
