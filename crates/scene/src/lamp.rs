//! The spectra of lamps and of daylight.

use crate::{
    reflectance::weigh,
    tables::{D65, DAYLIGHT, FL11, WEIGHTS_D65_2},
    wavelengths_nm,
};

/// Relative power by wavelength.
pub(crate) type Power = [f64; 36];

/// Daylight of a correlated colour temperature, K.
///
/// # Source
/// CIE 015:2018, the D series: the chromaticity, then a mean and two components.
pub(crate) fn daylight(kelvin: f64) -> Power {
    let t = 1000.0 / kelvin.clamp(4000.0, 25_000.0);
    let x = if kelvin <= 7000.0 {
        0.244_063 + 0.099_11 * t + 2.967_8 * t * t - 4.607 * t * t * t
    } else {
        0.237_04 + 0.247_48 * t + 1.901_8 * t * t - 2.006_4 * t * t * t
    };
    let y = -3.0 * x * x + 2.87 * x - 0.275;
    let m = 0.024_1 + 0.256_2 * x - 0.734_1 * y;
    let first = (-1.351_5 - 1.770_3 * x + 5.911_4 * y) / m;
    let second = (0.03 - 31.442_4 * x + 30.071_7 * y) / m;
    DAYLIGHT.map(|[mean, yellow, pink]| mean + first * yellow + second * pink)
}

/// FL11 by 5 nm gathered into steps of 10 nm.
pub(crate) fn three_band() -> Power {
    let mut power = [0.0; 36];
    for (i, value) in power.iter_mut().enumerate() {
        let before = if i == 0 { FL11[0] } else { FL11[2 * i - 1] };
        *value = (before + FL11[2 * i + 1]) / 4.0 + FL11[2 * i] / 2.0;
    }
    power
}

/// Three diodes balanced to the white of D50.
pub(crate) fn rgb_diodes() -> Power {
    bells(&[(629.0, 8.5, 1.0), (524.0, 14.5, 0.5), (461.0, 10.5, 0.37)])
}

/// A blue pump and a phosphor that makes up the asked temperature, K.
pub(crate) fn white_diode(kelvin: f64) -> Power {
    let kelvin = kelvin.clamp(2500.0, 7000.0);
    // Warmer diodes have redder and wider phosphors.
    let warm = (1e6 / kelvin - 1e6 / 6500.0) / (1e6 / 2700.0 - 1e6 / 6500.0);
    let phosphor = (556.0 + 52.0 * warm, 52.0 + 8.0 * warm);
    let with_pump = |height: f64| {
        bells(&[
            (451.0, 9.5, height),
            (phosphor.0, phosphor.1, 1.0),
            (530.0, 26.0, 0.2 - 0.12 * warm),
        ])
    };
    // More pump is always colder.
    let (mut low, mut high) = (0.02, 6.0);
    for _ in 0..40 {
        let middle = (low + high) / 2.0;
        if self::kelvin(&with_pump(middle)) < kelvin {
            low = middle;
        } else {
            high = middle;
        }
    }
    with_pump((low + high) / 2.0)
}

/// Two lights, `share` of the illuminance from the second.
pub(crate) fn mix(first: &Power, second: &Power, share: f64) -> Power {
    let (a, b) = (illuminance(first), illuminance(second));
    std::array::from_fn(|i| (1.0 - share) * first[i] / a + share * second[i] / b)
}

/// Illuminance of a spectrum, in arbitrary units.
pub(crate) fn illuminance(power: &Power) -> f64 {
    xyz(power)[1]
}

/// Correlated colour temperature, K.
///
/// # Source
/// C. S. McCamy, Color Research and Application 17 (1992), from memory.
pub(crate) fn kelvin(power: &Power) -> f64 {
    let [x, y, z] = xyz(power);
    let (x, y) = (x / (x + y + z), y / (x + y + z));
    let n = (x - 0.332) / (0.185_8 - y);
    ((449.0 * n + 3525.0) * n + 6823.3) * n + 5520.33
}

/// XYZ of a light for the CIE 1931 observer, in arbitrary units.
fn xyz(power: &Power) -> [f64; 3] {
    // The weights hold D65 in them already; taking it out leaves the observer.
    weigh(&std::array::from_fn(|i| power[i] / D65[i]), &WEIGHTS_D65_2)
}

/// The sum of bells `(peak nm, standard deviation nm, height)`.
fn bells(of: &[(f64, f64, f64)]) -> Power {
    // A narrow bell falls between the steps: its mean over each step counts.
    const WITHIN_NM: [f64; 5] = [-4.0, -2.0, 0.0, 2.0, 4.0];
    let mut power = [0.0; 36];
    for (value, nm) in power.iter_mut().zip(wavelengths_nm()) {
        for (peak, width, height) in of {
            let at = |off: f64| (-0.5 * ((nm + off - peak) / width).powi(2)).exp();
            *value += height * WITHIN_NM.map(at).iter().sum::<f64>() / 5.0;
        }
    }
    power
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Light, tables};

    /// Source: reference library (the CIE's D65 and D50 of colour-science 0.4.7).
    #[test]
    fn daylight_at_their_temperatures_is_d65_and_d50() {
        for (kelvin, table) in [(6504.0, &tables::D65), (5003.0, &tables::D50)] {
            for (ours, theirs) in daylight(kelvin).iter().zip(table) {
                assert!((ours - theirs).abs() < 0.2, "{kelvin}: {ours} {theirs}");
            }
        }
    }

    /// Source: reference library (FL11's white for the CIE 1964 observer, from the
    /// folder `reference`): 103.82, 100, 65.56. Steps of 10 nm blur the bands.
    #[test]
    fn three_bands_make_fl11_s_white() {
        let ratio = std::array::from_fn(|i| three_band()[i] / D65[i]);
        let [x, y, z] = weigh(&ratio, &tables::WEIGHTS_D65_10);
        assert!((100.0 * x / y - 103.82).abs() < 1.5, "{x} {y}");
        assert!((100.0 * z / y - 65.56).abs() < 1.5, "{z} {y}");
    }

    /// Source: published (CIE 015: A has 2856 K, D65 6504 K, D50 5003 K, FL2 4230 K,
    /// FL11 4000 K).
    #[test]
    fn temperatures_of_known_lights() {
        for (light, kelvin) in [
            (Light::A, 2856.0),
            (Light::D65, 6504.0),
            (Light::D50, 5003.0),
            (Light::Fl2, 4230.0),
            (Light::ThreeBand, 4000.0),
            (Light::Daylight { kelvin: 4000.0 }, 4000.0),
            (Light::Daylight { kelvin: 9500.0 }, 9500.0),
        ] {
            let found = light.kelvin();
            assert!((found / kelvin - 1.0).abs() < 0.02, "{light:?} {found}");
        }
    }

    #[test]
    fn white_diodes_have_the_temperature_asked_for() {
        for kelvin in [2700.0, 4000.0, 6500.0] {
            let found = Light::WhiteDiode { kelvin }.kelvin();
            assert!((found - kelvin).abs() < 1.0, "{found}");
        }
        let found = Light::RgbDiodes.kelvin();
        assert!((4900.0..5100.0).contains(&found), "{found}");
    }

    #[test]
    fn a_mixture_is_its_parts_by_illuminance() {
        let [a, d65] = [Light::A, Light::D65].map(|light| light.power());
        let mixed = mix(&a, &d65, 0.25);
        assert!((illuminance(&mixed) - 1.0).abs() < 1e-9);
        assert!(kelvin(&mixed) > kelvin(&a) && kelvin(&mixed) < kelvin(&d65));
    }
}
