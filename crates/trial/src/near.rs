//! Which colours may lie near one: a box in CIELAB that holds all of them, for a search.

use colour::{Lab, difference::ciede2000};

/// More than this is not near, CIEDE2000.
pub const FURTHEST_DE00: f64 = 8.0;

/// CIEDE2000 of two CIELAB colours under one light.
pub fn distance_de00(one: [f64; 3], other: [f64; 3]) -> f64 {
    let lab = |[l, a, b]: [f64; 3]| Lab::new(l, a, b);
    ciede2000(lab(one), lab(other))
}

/// For L\*, a\* and b\* the lowest and the highest that a colour within `de00` of `lab` can have.
///
/// The box holds all of them and more: differences of lightness count for at least 1/1.75 of
/// themselves, those of chroma and hue for at least 1/(1 + 0.045 C'), and in the blues, where chroma
/// and hue are weighed together, for up to 2.8 times less. `de00` is above 0 and at most
/// [`FURTHEST_DE00`].
///
/// # Source
/// ISO/CIE 11664-6, the weighting functions; C' is at most 7 above C.
pub fn box_around([l, a, b]: [f64; 3], de00: f64) -> [[f64; 2]; 3] {
    let chroma = a.hypot(b);
    let hue = b.atan2(a).to_degrees().rem_euclid(360.0);
    // A hue that is hardly one may turn far within the box.
    let is_blue = (200.0..=350.0).contains(&hue) || chroma < 25.0;
    let turned = if is_blue { 2.8 } else { 1.05 };
    let reach = turned * de00.clamp(0.0, FURTHEST_DE00);
    // r = reach (1 + 0.045 (C' + r / 2)).
    let wide = reach * (1.0 + 0.045 * (chroma + 7.0)) / (1.0 - 0.0225 * reach);
    let high = 1.75 * de00;
    [
        [l - high, l + high],
        [a - wide, a + wide],
        [b - wide, b + wide],
    ]
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn inside(lab: [f64; 3], bounds: [[f64; 2]; 3]) -> bool {
        lab.iter()
            .zip(bounds)
            .all(|(value, [low, high])| (low..=high).contains(value))
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(4000))]
        #[test]
        fn no_near_colour_lies_outside(
            l in 0.0..100.0f64, a in -110.0..110.0f64, b in -110.0..110.0f64,
            dl in -15.0..15.0f64, da in -70.0..70.0f64, db in -70.0..70.0f64, part in 0.0..1.0f64,
        ) {
            let (one, other) = ([l, a, b], [l + part * dl, a + part * da, b + part * db]);
            let de00 = distance_de00(one, other);
            if de00 > 0.0 && de00 <= FURTHEST_DE00 {
                prop_assert!(inside(other, box_around(one, de00)), "{one:?} {other:?} {de00}");
            }
        }
    }
}
