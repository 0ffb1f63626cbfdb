//! What goes wrong, put in on purpose.

use crate::{Chart, Glare, Light, Reflectance};

/// Flaws put in on purpose, to see that a reader notices. None by default.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Flaws {
    /// Standard deviation of a blur beyond the lens's own, px.
    pub blur_px: f64,
    /// A shine on the table.
    pub glare: Option<Glare>,
    /// The photo seen in a mirror.
    pub mirrored: bool,
    /// Colours thrown away.
    pub greyscale: bool,
    /// A second chart on the table.
    pub second_chart: Option<Chart>,
    /// A second light whose share changes across the photo.
    pub second_light: Option<SecondLight>,
    /// A near lamp: light that falls off with the distance.
    pub near_lamp: Option<NearLamp>,
    /// The soft edge of a shadow across the table.
    pub shadow: Option<Shadow>,
    /// Bright and dark parts of the photo drawn together.
    pub local_tone: Option<LocalTone>,
    /// Hands that reach in from the edge.
    pub hands: Vec<Hand>,
}

/// A second light, as a lamp against a window, balanced in the middle of the photo.
#[derive(Debug, Clone, PartialEq)]
pub struct SecondLight {
    /// The light.
    pub light: Light,
    /// Its share of the illuminance at the one edge and at the other, 0 to 1.
    pub shares: [f64; 2],
    /// Where the other edge is: 0 right, 90 bottom, degrees.
    pub towards_deg: f64,
}

/// A small lamp above the table.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct NearLamp {
    /// The point of the table beneath it, mm.
    pub at_mm: [f64; 2],
    /// Its height above the table, mm.
    pub height_mm: f64,
}

/// The soft edge of a shadow.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Shadow {
    /// A point of the table on the middle of the edge, mm.
    pub through_mm: [f64; 2],
    /// The side that lies in shadow: 0 right, 90 bottom, degrees.
    pub towards_deg: f64,
    /// Width over which the light fades, mm.
    pub soft_mm: f64,
    /// Share of the light lost in the shadow, 0 to 1.
    pub depth: f64,
}

/// Tone mapping that looks at the neighbourhood of each pixel.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LocalTone {
    /// How much of the differences in brightness is taken away, 0 to 0.6.
    pub strength: f64,
    /// Reach of the neighbourhood (standard deviation) as a share of the longer side.
    pub reach: f64,
}

/// A hand at the edge of the photo.
#[derive(Debug, Clone, PartialEq)]
pub struct Hand {
    /// Where the middle of the wrist crosses the edge, as shares of width and height.
    pub at: [f64; 2],
    /// The way the fingers point: 0 right, 90 down, degrees.
    pub towards_deg: f64,
    /// How far the fingertips reach in, as a share of the longer side.
    pub reach: f64,
    /// Width of the palm, as a share of the longer side.
    pub palm: f64,
    /// The skin.
    pub skin: Reflectance,
}

impl SecondLight {
    /// Its share of the light at a point of a photo of the given size, px.
    pub(crate) fn share(&self, point: [f64; 2], size: [f64; 2]) -> f64 {
        let along = crate::light::along(self.towards_deg, point, size);
        let [one, other] = self.shares;
        (one + (other - one) * (along + 0.5)).clamp(0.0, 1.0)
    }
}

impl NearLamp {
    /// The factor on the light at a point of the table (mm), 1 beneath the lamp.
    ///
    /// # Source
    /// The inverse square of the distance and Lambert's cosine.
    pub(crate) fn at(self, point: [f64; 2]) -> f64 {
        let [x, y] = [0, 1].map(|k| (point[k] - self.at_mm[k]) / self.height_mm);
        (1.0 + x * x + y * y).powf(-1.5)
    }
}

impl Shadow {
    /// The factor on the light at a point of the table (mm).
    pub(crate) fn at(self, point: [f64; 2]) -> f64 {
        let (sin, cos) = self.towards_deg.to_radians().sin_cos();
        let within = (point[0] - self.through_mm[0]) * cos + (point[1] - self.through_mm[1]) * sin;
        let t = (within / self.soft_mm.max(0.01) + 0.5).clamp(0.0, 1.0);
        1.0 - self.depth * t * t * (3.0 - 2.0 * t)
    }
}

/// Skin, from pale (0) to dark (1) (invented: a slope, and the two bands of blood).
pub fn skin(dark: f64) -> Reflectance {
    Reflectance::from_fn(move |nm| {
        let slope = 0.60 / (1.0 + (-(nm - 585.0) / 60.0).exp());
        let band = |peak: f64, width: f64| (-0.5 * ((nm - peak) / width).powi(2)).exp();
        let blood = 0.25 * band(420.0, 22.0) + 0.16 * band(543.0, 14.0) + 0.16 * band(577.0, 11.0);
        (0.13 + slope) * (1.0 - blood) * (1.0 - 0.78 * dark)
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Source: published (inverse square and cosine): at a distance equal to the
    /// height, the light is 1 / 2^1.5... of that beneath, for a lamp that shines
    /// evenly downwards onto a plane.
    #[test]
    fn light_falls_off_with_the_distance() {
        let lamp = NearLamp {
            at_mm: [0.0, 0.0],
            height_mm: 500.0,
        };
        assert!((lamp.at([0.0, 0.0]) - 1.0).abs() < 1e-12);
        assert!((lamp.at([300.0, 400.0]) - 0.353_553).abs() < 1e-6);
    }

    #[test]
    fn shadow_has_its_depth_on_its_side_only() {
        let shadow = Shadow {
            through_mm: [10.0, 0.0],
            towards_deg: 90.0,
            soft_mm: 30.0,
            depth: 0.4,
        };
        assert!((shadow.at([500.0, -16.0]) - 1.0).abs() < 1e-12);
        assert!((shadow.at([-90.0, 0.0]) - 0.8).abs() < 1e-12);
        assert!((shadow.at([0.0, 16.0]) - 0.6).abs() < 1e-12);
    }

    #[test]
    fn skin_is_reddish() {
        for dark in [0.0, 0.5, 1.0] {
            let [l, a, b] = skin(dark).lab_d65_10();
            assert!(
                (20.0..80.0).contains(&l) && a > 4.0 && b > 6.0,
                "{l} {a} {b}"
            );
        }
    }
}
