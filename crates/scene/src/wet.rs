//! Wet pieces: a darker, fuller body under sparks of mirrored light.

use crate::{Reflectance, hash::smooth};

/// Water on a piece. What a perfect reader would find stays the dry cloth.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Wet {
    /// How far the cloth is soaked, 0 to 1.
    pub soaked: f64,
    /// Share of the cloth that mirrors the light, 0 to 0.4.
    pub sparkle_share: f64,
    /// Light added where it does, as a share of that from a perfect white.
    pub strength: f64,
}

impl Wet {
    /// The body of the cloth as soaked as this.
    ///
    /// # Source
    /// A. Angström, Geografiska Annaler 7 (1925): light leaves a wet surface only
    /// after being thrown back inwards many times; from memory.
    pub(crate) fn body(self, dry: &Reflectance) -> Reflectance {
        /// Square of the refractive index of water.
        const SQUARE: f64 = 1.77;
        let wet = |r: f64| r / (r + SQUARE * (1.0 - r));
        Reflectance(dry.0.map(|r| r + self.soaked * (wet(r) - r)))
    }

    /// Light mirrored at a point (mm) of a cloth.
    pub(crate) fn sparkle(self, seed: u64, [x, y]: [f64; 2]) -> f64 {
        /// Standard deviation of the bumps, from that of the smooth noise.
        const DEVIATION: f64 = 0.27;
        // Three lattices at odd angles, or the sparks would stand in rows.
        let (u, v) = (0.8 * x - 0.6 * y, 0.6 * x + 0.8 * y);
        let bumps = 0.45 * smooth(seed ^ 0x3A, x / 0.45, y / 0.45)
            + 0.35 * smooth(seed ^ 0x3B, u / 0.55, v / 0.55)
            + 0.3 * smooth(seed ^ 0x3C, u / 5.0, v / 5.0);
        // The bumps are nearly normal; the logistic distribution's quantile, scaled
        // by 1.702, lies close to the normal one's.
        let share = self.sparkle_share.clamp(0.001, 0.999);
        let edge = DEVIATION * ((1.0 - share) / share).ln() / 1.702;
        self.strength * ((bumps - edge) / 0.3 + 0.5).clamp(0.0, 1.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const WET: Wet = Wet {
        soaked: 1.0,
        sparkle_share: 0.1,
        strength: 0.8,
    };

    /// Source: common practice, no source: wet cloth is darker, and most so in
    /// the middle of the scale; white and black hardly change.
    #[test]
    fn wet_cloth_is_darker() {
        for r in [0.05, 0.3, 0.6, 0.9] {
            assert!(WET.body(&Reflectance::flat(r)).0[3] < r);
        }
        assert!(WET.body(&Reflectance::flat(0.4)).0[0] < 0.3);
        assert!(WET.body(&Reflectance::flat(1.0)).0[0] > 0.999);
    }

    #[test]
    fn about_the_asked_share_sparkles() {
        for sparkle_share in [0.05, 0.1, 0.2] {
            let wet = Wet {
                sparkle_share,
                ..WET
            };
            let points =
                (0..40_000).map(|i| [f64::from(i % 200) * 0.31, f64::from(i / 200) * 0.37]);
            let bright = points.filter(|p| wet.sparkle(8, *p) > 0.4).count();
            let share = bright as f64 / 40_000.0;
            assert!(
                (share / sparkle_share - 1.0).abs() < 0.6,
                "{sparkle_share} {share}"
            );
        }
    }
}
