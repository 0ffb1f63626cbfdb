//! Photographs as the world takes them, drawn from a seed by difficulty.

use crate::{
    Background, Camera, Chart, Difficulty, Flaws, Frame, Jpeg, LocalTone, Orientation, Piece,
    Profile, Reflectance, Scene, linen, shot,
};
use rand::{Rng, RngExt, SeedableRng, seq::IndexedRandom};
use rand_chacha::ChaCha8Rng;

impl Scene {
    /// A scene of the given pieces drawn from a seed, within the bounds of a
    /// difficulty.
    ///
    /// The pieces stay where they were laid. A caller may change the size in
    /// pixels but not the shape of the photo, or a hand at its edge might cover a
    /// piece.
    pub fn wild(seed: u64, difficulty: Difficulty, pieces: Vec<Piece>) -> Self {
        let mut rng = ChaCha8Rng::seed_from_u64(seed ^ 0x0071_1D00);
        let camera = Camera::drawn_for(rng.random(), difficulty);
        let local_tone = LocalTone {
            strength: rng.random_range(0.05..0.2),
            reach: rng.random_range(0.05..0.15),
        };
        let has_local_tone = difficulty == Difficulty::Hard && rng.random_bool(0.2);
        let quality = match difficulty {
            Difficulty::Easy => 90..=97,
            Difficulty::Medium => 82..=95,
            Difficulty::Hard => 70..=82,
        };
        let bench = Self {
            pieces,
            camera,
            chart: Some(Chart {
                frame: *pick(&mut rng, &[Frame::Dark, Frame::Light]),
                gap_mm: rng.random_range(1.5..4.0),
                ..Chart::default()
            }),
            background: background(&mut rng, difficulty),
            jpeg: Jpeg {
                quality: rng.random_range(quality),
                halved_colour: rng.random_bool(0.8),
                profile: *pick(
                    &mut rng,
                    &[Profile::Srgb, Profile::DisplayP3, Profile::None],
                ),
                orientation: Orientation::Upright,
            },
            flaws: Flaws {
                local_tone: has_local_tone.then_some(local_tone),
                ..Flaws::default()
            },
            difficulty,
            seed,
            ..Self::default()
        };
        shot::draw(&bench, &mut rng)
    }

    /// Another photo of the same pieces and chart by the same camera on the same
    /// table: laid anew, in other light and from another place.
    ///
    /// Drawn anew within the scene's difficulty are the light and how it falls,
    /// exposure, white balance, viewpoint, the way the camera is held, hands, and the
    /// places of the pieces: pieces of one size change places, and each is laid a
    /// little askew.
    pub fn relaid(&self, seed: u64) -> Self {
        let mut rng = ChaCha8Rng::seed_from_u64(seed ^ 0x00AE_1A1D);
        let bench = Self {
            pieces: shot::lay_anew(&self.pieces, &mut rng),
            seed: crate::hash::mix(self.seed, seed),
            ..self.clone()
        };
        shot::draw(&bench, &mut rng)
    }
}

fn background(rng: &mut impl Rng, difficulty: Difficulty) -> Background {
    let grey = Reflectance::flat(rng.random_range(0.15..0.6));
    let white = Reflectance::flat(rng.random_range(0.8..0.9));
    let (peak, height) = (rng.random_range(420.0..680.0), rng.random_range(0.1..0.6));
    let dyed = Reflectance::from_fn(|nm| {
        let hump: f64 = (nm - peak) / 55.0;
        0.06 + height * (-0.5 * hump * hump).exp()
    });
    let [grey, white] = [grey, white].map(Background::plain);
    let paper = Background::Paper;
    match difficulty {
        Difficulty::Easy => pick(rng, &[paper, grey, white]).clone(),
        Difficulty::Medium => {
            let cloth = Background::plain(linen());
            let busy = [Background::Wood, Background::Stripes];
            let [wood, stripes] = busy;
            pick(rng, &[paper, grey, white, cloth, wood, stripes]).clone()
        }
        Difficulty::Hard => {
            let knit = Background::Knit(Box::new(dyed));
            let checks = Background::Checks;
            let woods = [Background::Wood, Background::DarkWood];
            let [wood, dark] = woods;
            pick(rng, &[knit, checks, wood, dark, Background::Stripes]).clone()
        }
    }
}

/// One of several.
pub(crate) fn pick<'a, T>(rng: &mut impl Rng, of: &'a [T]) -> &'a T {
    of.choose(rng).expect("every list here has entries")
}
