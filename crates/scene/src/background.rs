//! What the pieces lie on.

use crate::{Reflectance, Texture, hash::smooth, linen};

/// The table beneath chart and pieces.
#[derive(Debug, Clone, PartialEq)]
pub enum Background {
    /// Grey paper.
    Paper,
    /// Planks of wood.
    Wood,
    /// A striped tablecloth.
    Stripes,
    /// A tablecloth in two colours of checks.
    Checks,
    /// A thick knitted blanket of a colour.
    Knit(Box<Reflectance>),
    /// Dark planks with strong grain.
    DarkWood,
    /// One surface without any pattern.
    Plain(Box<Reflectance>),
}

impl Background {
    /// One surface without any pattern.
    pub fn plain(surface: Reflectance) -> Self {
        Self::Plain(Box::new(surface))
    }

    /// The two surfaces it is mixed from.
    pub(crate) fn surfaces(&self) -> [Reflectance; 2] {
        let brown = |base: f64, rise: f64| {
            Reflectance::from_fn(move |nm| base + rise * ((nm - 380.0) / 350.0).powf(1.4))
        };
        match self {
            Self::Paper => [Reflectance::flat(0.46), Reflectance::flat(0.54)],
            Self::Wood => [brown(0.05, 0.36), brown(0.10, 0.50)],
            Self::Stripes => [
                linen(),
                Reflectance::from_fn(|nm| 0.12 + 0.20 * (-((nm - 470.0) / 60.0).powi(2)).exp()),
            ],
            Self::Checks => [
                Reflectance::flat(0.78),
                Reflectance::from_fn(|nm| 0.05 + 0.5 / (1.0 + (-(nm - 602.0) / 11.0).exp())),
            ],
            Self::DarkWood => [brown(0.02, 0.10), brown(0.06, 0.30)],
            Self::Plain(surface) | Self::Knit(surface) => {
                [(**surface).clone(), (**surface).clone()]
            }
        }
    }

    /// At a point of the table (mm): the share of the second surface, and the
    /// factor of the relief.
    pub(crate) fn at(&self, seed: u64, [x, y]: [f64; 2]) -> (f64, f64) {
        match self {
            Self::Paper => (0.5 + 0.25 * smooth(seed, x * 2.2, y * 2.2), 1.0),
            Self::Wood => wood(seed, x, y),
            Self::DarkWood => wood(seed ^ 0xDA, 0.6 * x, 0.6 * y),
            Self::Checks => {
                const RELIEF: Texture = Texture {
                    contrast: 0.25,
                    cloth: crate::Cloth::Weave,
                    pitch_mm: 1.1,
                };
                let dark = |w: f64| f64::from(u8::from(w.rem_euclid(26.0) < 13.0));
                (0.5 * (dark(x) + dark(y)), RELIEF.at(seed, [x, y]))
            }
            Self::Knit(_) => {
                const RELIEF: Texture = Texture {
                    contrast: 0.45,
                    cloth: crate::Cloth::Knit,
                    pitch_mm: 6.5,
                };
                (0.0, RELIEF.at(seed, [x, y]))
            }
            Self::Stripes => {
                const RELIEF: Texture = Texture {
                    contrast: 0.3,
                    cloth: crate::Cloth::Weave,
                    pitch_mm: 0.9,
                };
                let band = x.rem_euclid(34.0);
                let dark = band < 9.0 || (12.0..14.0).contains(&band);
                (f64::from(u8::from(dark)), RELIEF.at(seed, [x, y]))
            }
            Self::Plain(_) => (0.0, 1.0),
        }
    }
}

/// Grain along x in planks of 90 mm, with a dark seam between them.
fn wood(seed: u64, x: f64, y: f64) -> (f64, f64) {
    let plank = ((y + 30.0) / 90.0).floor();
    let across = (y + 30.0) - plank * 90.0;
    let seed = seed ^ (plank as i64 as u64).wrapping_mul(0x51);
    let sway = 5.0 * smooth(seed, x / 110.0, y / 60.0);
    let rings = smooth(seed ^ 1, x / 300.0, (across + sway) / 3.4);
    let pores = smooth(seed ^ 2, x / 9.0, y * 2.6);
    let tone = smooth(seed ^ 3, 0.5, 0.5);
    let seam = if across < 0.7 { 0.45 } else { 1.0 };
    let share = 0.5 + 0.38 * rings + 0.16 * pores + 0.12 * tone;
    (share.clamp(0.0, 1.0), seam)
}
