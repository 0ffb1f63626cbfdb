//! Reflectance by wavelength.

use crate::{ColourError, Lab, View, Xyz, view::WAVELENGTHS};

/// The reflectance of a surface by wavelength, 1 = all light comes back.
#[derive(Debug, Clone, PartialEq)]
pub struct Spectrum {
    start_nm: f64,
    step_nm: f64,
    values: Vec<f64>,
}

impl Spectrum {
    /// A spectrum from its values at `start_nm`, `start_nm + step_nm` and so on.
    ///
    /// Values are shares of the light (0 to 1; up to 2 is let pass for
    /// fluorescent goods). 400 to 700 nm have to be covered.
    ///
    /// # Errors
    /// A step of zero or less, fewer than 6 values, a range that leaves out a
    /// part of 400 to 700 nm, a value that is no reflectance.
    pub fn new(start_nm: f64, step_nm: f64, values: Vec<f64>) -> Result<Self, ColourError> {
        if !(step_nm > 0.0 && step_nm.is_finite()) {
            return Err(ColourError::Step { step_nm });
        }
        if values.len() < 6 {
            return Err(ColourError::TooFewValues {
                count: values.len(),
            });
        }
        let last_nm = start_nm + step_nm * (values.len() - 1) as f64;
        if !(start_nm <= 400.0 && last_nm >= 700.0) {
            return Err(ColourError::Range {
                first_nm: start_nm,
                last_nm,
            });
        }
        if let Some(i) = values.iter().position(|v| !(0.0..=2.0).contains(v)) {
            return Err(ColourError::Reflectance {
                value: values[i],
                wavelength_nm: start_nm + step_nm * i as f64,
            });
        }
        Ok(Self {
            start_nm,
            step_nm,
            values,
        })
    }

    /// The first wavelength, nm.
    pub const fn start_nm(&self) -> f64 {
        self.start_nm
    }

    /// The step between wavelengths, nm.
    pub const fn step_nm(&self) -> f64 {
        self.step_nm
    }

    /// The values, in the order of wavelength.
    pub fn values(&self) -> &[f64] {
        &self.values
    }

    /// Tristimulus values of the surface in a view, Y = 100 for a perfect diffuser.
    ///
    /// The values are taken to 1 nm by Sprague's interpolation (those by 20 nm to
    /// 10 nm first, as ASTM E308 asks) and summed from 360 to 780 nm; beyond the ends
    /// of the spectrum its last value holds on.
    ///
    /// # Source
    /// CIE 015:2018 (sum by 1 nm), CIE 167:2005 (Sprague). Within 0.02
    /// CIELAB units of the weights of ASTM E308 on the spectra tried.
    pub fn xyz(&self, view: View) -> Xyz {
        let by_nm = if self.step_nm == 20.0 {
            let by_10 = halve_step(&self.values);
            resample_sprague(self.start_nm, 10.0, &by_10)
        } else {
            resample_sprague(self.start_nm, self.step_nm, &self.values)
        };
        let mut sum = [0.0; 3];
        for (r, w) in by_nm.iter().zip(view.weights()) {
            for k in 0..3 {
                sum[k] += r * w[k];
            }
        }
        sum.into()
    }

    /// CIELAB of the surface in a view.
    pub fn lab(&self, view: View) -> Lab {
        self.xyz(view).to_lab(view.white())
    }
}

/// The values at 360, 361, ... 780 nm by Sprague's fifth-order interpolation;
/// beyond the ends the last value holds on.
///
/// # Source
/// CIE 167:2005; the extra points at the ends by its table of end coefficients.
pub(crate) fn resample_sprague(start_nm: f64, step_nm: f64, values: &[f64]) -> Vec<f64> {
    let n = values.len();
    let padded = pad_ends(values);
    (0..WAVELENGTHS)
        .map(|i| {
            let at = (360.0 + i as f64 - start_nm) / step_nm;
            if at <= 0.0 {
                return values[0];
            }
            if at >= (n - 1) as f64 {
                return values[n - 1];
            }
            let k = at as usize;
            sprague(&padded[k..k + 6], at - k as f64)
        })
        .collect()
}

