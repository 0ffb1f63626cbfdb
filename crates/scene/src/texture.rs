//! The relief of cloth: yarns that catch more and less light.

use crate::hash::smooth;
use std::f64::consts::TAU;

/// How a cloth is made.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Cloth {
    /// No relief: felt, paint.
    Flat,
    /// Plain weave: yarns over and under in turn.
    Weave,
    /// Plain knit: columns of stitches like a V.
    Knit,
}

/// The relief of a piece.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Texture {
    /// How the cloth is made.
    pub cloth: Cloth,
    /// Distance from yarn to yarn, mm.
    pub pitch_mm: f64,
    /// Greatest share by which a yarn is lighter or darker than the mean, 0 to 0.6.
    pub contrast: f64,
}

impl Default for Texture {
    /// A plain weave of 1.2 mm yarns, 18 % contrast.
    fn default() -> Self {
        Self {
            cloth: Cloth::Weave,
            pitch_mm: 1.2,
            contrast: 0.18,
        }
    }
}

impl Texture {
    /// No relief at all.
    pub const FLAT: Self = Self {
        cloth: Cloth::Flat,
        pitch_mm: 1.0,
        contrast: 0.0,
    };

    /// A knit of 2.4 mm columns, 24 % contrast.
    pub const KNIT: Self = Self {
        cloth: Cloth::Knit,
        pitch_mm: 2.4,
        contrast: 0.24,
    };

    /// The factor on the light from a point (mm); its mean over the plane is 1.
    pub(crate) fn at(&self, seed: u64, [x, y]: [f64; 2]) -> f64 {
        if self.contrast == 0.0 {
            return 1.0;
        }
        let (u, v) = (x / self.pitch_mm, y / self.pitch_mm);
        let relief = match self.cloth {
            Cloth::Flat => 0.0,
            // Every term has mean 0 over a repeat of 2 x 2 yarns, or the relief
            // would change the colour of the cloth.
            Cloth::Weave => {
                let (warp, weft) = ((TAU * u).cos(), (TAU * v).cos());
                let over = (TAU * u / 2.0).sin() * (TAU * v / 2.0).sin();
                0.3 * (warp + weft) + 0.4 * over * (warp - weft)
            }
            Cloth::Knit => {
                let lean = 0.5 * (TAU * u).cos().abs();
                0.55 * (TAU * (1.3 * v + lean)).sin() + 0.45 * (2.0 * TAU * u).cos()
            }
        };
        let slub = 0.1 * smooth(seed, u * 0.6, v * 1.9) + 0.1 * smooth(!seed, u * 1.9, v * 0.6);
        let fibre = 0.2 * smooth(seed ^ 0xF1, u * 4.1, v * 4.1);
        1.0 + self.contrast * (0.6 * relief + slub + fibre)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn relief_keeps_the_mean() {
        for texture in [Texture::FLAT, Texture::default(), Texture::KNIT] {
            for seed in 1..=5 {
                // A step that shares no beat with the yarns.
                let steps = || (0..600).map(|i| f64::from(i) * 0.1037);
                let sum: f64 = steps()
                    .flat_map(|x| steps().map(move |y| [x, y]))
                    .map(|point| texture.at(seed, point))
                    .sum();
                let mean = sum / 360_000.0;
                assert!((mean - 1.0).abs() < 1.5e-3, "{texture:?} {seed} {mean}");
            }
        }
    }

    #[test]
    fn relief_stays_within_its_contrast() {
        for texture in [Texture::default(), Texture::KNIT] {
            for i in 0..20_000 {
                let place = f64::from(i);
                let factor = texture.at(9, [place * 0.0713, place * 0.0291]);
                assert!(
                    (factor - 1.0).abs() <= texture.contrast,
                    "{texture:?} {factor}"
                );
            }
        }
    }
}
