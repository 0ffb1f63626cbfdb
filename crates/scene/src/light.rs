//! The light on the table.

use crate::tables;

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
    /// Any relative power at 380, 390, ... 730 nm.
    Other(Box<[f64; 36]>),
}

impl Light {
    /// Relative power at 380, 390, ... 730 nm; only ratios matter.
    pub fn power(&self) -> [f64; 36] {
        match self {
            Self::D65 => tables::D65,
            Self::D50 => tables::D50,
            Self::A => tables::A,
            Self::Fl2 => tables::FL2,
            Self::Led => diode(),
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