/// The values with one more in the middle of every gap, by Sprague's interpolation.
fn halve_step(values: &[f64]) -> Vec<f64> {
    let padded = pad_ends(values);
    let mut halved = Vec::with_capacity(2 * values.len());
    for (k, value) in values.iter().enumerate() {
        halved.push(*value);
        if k + 1 < values.len() {
            halved.push(sprague(&padded[k..k + 6], 0.5));
        }
    }
    halved
}

/// Two more points at each end, so that the first and last gaps can be filled.
fn pad_ends(v: &[f64]) -> Vec<f64> {
    const OUTER: [f64; 6] = [884.0, -1960.0, 3033.0, -2648.0, 1080.0, -180.0];
    const INNER: [f64; 6] = [508.0, -540.0, 488.0, -367.0, 144.0, -24.0];
    let n = v.len();
    let front = |c: &[f64; 6]| (0..6).map(|i| c[i] * v[i]).sum::<f64>() / 209.0;
    let back = |c: &[f64; 6]| (0..6).map(|i| c[i] * v[n - 1 - i]).sum::<f64>() / 209.0;
    let mut padded = vec![front(&OUTER), front(&INNER)];
    padded.extend_from_slice(v);
    padded.extend([back(&INNER), back(&OUTER)]);
    padded
}

/// Sprague's polynomial between the third and fourth of six points.
fn sprague(p: &[f64], x: f64) -> f64 {
    let a1 = (2.0 * p[0] - 16.0 * p[1] + 16.0 * p[3] - 2.0 * p[4]) / 24.0;
    let a2 = (-p[0] + 16.0 * p[1] - 30.0 * p[2] + 16.0 * p[3] - p[4]) / 24.0;
    let a3 =
        (-9.0 * p[0] + 39.0 * p[1] - 70.0 * p[2] + 66.0 * p[3] - 33.0 * p[4] + 7.0 * p[5]) / 24.0;
    let a4 = (13.0 * p[0] - 64.0 * p[1] + 126.0 * p[2] - 124.0 * p[3] + 61.0 * p[4] - 12.0 * p[5])
        / 24.0;
    let a5 =
        (-5.0 * p[0] + 25.0 * p[1] - 50.0 * p[2] + 50.0 * p[3] - 25.0 * p[4] + 5.0 * p[5]) / 24.0;
    p[2] + x * (a1 + x * (a2 + x * (a3 + x * (a4 + x * a5))))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn interpolation_passes_through_its_points() {
        let values: Vec<f64> = (0..36)
            .map(|i| 0.3 + 0.2 * f64::from(i % 5) / 5.0)
            .collect();
        let by_nm = resample_sprague(380.0, 10.0, &values);
        for (i, v) in values.iter().enumerate() {
            assert!((by_nm[20 + i * 10] - v).abs() < 1e-12);
        }
    }

    #[test]
    fn interpolation_keeps_a_cubic() {
        let cubic = |nm: f64| {
            let t = (nm - 550.0) / 200.0;
            0.5 + 0.1 * t - 0.2 * t * t + 0.15 * t * t * t
        };
        let values: Vec<f64> = (0..36)
            .map(|i| cubic(380.0 + 10.0 * f64::from(i)))
            .collect();
        let by_nm = resample_sprague(380.0, 10.0, &values);
        // The CIE's end coefficients bend the outer two gaps; the rest is exact.
        for nm in 400..=710 {
            assert!((by_nm[nm - 360] - cubic(nm as f64)).abs() < 1e-9, "{nm}");
        }
    }

    #[test]
    fn what_is_no_spectrum_is_named() {
        assert!(matches!(
            Spectrum::new(380.0, 0.0, vec![0.5; 40]),
            Err(ColourError::Step { .. })
        ));
        assert!(matches!(
            Spectrum::new(380.0, 10.0, vec![0.5; 3]),
            Err(ColourError::TooFewValues { count: 3 })
        ));
        assert!(matches!(
            Spectrum::new(420.0, 10.0, vec![0.5; 36]),
            Err(ColourError::Range { .. })
        ));
        let mut values = vec![0.5; 36];
        values[2] = 45.0;
        let error = Spectrum::new(380.0, 10.0, values).unwrap_err();
        assert!(error.to_string().contains("400 nm"), "{error}");
    }
}
