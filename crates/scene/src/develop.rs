//! From channel values to the numbers of the file: noise, colour, tone.

use crate::{
    Profile, Scene, Tone,
    camera::{Sensor, apply},
    hash::bell,
};

/// Linear steps of the tone curve's table; fine enough that the steepest part
/// moves by less than a tenth of a file value.
const STEPS: usize = 32_768;

/// The camera's processing.
pub(crate) struct Developer {
    seed: u64,
    noise: f64,
    width: u64,
    greyscale: bool,
    matrix: [[f64; 3]; 3],
    curve: Vec<[u8; 3]>,
}

impl Developer {
    pub(crate) fn new(scene: &Scene, sensor: &Sensor) -> Self {
        let to_file = match scene.jpeg.profile {
            Profile::DisplayP3 => SRGB_TO_P3,
            Profile::Srgb | Profile::None => ONE,
        };
        let columns = [0, 1, 2].map(|j| apply(&to_file, sensor.matrix.map(|row| row[j])));
        Self {
            seed: scene.seed ^ 0x005E_ED0F_0015_E000,
            noise: scene.camera.noise,
            width: u64::from(scene.width_px),
            greyscale: scene.flaws.greyscale,
            matrix: [0, 1, 2].map(|i| [0, 1, 2].map(|j| columns[j][i])),
            curve: curve(scene.camera.tone),
        }
    }

    /// The file's values for a pixel, from its channel values and the factor of
    /// the local tone mapping.
    pub(crate) fn pixel(&self, x: usize, y: usize, channels: [f64; 3], gain: f64) -> [u8; 3] {
        let place = (y as u64 * self.width + x as u64) * 3;
        let noisy = [0, 1, 2].map(|k: usize| {
            // The variance grows with the light, as photons arrive by chance; a
            // fiftieth of it is there in the dark.
            let deviation = self.noise * (channels[k].max(0.0) + 0.02).sqrt();
            (channels[k] + deviation * bell(self.seed, place + k as u64)).min(1.0) * gain
        });
        let mut linear = apply(&self.matrix, noisy);
        if self.greyscale {
            linear = [0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]; 3];
        }
        [0, 1, 2].map(|k: usize| {
            let step = (linear[k].clamp(0.0, 1.0) * (STEPS - 1) as f64 + 0.5) as usize;
            self.curve[step][k]
        })
    }
}

const ONE: [[f64; 3]; 3] = [[1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, 1.0]];

/// Linear sRGB to linear Display P3, from the primaries of both (same white).
const SRGB_TO_P3: [[f64; 3]; 3] = [
    [0.822_462, 0.177_538, 0.0],
    [0.033_194, 0.966_806, 0.0],
    [0.017_083, 0.072_397, 0.910_52],
];

/// The tone curve of red, green and blue as a table over linear light.
fn curve(tone: Tone) -> Vec<[u8; 3]> {
    let values = |i: usize| {
        let linear = i as f64 / (STEPS - 1) as f64;
        [0, 1, 2].map(|channel| (tone.encode(linear, channel) * 255.0).round() as u8)
    };
    (0..STEPS).map(values).collect()
}
