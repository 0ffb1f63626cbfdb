//! Tone curves: how linear light becomes the values of the file.

/// How linear light becomes the values of the file.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Tone {
    /// The curve of sRGB and nothing else.
    Srgb,
    /// The same with an S-shaped curve upon it, as telephones do.
    Phone,
    /// The curve of sRGB bent as told.
    Bent(Bend),
}

/// How the curve of sRGB is bent. Nothing is, by default.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Bend {
    /// Strength of the S-shaped curve, 0 to 0.8: darker shadows, brighter lights.
    pub contrast: f64,
    /// Strength of the shoulder as of film, 0 to 1: brighter middles, lights pressed together.
    pub shoulder: f64,
    /// What black becomes, as a share of the file's full scale, 0 to 0.1.
    pub lift: f64,
    /// Darkening of the middles of red, green and blue, -0.1 to 0.1.
    pub channels: [f64; 3],
}

impl Tone {
    /// The file's value (0 to 1) for linear light (0 to 1) in channel 0, 1 or 2:
    /// red, green or blue. It never falls as the light grows.
    ///
    /// # Source
    /// The plain curve: IEC 61966-2-1.
    pub fn encode(self, linear: f64, channel: usize) -> f64 {
        let plain = if linear <= 0.003_130_8 {
            12.92 * linear
        } else {
            1.055 * linear.powf(1.0 / 2.4) - 0.055
        };
        match self {
            Self::Srgb => plain,
            Self::Phone => s_curve(plain, 0.35),
            Self::Bent(bend) => bend.at(plain, channel),
        }
    }
}

impl Bend {
    fn at(self, plain: f64, channel: usize) -> f64 {
        let darker = plain.powf(1.0 + self.channels[channel]);
        let pressed = darker * (1.0 + self.shoulder) / (1.0 + self.shoulder * darker);
        self.lift + (1.0 - self.lift) * s_curve(pressed, self.contrast)
    }
}

fn s_curve(value: f64, strength: f64) -> f64 {
    value + strength * (value * value * (3.0 - 2.0 * value) - value)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Source: published (IEC 61966-2-1), 18 % grey is file value 118 (117.6).
    #[test]
    fn grey_has_its_published_value() {
        for tone in [Tone::Srgb, Tone::Bent(Bend::default())] {
            assert!((tone.encode(0.18, 1) * 255.0 - 117.6).abs() < 0.1);
        }
    }

    #[test]
    fn no_curve_ever_falls_and_white_stays_white() {
        for contrast in [0.0, 0.4, 0.8] {
            for shoulder in [0.0, 0.5, 1.0] {
                for lift in [0.0, 0.1] {
                    let channels = [-0.1, 0.0, 0.1];
                    let tone = Tone::Bent(Bend {
                        contrast,
                        shoulder,
                        lift,
                        channels,
                    });
                    for channel in 0..3 {
                        assert!((tone.encode(1.0, channel) - 1.0).abs() < 1e-12);
                        assert!((tone.encode(0.0, channel) - lift).abs() < 1e-12);
                        let steps = (0..=4000).map(|i| f64::from(i) / 4000.0);
                        let values: Vec<f64> = steps.map(|v| tone.encode(v, channel)).collect();
                        assert!(values.is_sorted(), "{tone:?}");
                    }
                }
            }
        }
    }
}
