//! The file's colour space: how code values become linear light.

use moxcms::{ColorProfile, DataColorSpace, ToneReprCurve};

use crate::{Flag, FlagCode};

/// A colour space by the linear light of each code value.
pub(crate) struct Profile {
    /// Linear light, 0 to 1, of each code value in red, green and blue.
    pub linear: [[f64; 256]; 3],
    /// The profile itself, where the file has one that can be used.
    pub icc: Option<ColorProfile>,
}

impl Profile {
    /// The colour space of a file, and what there is to say of it.
    pub fn from_icc(icc: Option<&[u8]>) -> (Self, Option<Flag>) {
        let Some(bytes) = icc else {
            let flag = Flag::new(
                FlagCode::ProfileMissing,
                "The photo names no colour space; it was taken as sRGB.",
            );
            return (Self::srgb(), Some(flag));
        };
        match Self::matrix_shaper(bytes) {
            Some(profile) => (profile, None),
            None => {
                let flag = Flag::new(
                    FlagCode::ProfileUnusable,
                    "The photo's colour space can't be used here; it was taken as sRGB.",
                );
                (Self::srgb(), Some(flag))
            }
        }
    }

    fn srgb() -> Self {
        let curve: [f64; 256] = std::array::from_fn(|code| srgb_to_linear(code as f64 / 255.0));
        Self {
            linear: [curve; 3],
            icc: None,
        }
    }

    fn matrix_shaper(bytes: &[u8]) -> Option<Self> {
        let icc = ColorProfile::new_from_slice(bytes).ok()?;
        if icc.color_space != DataColorSpace::Rgb {
            return None;
        }
        let curves = [&icc.red_trc, &icc.green_trc, &icc.blue_trc];
        let [Some(r), Some(g), Some(b)] = curves.map(|c| c.as_ref().and_then(table)) else {
            return None;
        };
        Some(Self {
            linear: [r, g, b],
            icc: Some(icc),
        })
    }
}

/// IEC 61966-2-1.
fn srgb_to_linear(v: f64) -> f64 {
    if v <= 0.04045 {
        v / 12.92
    } else {
        ((v + 0.055) / 1.055).powf(2.4)
    }
}

/// A tone curve of an ICC profile (ISO 15076-1) at the 256 code values.
fn table(curve: &ToneReprCurve) -> Option<[f64; 256]> {
    let at = |code: usize| {
        let x = code as f64 / 255.0;
        match curve {
            ToneReprCurve::Lut(values) => sampled(values, x),
            ToneReprCurve::Parametric(p) => parametric(p, x),
        }
    };
    let mut table = [0.0; 256];
    for (code, value) in table.iter_mut().enumerate() {
        let light = at(code)?;
        if !light.is_finite() {
            return None;
        }
        *value = light.clamp(0.0, 1.0);
    }
    let rises = table.windows(2).all(|pair| pair[1] >= pair[0]) && table[255] > table[0];
    rises.then_some(table)
}

fn sampled(values: &[u16], x: f64) -> Option<f64> {
    match values {
        [] => Some(x),
        [gamma] => Some(x.powf(f64::from(*gamma) / 256.0)),
        _ => {
            let at = x * (values.len() - 1) as f64;
            let k = (at as usize).min(values.len() - 2);
            let share = at - k as f64;
            let (low, high) = (f64::from(values[k]), f64::from(values[k + 1]));
            Some((low * (1.0 - share) + high * share) / 65535.0)
        }
    }
}

fn parametric(p: &[f32], x: f64) -> Option<f64> {
    let p: Vec<f64> = p.iter().map(|&v| f64::from(v)).collect();
    Some(match p[..] {
        [g] => x.powf(g),
        [g, a, b] => {
            if x >= -b / a {
                (a * x + b).powf(g)
            } else {
                0.0
            }
        }
        [g, a, b, c] => {
            if x >= -b / a {
                (a * x + b).powf(g) + c
            } else {
                c
            }
        }
        [g, a, b, c, d] => {
            if x >= d {
                (a * x + b).powf(g)
            } else {
                c * x
            }
        }
        [g, a, b, c, d, e, f] => {
            if x >= d {
                (a * x + b).powf(g) + e
            } else {
                c * x + f
            }
        }
        _ => return None,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_srgb_profile_gives_the_srgb_curve() {
        let icc = ColorProfile::new_srgb().encode().unwrap();
        let (profile, flag) = Profile::from_icc(Some(&icc));
        assert!(flag.is_none());
        for code in 0..256 {
            let expected = srgb_to_linear(code as f64 / 255.0);
            assert!((profile.linear[1][code] - expected).abs() < 2e-3, "{code}");
        }
    }

    #[test]
    fn nonsense_is_taken_as_srgb_and_said() {
        let (_, flag) = Profile::from_icc(Some(b"no profile at all"));
        assert_eq!(flag.unwrap().code, FlagCode::ProfileUnusable);
        let (_, flag) = Profile::from_icc(None);
        assert_eq!(flag.unwrap().code, FlagCode::ProfileMissing);
    }
}
