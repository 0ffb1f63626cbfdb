//! The light on the table.

use crate::{lamp, tables};

/// A light by its spectrum.
#[derive(Debug, Clone, PartialEq)]
pub enum Light {
    /// Average daylight, 6500 K.
    D65,
    /// Warm daylight, 5000 K.
    D50,
    /// An incandescent lamp.
    A,
    /// A fluorescent lamp like the CIE's FL2.
    Fl2,
    /// A white diode: a blue peak and a broad phosphor hump (invented).
    Led,
    /// Daylight of a correlated colour temperature of 4000 to 10,000 K.
    Daylight {
        /// Correlated colour temperature, K.
        kelvin: f64,
    },
    /// A fluorescent lamp of three narrow bands, the CIE's FL11.
    ThreeBand,
    /// Three narrow diodes, red, green and blue (invented).
    RgbDiodes,
    /// A white diode: a narrow blue pump and a broad phosphor (invented).
    WhiteDiode {
        /// Correlated colour temperature, 2500 to 7000 K.
        kelvin: f64,
    },
    /// Two lights at once, as a window and a lamp.
    Mixed(Box<Mixed>),
    /// Any relative power at 380, 390, ... 730 nm.
    Other(Box<[f64; 36]>),
}

/// Two lights falling on the same table.
#[derive(Debug, Clone, PartialEq)]
pub struct Mixed {
    /// The one.
    pub first: Light,
    /// The other.
    pub second: Light,
    /// Share of the illuminance that comes from the second, 0 to 1.
    pub second_share: f64,
}

impl Light {
    /// Two lights at once; `second_share` (0 to 1) of the illuminance is the second's.
    pub fn mixed(first: Self, second: Self, second_share: f64) -> Self {
        Self::Mixed(Box::new(Mixed {
            first,
            second,
            second_share,
        }))
    }

    /// Correlated colour temperature, K, by McCamy's formula; good to about 1 %
    /// from 2500 to 10,000 K for lights near white.
    pub fn kelvin(&self) -> f64 {
        lamp::kelvin(&self.power())
    }

    /// Relative power at 380, 390, ... 730 nm; only ratios matter.
    pub fn power(&self) -> [f64; 36] {
        match self {
            Self::D65 => tables::D65,
            Self::D50 => tables::D50,
            Self::A => tables::A,
            Self::Fl2 => tables::FL2,
            Self::Led => diode(),
            Self::Daylight { kelvin } => lamp::daylight(*kelvin),
            Self::ThreeBand => lamp::three_band(),
            Self::RgbDiodes => lamp::rgb_diodes(),
            Self::WhiteDiode { kelvin } => lamp::white_diode(*kelvin),
            Self::Mixed(mixed) => lamp::mix(
                &mixed.first.power(),
                &mixed.second.power(),
                mixed.second_share,
            ),
            Self::Other(power) => **power,
        }
    }
}

/// A warm white diode of about 4000 K.
fn diode() -> [f64; 36] {
    let bell = |nm: f64, peak: f64, width: f64| (-0.5 * ((nm - peak) / width).powi(2)).exp();
    let mut power = [0.0; 36];
    for (value, nm) in power.iter_mut().zip(crate::wavelengths_nm()) {
        *value = 0.72 * bell(nm, 450.0, 9.5) + bell(nm, 588.0, 56.0) + 0.22 * bell(nm, 530.0, 30.0);
    }
    power
}

/// Light that falls off evenly across the photo.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Gradient {
    /// Brightest edge less darkest edge, as a share of the middle: 0.15 is 15 %.
    pub share: f64,
    /// Where it grows brighter: 0 to the right, 90 downwards, in degrees.
    pub towards_deg: f64,
}

impl Gradient {
    /// The factor on the light at a point of a photo of the given size, all in px.
    pub fn at(&self, point: [f64; 2], size: [f64; 2]) -> f64 {
        let (sin, cos) = self.towards_deg.to_radians().sin_cos();
        let reach = size[0] * cos.abs() + size[1] * sin.abs();
        let along = (point[0] - size[0] / 2.0) * cos + (point[1] - size[1] / 2.0) * sin;
        1.0 + self.share * along / reach
    }
}

/// How far a point of a photo of the given size (px) lies along a direction: -0.5
/// at the edge it leaves to 0.5 at the edge it goes to.
pub(crate) fn along(towards_deg: f64, point: [f64; 2], size: [f64; 2]) -> f64 {
    let (sin, cos) = towards_deg.to_radians().sin_cos();
    let reach = size[0] * cos.abs() + size[1] * sin.abs();
    ((point[0] - size[0] / 2.0) * cos + (point[1] - size[1] / 2.0) * sin) / reach
}

/// A mirror-like shine: white light added in a soft round spot.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Glare {
    /// The middle of the spot on the table, mm.
    pub at_mm: [f64; 2],
    /// Standard deviation of the spot, mm.
    pub radius_mm: f64,
    /// Light added in the middle, as a share of that from a perfect white.
    pub strength: f64,
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn gradient_spans_its_share_from_edge_to_edge() {
        let size = [2000.0, 1500.0];
        let right = Gradient {
            share: 0.15,
            towards_deg: 0.0,
        };
        assert!((right.at([2000.0, 300.0], size) - 1.075).abs() < 1e-12);
        assert!((right.at([0.0, 900.0], size) - 0.925).abs() < 1e-12);
        let up = Gradient {
            towards_deg: 270.0,
            ..right
        };
        assert!((up.at([70.0, 0.0], size) - 1.075).abs() < 1e-12);
        assert!((up.at([1000.0, 750.0], size) - 1.0).abs() < 1e-12);
    }
}
