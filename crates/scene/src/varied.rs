//! Scenes drawn from a seed, as different as photographs by many hands.

use crate::{
    Background, Camera, Chart, Frame, Gradient, Jpeg, Light, Orientation, Piece, Profile, Scene,
    Viewpoint, WhiteBalance,
};
use rand::{Rng, RngExt, SeedableRng, seq::IndexedRandom};
use rand_chacha::ChaCha8Rng;

impl Scene {
    /// A realistic scene of the given pieces, drawn from a seed.
    ///
    /// The light is D65, D50, FL2-like or LED-like, in turn with the seed; tilt
    /// reaches 15 degrees, the light falls off by 15 %; camera, background,
    /// chart, orientation, profile and quality vary. The pieces stay where they
    /// were laid.
    pub fn varied(seed: u64, pieces: Vec<Piece>) -> Self {
        let mut rng = ChaCha8Rng::seed_from_u64(seed);
        let lights = [Light::D65, Light::D50, Light::Fl2, Light::Led];
        let quarter = f64::from(*pick(&mut rng, &[0u8, 0, 0, 0, 0, 1, 2, 3]));
        Self {
            pieces,
            light: lights[(seed % 4) as usize].clone(),
            gradient: Gradient {
                share: 0.15,
                towards_deg: rng.random_range(0.0..360.0),
            },
            viewpoint: Viewpoint {
                tilt_deg: rng.random_range(0.0..15.0),
                tilt_towards_deg: rng.random_range(0.0..360.0),
                turn_deg: 90.0 * quarter + rng.random_range(-12.0..12.0),
                fill: rng.random_range(0.7..0.92),
                focal: rng.random_range(0.72..1.3),
                shift: [rng.random_range(-0.02..0.02), rng.random_range(-0.02..0.02)],
            },
            camera: pick(&mut rng, &Camera::all()).clone(),
            white_balance: WhiteBalance {
                red: rng.random_range(0.95..1.05),
                blue: rng.random_range(0.95..1.05),
            },
            exposure_stops: rng.random_range(-0.45..0.0),
            chart: Some(Chart {
                frame: *pick(&mut rng, &[Frame::Dark, Frame::Light]),
                gap_mm: rng.random_range(2.0..4.0),
                turn_deg: rng.random_range(-3.0..3.0),
                ..Chart::default()
            }),
            background: pick(&mut rng, &backgrounds()).clone(),
            jpeg: Jpeg {
                quality: rng.random_range(82..=96),
                halved_colour: true,
                profile: *pick(
                    &mut rng,
                    &[Profile::Srgb, Profile::DisplayP3, Profile::None],
                ),
                orientation: *pick(
                    &mut rng,
                    &[
                        Orientation::Upright,
                        Orientation::HalfTurn,
                        Orientation::QuarterClockwise,
                        Orientation::QuarterAnticlockwise,
                    ],
                ),
            },
            seed,
            ..Self::default()
        }
    }
}

fn backgrounds() -> [Background; 4] {
    [
        Background::Paper,
        Background::Wood,
        Background::Stripes,
        Background::plain(crate::Reflectance::flat(0.2)),
    ]
}

/// One of several.
fn pick<'a, T>(rng: &mut impl Rng, of: &'a [T]) -> &'a T {
    of.choose(rng).expect("every list here has entries")
}
