//! Chromatic adaptation: what a colour becomes when the light changes.

use crate::Xyz;

/// CAT16's matrix from XYZ to sharpened cone responses.
const TO_CONES: [[f64; 3]; 3] = [
    [0.401288, 0.650173, -0.051461],
    [-0.250268, 1.204414, 0.045854],
    [-0.002079, 0.048952, 0.953127],
];

/// The linearised Bradford matrix from XYZ to cone responses, sharper than CAT16's: each
/// channel sees a narrower band of wavelengths.
const TO_SHARP_CONES: [[f64; 3]; 3] = [
    [0.8951, 0.2664, -0.1614],
    [-0.7502, 1.7135, 0.0367],
    [0.0389, -0.0685, 1.0296],
];

/// The corresponding colour under another white, full adaptation by CAT16.
///
/// An estimate that stands in when the spectrum isn't known: it cannot know
/// metamerism. Both whites on the scale Y = 100.
///
/// # Source
/// CIE 248:2022 (CIECAM16), its adaptation step with D = 1; checked against the
/// round trip, the neutral and, over published spectra, a reference library.
pub fn cat16(colour: Xyz, from_white: Xyz, to_white: Xyz) -> Xyz {
    let cones = apply(&TO_CONES, colour.to_array());
    let from = apply(&TO_CONES, from_white.to_array());
    let to = apply(&TO_CONES, to_white.to_array());
    let adapted = [0, 1, 2].map(|k| cones[k] * to[k] / from[k]);
    apply(&inverse(&TO_CONES), adapted).into()
}

/// The sharpened cone responses of a colour, each as a share of the white's.
pub(crate) fn cone_shares(colour: Xyz, white: Xyz) -> [f64; 3] {
    let cones = apply(&TO_SHARP_CONES, colour.to_array());
    let whites = apply(&TO_SHARP_CONES, white.to_array());
    [0, 1, 2].map(|k| cones[k] / whites[k])
}

/// The reverse of [`cone_shares`].
pub(crate) fn from_cone_shares(shares: [f64; 3], white: Xyz) -> Xyz {
    let whites = apply(&TO_SHARP_CONES, white.to_array());
    apply(
        &inverse(&TO_SHARP_CONES),
        [0, 1, 2].map(|k| shares[k] * whites[k]),
    )
    .into()
}

fn apply(m: &[[f64; 3]; 3], v: [f64; 3]) -> [f64; 3] {
    [0, 1, 2].map(|r| m[r][0] * v[0] + m[r][1] * v[1] + m[r][2] * v[2])
}

fn inverse(m: &[[f64; 3]; 3]) -> [[f64; 3]; 3] {
    let minor =
        |r0: usize, r1: usize, c0: usize, c1: usize| m[r0][c0] * m[r1][c1] - m[r0][c1] * m[r1][c0];
    let adjugate = [
        [minor(1, 2, 1, 2), -minor(0, 2, 1, 2), minor(0, 1, 1, 2)],
        [-minor(1, 2, 0, 2), minor(0, 2, 0, 2), -minor(0, 1, 0, 2)],
        [minor(1, 2, 0, 1), -minor(0, 2, 0, 1), minor(0, 1, 0, 1)],
    ];
    let det = m[0][0] * adjugate[0][0] + m[0][1] * adjugate[1][0] + m[0][2] * adjugate[2][0];
    adjugate.map(|row| row.map(|v| v / det))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::View;

    #[test]
    fn white_becomes_white_and_the_way_back_leads_home() {
        let (d50, d65) = (View::D50_2.white(), View::D65_10.white());
        let white = cat16(d50, d50, d65);
        let colour = Xyz::new(20.0, 15.0, 8.0);
        let back = cat16(cat16(colour, d50, d65), d65, d50);
        for (a, b) in white.to_array().iter().zip(d65.to_array()) {
            assert!((a - b).abs() < 1e-9);
        }
        for (a, b) in back.to_array().iter().zip(colour.to_array()) {
            assert!((a - b).abs() < 1e-9);
        }
    }
}
