//! Cameras drawn from a seed.

use crate::{Bell, Bend, Camera, Difficulty, Optics, Tone};
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;

impl Camera {
    /// A plausible camera that was never built, drawn from a seed: as various as
    /// medium photographs have them.
    pub fn drawn(seed: u64) -> Self {
        Self::drawn_for(seed, Difficulty::Medium)
    }

    /// A camera drawn from a seed for photographs of some difficulty.
    ///
    /// Peaks, widths and side lobes of its channels lie about those of common
    /// sensors; saturation is 0.95 to 1.15 and noise 0.003 to 0.015. Only for hard
    /// photographs do the channels' tones differ and the lens bends lines.
    pub fn drawn_for(seed: u64, difficulty: Difficulty) -> Self {
        let mut rng = ChaCha8Rng::seed_from_u64(seed ^ 0xCA3E_7A00);
        let mut channel = |peak: f64, width: f64, lobes: [f64; 2]| {
            let main = Bell {
                peak_nm: peak + rng.random_range(-8.0..8.0),
                width_nm: width * rng.random_range(0.85..1.2),
                height: 1.0,
            };
            let lobe = lobes.map(|peak_nm| Bell {
                peak_nm: peak_nm + rng.random_range(-10.0..10.0),
                width_nm: rng.random_range(22.0..38.0),
                height: rng.random_range(0.0..0.16),
            });
            vec![main, lobe[0], lobe[1]]
        };
        let channels = [
            channel(603.0, 36.0, [540.0, 450.0]),
            channel(534.0, 39.0, [465.0, 605.0]),
            channel(460.0, 30.0, [400.0, 530.0]),
        ];
        let is_hard = difficulty == Difficulty::Hard;
        let (tone, vignette, sharpening) = match difficulty {
            Difficulty::Easy => {
                let contrast = rng.random_range(0.0f64..0.3) - 0.2;
                let tone = if contrast > 0.0 {
                    Tone::Bent(Bend {
                        contrast,
                        ..Bend::default()
                    })
                } else {
                    Tone::Srgb
                };
                (tone, rng.random_range(0.0..0.08), 0.0)
            }
            Difficulty::Medium => (
                Tone::Bent(Bend {
                    contrast: rng.random_range(0.1..0.4),
                    shoulder: rng.random_range(0.0..0.3),
                    lift: rng.random_range(-0.02f64..0.02).max(0.0),
                    channels: [0.0; 3],
                }),
                rng.random_range(0.05..0.22),
                rng.random_range(-0.2f64..0.5).max(0.0),
            ),
            Difficulty::Hard => (
                Tone::Bent(Bend {
                    contrast: rng.random_range(0.2..0.65),
                    shoulder: rng.random_range(0.0..0.6),
                    lift: rng.random_range(-0.03f64..0.05).max(0.0),
                    channels: std::array::from_fn(|_| rng.random_range(-0.035..0.035)),
                }),
                rng.random_range(0.1..0.35),
                rng.random_range(0.0..0.9),
            ),
        };
        Self {
            name: format!("Drawn {}", seed % 1000),
            channels,
            saturation: rng.random_range(0.95..1.15),
            tone,
            noise: rng.random_range(0.003..if is_hard { 0.015 } else { 0.011 }),
            optics: Optics {
                vignette,
                barrel: if is_hard {
                    rng.random_range(-0.01f64..0.025).max(0.0)
                } else {
                    0.0
                },
                sharpening,
                colour_smoothing_px: if difficulty == Difficulty::Easy {
                    0
                } else {
                    rng.random_range(0..=3)
                },
            },
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Light, WhiteBalance, camera::Sensor, chart_spectra};

    /// A camera must tell the chart's colours about as people see them, or its
    /// maker would not sell it: its neutrals are neutral, and red is red.
    #[test]
    fn drawn_cameras_see_grey_as_grey_and_red_as_red() {
        let one = WhiteBalance {
            red: 1.0,
            blue: 1.0,
        };
        let patches = chart_spectra();
        for seed in 0..60 {
            for difficulty in [Difficulty::Easy, Difficulty::Medium, Difficulty::Hard] {
                let camera = Camera::drawn_for(seed, difficulty);
                assert!((0.95..1.15).contains(&camera.saturation));
                assert!((0.003..0.015).contains(&camera.noise));
                let sensor = Sensor::new(&camera, &Light::D65, None, one);
                let see = |patch: usize| sensor.linear(&patches[patch]);
                let [r, g, b] = see(20);
                assert!(
                    (r / g - 1.0).abs() < 0.08 && (b / g - 1.0).abs() < 0.08,
                    "{r} {g} {b}"
                );
                let [r, g, b] = see(14);
                assert!(r > 2.0 * g && r > 2.0 * b, "{seed} {:?}", see(14));
                let [r, g, b] = see(13);
                assert!(
                    g > 1.4 * r && g > 1.4 * b,
                    "{seed} {difficulty:?} {:?}",
                    see(13)
                );
                let [r, g, b] = see(12);
                assert!(b > 1.8 * r && b > 1.8 * g, "{seed} {:?}", see(12));
            }
        }
    }

    #[test]
    fn seeds_give_different_cameras_and_the_same_seed_the_same() {
        assert_eq!(Camera::drawn(3), Camera::drawn(3));
        assert_ne!(Camera::drawn(3), Camera::drawn(4));
    }
}
