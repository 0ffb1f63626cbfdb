//! The file's colour space: how code values become linear light.

use crate::text;
use moxcms::{ColorProfile, DataColorSpace, ToneReprCurve};

use super::exif::Named;
use crate::{Flag, FlagCode};

/// A colour space by the linear light of each code value.
pub(crate) struct Profile {
    /// Linear light, 0 to 1, of each code value in red, green and blue.
    pub linear: [[f64; 256]; 3],
    /// The profile itself, where the file has one that can be used.
    pub icc: Option<ColorProfile>,
}

impl Profile {
    /// The colour space of a file by its profile or, without one, by the name in
    /// its EXIF data, and what there is to say of it.
    pub fn of(icc: Option<&[u8]>, named: Option<Named>) -> (Self, Option<Flag>) {
        match (icc, named) {
            (Some(bytes), _) => {
                Self::matrix_shaper(bytes).map_or_else(Self::unusable, |profile| (profile, None))
            }
            (None, Some(Named::Srgb)) => (Self::srgb(), None),
            (None, Some(Named::AdobeRgb)) => (Self::of_icc(ColorProfile::new_adobe_rgb()), None),
            (None, None) => {
                let flag = Flag::new(
                    FlagCode::ProfileMissing,
                    text::decode::the_photo_names_no_colour_space(),
                );
                (Self::srgb(), Some(flag))
            }
        }
    }

    /// A colour space by its transfer characteristics. Its primaries don't matter
    /// here: the chart tells what the colours are.
    ///
    /// # Source
    /// ITU-T H.273, table 3.
    pub fn of_code_point(transfer: u8) -> (Self, Option<Flag>) {
        let profile = match transfer {
            1 | 6 | 14 | 15 => Self::by(bt709_to_linear),
            4 => Self::power(2.2),
            5 => Self::power(2.8),
            8 => Self::power(1.0),
            13 => Self::srgb(),
            _ => return Self::unusable(),
        };
        (profile, None)
    }

    /// A colour space whose light is a power of the code values.
    pub fn power(exponent: f64) -> Self {
        Self::by(|v| v.powf(exponent))
    }

    /// IEC 61966-2-1.
    pub fn srgb() -> Self {
        Self::by(srgb_to_linear)
    }

    fn by(linear: impl Fn(f64) -> f64) -> Self {
        let curve: [f64; 256] = std::array::from_fn(|code| linear(code as f64 / 255.0));
        Self {
            linear: [curve; 3],
            icc: None,
        }
    }

    fn unusable() -> (Self, Option<Flag>) {
        let flag = Flag::new(
            FlagCode::ProfileUnusable,
            text::decode::the_photos_colour_space_cant_be_used(),
        );
        (Self::srgb(), Some(flag))
    }

    fn matrix_shaper(bytes: &[u8]) -> Option<Self> {
        Self::with_curves(ColorProfile::new_from_slice(bytes).ok()?)
    }

    /// A profile of this program's own making, which has its curves.
    fn of_icc(icc: ColorProfile) -> Self {
        Self::with_curves(icc).unwrap_or_else(Self::srgb)
    }

    fn with_curves(icc: ColorProfile) -> Option<Self> {
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

/// ITU-R BT.709-6, the inverse of its opto-electronic transfer.
fn bt709_to_linear(v: f64) -> f64 {
    if v < 0.081 {
        v / 4.5
    } else {
        ((v + 0.099) / 1.099).powf(1.0 / 0.45)
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

    fn linear(icc: &ColorProfile) -> [[f64; 256]; 3] {
        let (profile, flag) = Profile::of(Some(&icc.encode().unwrap()), None);
        assert!(flag.is_none());
        profile.linear
    }

    fn agree(found: &[[f64; 256]; 3], expected: impl Fn(f64) -> f64, within: f64) {
        for channel in found {
            for (code, value) in channel.iter().enumerate() {
                let wanted = expected(code as f64 / 255.0);
                assert!((value - wanted).abs() < within, "{code} {value} {wanted}");
            }
        }
    }

    /// Published: the curves of IEC 61966-2-1 (which Display P3 shares), Adobe RGB
    /// (1998) and ISO 22028-2 (ROMM RGB).
    #[test]
    fn the_usual_profiles_give_their_published_curves() {
        agree(&linear(&ColorProfile::new_srgb()), srgb_to_linear, 2e-3);
        agree(
            &linear(&ColorProfile::new_display_p3()),
            srgb_to_linear,
            2e-3,
        );
        let adobe = |v: f64| v.powf(563.0 / 256.0);
        agree(&linear(&ColorProfile::new_adobe_rgb()), adobe, 2e-3);
        let romm = |v: f64| {
            if v < 16.0 / 512.0 {
                v / 16.0
            } else {
                v.powf(1.8)
            }
        };
        agree(&linear(&ColorProfile::new_pro_photo_rgb()), romm, 2e-3);
    }

    #[test]
    fn a_colour_space_named_in_exif_data_is_taken() {
        let (srgb, flag) = Profile::of(None, Some(Named::Srgb));
        assert!(flag.is_none());
        agree(&srgb.linear, srgb_to_linear, 1e-12);
        let (adobe, flag) = Profile::of(None, Some(Named::AdobeRgb));
        assert!(flag.is_none());
        agree(&adobe.linear, |v| v.powf(563.0 / 256.0), 2e-3);
    }

    #[test]
    fn code_points_of_film_and_hdr() {
        // Published: ITU-R BT.709-6, item 1.2: V = 1.099 L^0.45 - 0.099.
        let (film, flag) = Profile::of_code_point(1);
        assert!(flag.is_none());
        for (code, light) in film.linear[0].iter().enumerate().skip(30) {
            let signal = 1.099 * light.powf(0.45) - 0.099;
            assert!((signal * 255.0 - code as f64).abs() < 1e-9);
        }
        for hdr in [16, 18, 2, 255] {
            let (_, flag) = Profile::of_code_point(hdr);
            assert_eq!(flag.unwrap().code, FlagCode::ProfileUnusable);
        }
    }

    #[test]
    fn nonsense_is_taken_as_srgb_and_said() {
        let (_, flag) = Profile::of(Some(b"no profile at all"), None);
        assert_eq!(flag.unwrap().code, FlagCode::ProfileUnusable);
        let (_, flag) = Profile::of(None, None);
        assert_eq!(flag.unwrap().code, FlagCode::ProfileMissing);
    }
}
