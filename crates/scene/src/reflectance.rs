//! Reflectance by wavelength, and its true colour.

use crate::tables::WEIGHTS_D65_10;

/// The share of light a surface sends back at 380, 390, ... 730 nm, 0 to 1.
#[derive(Debug, Clone, PartialEq)]
pub struct Reflectance(pub [f64; 36]);

/// The 36 wavelengths of a [`Reflectance`], in nm.
pub fn wavelengths_nm() -> impl Iterator<Item = f64> {
    (0..36).map(|i| 380.0 + 10.0 * f64::from(i))
}

impl Reflectance {
    /// A neutral surface: the same `share` (0 to 1) at every wavelength.
    pub const fn flat(share: f64) -> Self {
        Self([share; 36])
    }

    /// A surface whose reflectance at a wavelength (nm) is `share`, held to 0.001..=0.999.
    pub fn from_fn(share: impl Fn(f64) -> f64) -> Self {
        let mut values = [0.0; 36];
        for (value, nm) in values.iter_mut().zip(wavelengths_nm()) {
            *value = share(nm).clamp(0.001, 0.999);
        }
        Self(values)
    }

    /// Every value times `factor` (no unit), as a neutral filter over the surface would do.
    pub fn scaled(&self, factor: f64) -> Self {
        Self(self.0.map(|value| value * factor))
    }

    /// CIELAB under D65 for the CIE 1964 (10 degree) observer.
    ///
    /// # Source
    /// CIE 015:2018; weights by ASTM E308 at 10 nm.
    pub fn lab_d65_10(&self) -> [f64; 3] {
        let [x, y, z] = weigh(&self.0, &WEIGHTS_D65_10);
        let [xn, yn, zn] = weigh(&[1.0; 36], &WEIGHTS_D65_10);
        let [fx, fy, fz] = [x / xn, y / yn, z / zn].map(response);
        [116.0 * fy - 16.0, 500.0 * (fx - fy), 200.0 * (fy - fz)]
    }
}

/// The sums of `values` under three columns of weights.
pub(crate) fn weigh(values: &[f64; 36], weights: &[[f64; 3]; 36]) -> [f64; 3] {
    let mut sums = [0.0; 3];
    for (value, row) in values.iter().zip(weights) {
        for (sum, weight) in sums.iter_mut().zip(row) {
            *sum += value * weight;
        }
    }
    sums
}

/// The CIELAB response to a share of the white.
fn response(share: f64) -> f64 {
    if share > (6.0f64 / 29.0).powi(3) {
        share.cbrt()
    } else {
        share * (29.0f64 / 6.0).powi(2) / 3.0 + 4.0 / 29.0
    }
}
