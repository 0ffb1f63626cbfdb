//! Under which light and by which observer a colour is seen.

use std::{fmt, str::FromStr, sync::LazyLock};

use crate::{
    ColourError, Xyz,
    tables::{cmf_1931, cmf_1964, illuminants},
};

/// Number of nanometre steps from 360 to 780 nm, both ends counted.
pub(crate) const WAVELENGTHS: usize = 421;

/// A light by which colours are judged.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Illuminant {
    /// Incandescent lamp, 2856 K.
    A,
    /// Daylight of 5003 K, the print trade's light.
    D50,
    /// Daylight of 6504 K, the textile trade's light.
    D65,
    /// Broad-band cool white fluorescent lamp (FL2).
    Fl2,
    /// Narrow-band fluorescent lamp (FL11), as in many shops.
    Fl11,
}

/// The standard eye.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Observer {
    /// CIE 1931, 2 degree field.
    Deg2,
    /// CIE 1964, 10 degree field: the textile trade's observer.
    Deg10,
}

/// A light together with an observer, written like `D65/10`.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct View {
    /// The light.
    pub illuminant: Illuminant,
    /// The observer.
    pub observer: Observer,
}

impl View {
    /// Daylight D65 and the 10 degree observer: the textile trade's default.
    pub const D65_10: Self = Self::new(Illuminant::D65, Observer::Deg10);
    /// Daylight D65 and the 2 degree observer.
    pub const D65_2: Self = Self::new(Illuminant::D65, Observer::Deg2);
    /// Daylight D50 and the 2 degree observer, in which chart makers publish.
    pub const D50_2: Self = Self::new(Illuminant::D50, Observer::Deg2);
    /// Incandescent light and the 10 degree observer.
    pub const A_10: Self = Self::new(Illuminant::A, Observer::Deg10);
    /// Broad-band fluorescent light and the 10 degree observer.
    pub const FL2_10: Self = Self::new(Illuminant::Fl2, Observer::Deg10);
    /// Narrow-band fluorescent light and the 10 degree observer.
    pub const FL11_10: Self = Self::new(Illuminant::Fl11, Observer::Deg10);

    /// Puts a light and an observer together.
    pub const fn new(illuminant: Illuminant, observer: Observer) -> Self {
        Self {
            illuminant,
            observer,
        }
    }

    /// The perfect diffuser in this view, Y = 100.
    ///
    /// Computed from the same tables and sum as every colour here, so that a
    /// perfect diffuser has L* = 100 and a* = b* = 0 to the last digit.
    ///
    /// # Source
    /// CIE 015:2018; agrees with ASTM E308 whites to 0.05.
    pub fn white(self) -> Xyz {
        self.weights().iter().fold(Xyz::new(0.0, 0.0, 0.0), |w, v| {
            Xyz::new(w.x + v[0], w.y + v[1], w.z + v[2])
        })
    }

    /// Weights by nanometre from 360 nm: the tristimulus values that a
    /// reflectance of 1 adds at each.
    pub(crate) fn weights(self) -> &'static [[f64; 3]] {
        static ALL: LazyLock<Vec<Vec<[f64; 3]>>> = LazyLock::new(|| {
            let mut all = Vec::with_capacity(10);
            for illuminant in Illuminant::ALL {
                for observer in [Observer::Deg2, Observer::Deg10] {
                    all.push(weights(illuminant, observer));
                }
            }
            all
        });
        &ALL[self.illuminant as usize * 2 + self.observer as usize]
    }
}

impl Illuminant {
    const ALL: [Self; 5] = [Self::A, Self::D50, Self::D65, Self::Fl2, Self::Fl11];

    const fn name(self) -> &'static str {
        match self {
            Self::A => "A",
            Self::D50 => "D50",
            Self::D65 => "D65",
            Self::Fl2 => "FL2",
            Self::Fl11 => "FL11",
        }
    }

    /// Relative power at 360, 361, ... 780 nm.
    fn power(self) -> Vec<f64> {
        match self {
            Self::A => (0..WAVELENGTHS)
                .map(|i| incandescent(360.0 + i as f64))
                .collect(),
            Self::D50 => between_points(360.0, &illuminants::D50),
            Self::D65 => between_points(360.0, &illuminants::D65),
            Self::Fl2 => between_points(380.0, &illuminants::FL2),
            Self::Fl11 => between_points(380.0, &illuminants::FL11),
        }
    }
}

/// CIE 015:2018, the formula of illuminant A, 100 at 560 nm.
fn incandescent(wavelength_nm: f64) -> f64 {
    let c = 1.435e7 / 2848.0;
    100.0 * libm::pow(560.0 / wavelength_nm, 5.0) * (libm::exp(c / 560.0) - 1.0)
        / (libm::exp(c / wavelength_nm) - 1.0)
}

/// A table by 5 nm, read straight between its points, as the CIE defines the
/// daylights; lamp lines are too sharp for a smooth curve, which would swing
/// below zero. Before the table begins there is no visible power.
fn between_points(start_nm: f64, power: &[f64]) -> Vec<f64> {
    (0..WAVELENGTHS)
        .map(|i| {
            let at = (360.0 + i as f64 - start_nm) / 5.0;
            if at < 0.0 {
                return 0.0;
            }
            let k = (at as usize).min(power.len() - 2);
            let share = at - k as f64;
            power[k] * (1.0 - share) + power[k + 1] * share
        })
        .collect()
}

fn weights(illuminant: Illuminant, observer: Observer) -> Vec<[f64; 3]> {
    let power = illuminant.power();
    let bars: [&[f64; WAVELENGTHS]; 3] = match observer {
        Observer::Deg2 => [&cmf_1931::X_BAR, &cmf_1931::Y_BAR, &cmf_1931::Z_BAR],
        Observer::Deg10 => [&cmf_1964::X_BAR, &cmf_1964::Y_BAR, &cmf_1964::Z_BAR],
    };
    let luminous: f64 = power.iter().zip(bars[1]).map(|(p, y)| p * y).sum();
    (0..WAVELENGTHS)
        .map(|i| bars.map(|bar| 100.0 * power[i] * bar[i] / luminous))
        .collect()
}

impl fmt::Display for View {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let degrees = match self.observer {
            Observer::Deg2 => "2",
            Observer::Deg10 => "10",
        };
        write!(f, "{}/{degrees}", self.illuminant.name())
    }
}

impl FromStr for View {
    type Err = ColourError;

    fn from_str(name: &str) -> Result<Self, ColourError> {
        let unknown = || ColourError::View { name: name.into() };
        let (light, degrees) = name.trim().split_once('/').ok_or_else(unknown)?;
        let illuminant = Illuminant::ALL
            .into_iter()
            .find(|i| i.name().eq_ignore_ascii_case(light.trim()))
            .ok_or_else(unknown)?;
        let observer = match degrees.trim() {
            "2" => Observer::Deg2,
            "10" => Observer::Deg10,
            _ => return Err(unknown()),
        };
        Ok(Self::new(illuminant, observer))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_come_back() {
        for illuminant in Illuminant::ALL {
            for observer in [Observer::Deg2, Observer::Deg10] {
                let view = View::new(illuminant, observer);
                assert_eq!(view.to_string().parse::<View>().unwrap(), view);
            }
        }
    }

    #[test]
    fn an_unknown_view_is_named_in_the_sentence() {
        let error = "D75/10".parse::<View>().unwrap_err();
        assert!(error.to_string().contains("\"D75/10\""));
        assert!("D65".parse::<View>().is_err());
    }
}
